"""The files of a theme, listed without the thousands of icons that no site is given."""

from __future__ import annotations

import os
from collections.abc import Iterable, Iterator
from functools import partial
from pathlib import Path
from typing import Any


def list_without_hidden(theme: Any) -> None:
    """Have MkDocs's `theme` pass over hidden folders: MkDocs takes nothing that lies in one."""
    make = theme.get_env

    def get_env() -> Any:
        env = make()
        env.loader.list_templates = partial(_names, env.loader.searchpath)
        return env

    theme.get_env = get_env


def _names(folders: Iterable[str]) -> list[str]:
    return sorted({name for folder in folders for name in _in_folder(folder)})


def _in_folder(folder: str) -> Iterator[str]:
    for parent, below, names in os.walk(folder):
        below[:] = [name for name in below if not name.startswith(".")]
        yield from (Path(parent, name).relative_to(folder).as_posix() for name in names)
