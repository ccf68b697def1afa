"""`pullcord pack`."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from pullcord.commands.kinds import FOLDER, OUTPUT
from pullcord.errors import PullcordError
from pullcord.site.pack import pack_site


@click.command()
@click.argument("site", default="site", type=FOLDER)
@click.option("-o", "--output", type=OUTPUT, help="The file.")
def pack(site: Path, output: Path | None) -> None:
    """Pack a built site into one zip file, to be carried to a tablet.

    SITE is the folder that `build` wrote, `site` if none is named.
    """
    try:
        place = pack_site(site, output or Path(f"{site.resolve().name}.zip"))
    except PullcordError as error:
        click.echo(f"error: {error}", err=True)
        sys.exit(1)
    click.echo(f"The pack is {place}")
