"""`pullcord fmt`."""

from __future__ import annotations

import sys
from collections import Counter
from collections.abc import Callable
from pathlib import Path

import click

from pullcord.commands.kinds import EXISTING
from pullcord.commands.say import print_findings
from pullcord.errors import FindingsError, PullcordError
from pullcord.site.tidy_file import is_tidy, tidy_file
from pullcord.source.choice import choose_own


@click.command()
@click.argument("paths", nargs=-1, type=EXISTING, metavar="[PATH]...")
@click.option("--check", is_flag=True, help="Write nothing; end with 1 if anything would change.")
def fmt(paths: tuple[Path, ...], check: bool) -> None:
    """Put keys in order and fold lines that are too long.

    PATH is a folder or a file. Without one, the procedures, machine sheets and jobs of the project
    in the present folder. What the files say stays the same, and so do comments, quotes and blank
    lines; a file that cannot be read is left as it is.
    """
    try:
        files = choose_own(paths)
    except PullcordError as error:
        raise click.UsageError(str(error)) from error
    said, deed = ("would change", _leave) if check else ("changed", tidy_file)
    outcomes = Counter(_format(path, folder, said, deed) for path, folder in files)
    parts = [f"{outcomes['in order']} in order", f"{outcomes[said]} {said}"]
    if outcomes["left"]:
        parts.append(f"{outcomes['left']} left as they are, for the reasons above")
    click.echo(", ".join(parts), err=True)
    sys.exit(bool(outcomes["left"] or outcomes["would change"]))


def _leave(path: Path, folder: Path) -> None:
    """Write nothing."""


def _format(path: Path, folder: Path, said: str, deed: Callable[[Path, Path], None]) -> str:
    try:
        if is_tidy(path, folder):
            return "in order"
        deed(path, folder)
    except FindingsError as error:
        print_findings(error.findings)
        return "left"
    except PullcordError as error:
        click.echo(f"{path}: {error}", err=True)
        return "left"
    click.echo(f"{path}: {said}")
    return said
