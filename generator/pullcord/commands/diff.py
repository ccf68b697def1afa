"""`pullcord diff`."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from pullcord.commands.kinds import EXISTING
from pullcord.commands.say import TEXT, print_findings
from pullcord.errors import FindingsError, PullcordError


@click.command()
@click.argument("old", type=EXISTING)
@click.argument("new", type=EXISTING)
@click.option(
    "--format",
    "form",
    type=click.Choice((TEXT, "json")),
    default=TEXT,
    show_default=True,
    help="For a person, or for a program.",
)
def diff(old: Path, new: Path, form: str) -> None:
    """Say what changed in meaning between two states of procedures and machine sheets.

    OLD and NEW are files, folders or projects, as for `check`. Told are cautions, ways, steps,
    limits as the meter judges them, causes, figures and time; the order of keys, comments and
    line breaks are not.
    """
    from pullcord.analysis.diff import compare_libraries  # A check must not wait for these.
    from pullcord.pages.diff.json_ import diff_json
    from pullcord.pages.diff.text import diff_text
    from pullcord.pages.diff.words import read_diff_words
    from pullcord.site.sides import read_side

    try:
        found = compare_libraries(read_side(old), read_side(new))
    except FindingsError as error:
        print_findings(error.findings)
        click.echo("mend this first: what a wrong file means cannot be said", err=True)
        sys.exit(1)
    except PullcordError as error:
        raise click.UsageError(str(error)) from error
    click.echo(diff_text(found, read_diff_words()) if form == TEXT else diff_json(found))
