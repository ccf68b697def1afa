"""`pullcord init`."""

from __future__ import annotations

import sys
from datetime import date
from pathlib import Path

import click

from pullcord.commands.kinds import FOLDER
from pullcord.errors import PullcordError
from pullcord.source.modeline import SCHEMAS

NEXT = """\

Next:
  cd {folder}
  pullcord check
  pullcord build
and open site/index.html in a browser.
`pullcord new procedure NAME` begins a procedure of your own."""


@click.command()
@click.argument("folder", type=FOLDER)
@click.option("--title", default="", help="The site's name; the folder's, if not given.")
def init(folder: Path, title: str) -> None:
    """Begin a project of your own in a new or an empty folder.

    It holds settings, one example of each kind of file, and what an editor needs to help while you
    type. Nothing is ever written over.
    """
    from pullcord.site.begin_project import begin_project  # Help must not wait for it.

    try:
        files = begin_project(folder, title, f"{date.today():%Y-%m-%d}")
    except PullcordError as error:
        click.echo(f"error: {error}", err=True)
        sys.exit(1)
    for path in files:
        if SCHEMAS not in path.parts:
            click.echo(f"Written: {path}")
    click.echo(f"Written: {folder / SCHEMAS}, by which an editor helps while you type")
    click.echo(NEXT.format(folder=folder))
