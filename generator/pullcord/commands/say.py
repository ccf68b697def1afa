"""Findings at the terminal."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from pathlib import Path

import click

from pullcord.finding import Finding
from pullcord.rules.show import count_findings, show_finding
from pullcord.source.files import read_file


def print_findings(findings: Iterable[Finding]) -> None:
    """Print findings with their lines, then how many there are."""
    found = tuple(findings)
    for finding in found:
        path = Path(finding.file)
        raw = read_file(path, path.parent)
        near = replace(finding, file=_near(path))
        click.echo(show_finding(near, raw if isinstance(raw, bytes) else b""))
    if found:
        click.echo(count_findings(found), err=True)


def _near(path: Path) -> str:
    """Return a path as seen from the present folder, if it is below it."""
    here = Path.cwd()
    return (path.relative_to(here) if path.is_relative_to(here) else path).as_posix()
