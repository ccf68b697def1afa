"""Findings at the terminal."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import replace
from importlib.metadata import version
from pathlib import Path
from typing import Any

import click

from pullcord.errors import FindingsError, PullcordError
from pullcord.finding import Finding
from pullcord.rules.report import FORMATS
from pullcord.rules.report.made import Report
from pullcord.rules.report.text import text_report
from pullcord.rules.show import Role, count_findings
from pullcord.source.files import read_file

TEXT = "text"
_COLOURS: Mapping[Role, Mapping[str, Any]] = {
    Role.PLACE: {"bold": True},
    Role.ERROR: {"fg": "red", "bold": True},
    Role.WARNING: {"fg": "yellow", "bold": True},
    Role.RULE: {"fg": "cyan"},
    Role.CARET: {"fg": "red", "bold": True},
    Role.LABEL: {"bold": True},
    Role.PLAIN: {},
}


def print_findings(findings: Iterable[Finding]) -> None:
    """Print findings with their lines, then how many there are."""
    found = tuple(findings)
    _print_text((finding, _bytes_of(finding)) for finding in found)
    if found:
        click.echo(count_findings(found), err=True)


@contextmanager
def or_say_why() -> Iterator[None]:
    """Print why a build failed, and end with exit code 1."""
    try:
        yield
    except FindingsError as error:
        print_findings(error.findings)
        click.echo("the site stays as it was", err=True)
        sys.exit(1)
    except PullcordError as error:
        click.echo(f"error: {error}", err=True)
        sys.exit(1)


def show_findings(findings: Iterable[Finding], raw: bytes) -> None:
    """Print findings about bytes that may not be on the disk."""
    _print_text((finding, raw) for finding in findings)


def print_report(report: Report, form: str) -> None:
    """Print a whole check for a person, or in a form that a program reads."""
    if form == TEXT:
        print_findings(report.findings)
        return
    findings = tuple(replace(each, file=_near(Path(each.file))) for each in report.findings)
    allowed = tuple(
        replace(each, finding=replace(each.finding, file=_near(Path(each.finding.file))))
        for each in report.allowed
    )
    text = FORMATS[form](Report(findings, allowed, version("pullcord")))
    if text:
        click.echo(text)


def paint(role: Role, text: str) -> str:
    """Give a piece of a line its colour, where colour is wanted and can be shown.

    It is not wanted where NO_COLOR is set to anything, and not shown in a pipe or a file.
    """
    is_wanted = not os.environ.get("NO_COLOR") and sys.stdout.isatty()
    return click.style(text, **_COLOURS[role]) if is_wanted and _COLOURS[role] else text


def _print_text(findings: Iterable[tuple[Finding, bytes]]) -> None:
    near = ((replace(each, file=_near(Path(each.file))), raw) for each, raw in findings)
    for line in text_report(near, paint):
        click.echo(line)


def _bytes_of(finding: Finding) -> bytes:
    path = Path(finding.file)
    raw = read_file(path, path.parent)
    return raw if isinstance(raw, bytes) else b""


def _near(path: Path) -> str:
    """Return a path as seen from the present folder, if it is below it."""
    here = Path.cwd()
    return (path.relative_to(here) if path.is_relative_to(here) else path).as_posix()
