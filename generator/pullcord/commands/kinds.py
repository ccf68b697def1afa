"""The kinds of path a command takes."""

from __future__ import annotations

from pathlib import Path

import click

EXISTING = click.Path(exists=True, path_type=Path)
EXISTING_FILE = click.Path(exists=True, dir_okay=False, path_type=Path)
FOLDER = click.Path(file_okay=False, path_type=Path)
OUTPUT = click.Path(dir_okay=False, path_type=Path)
