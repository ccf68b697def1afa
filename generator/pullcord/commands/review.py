"""`pullcord review`."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from pullcord.commands.kinds import EXISTING
from pullcord.commands.say import print_findings
from pullcord.errors import FindingsError, PullcordError


@click.command()
@click.argument("name")
@click.argument("paths", nargs=-1, type=EXISTING, metavar="[PATH]...")
@click.option("--tools", help="Names of the tools in hand, such as `meter,lamp`; without it, all.")
def review(name: str, tools: str | None, paths: tuple[Path, ...]) -> None:
    """Say how long a procedure takes, and what would make it quicker.

    NAME is a procedure, PATH a folder or a file as for `check`.
    """
    from pullcord.site.author import UnknownWordError, read_review  # A check must not wait for it.

    in_hand = None if tools is None else [word.strip() for word in tools.split(",") if word.strip()]
    try:
        text = read_review(name, in_hand, paths)
    except UnknownWordError as error:
        raise click.UsageError(str(error)) from error
    except FindingsError as error:
        print_findings(error.findings)
        sys.exit(1)
    except PullcordError as error:
        click.echo(f"error: {error}", err=True)
        sys.exit(1)
    click.echo(text)
