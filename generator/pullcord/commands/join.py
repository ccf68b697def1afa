"""`pullcord join`."""

from __future__ import annotations

from pathlib import Path

import click

from pullcord.commands.garbage import garbage_collected_seldom
from pullcord.commands.kinds import EXISTING_FILE, FOLDER
from pullcord.commands.say import or_say_why
from pullcord.source.choice import SETTINGS


@click.command()
@click.argument("shards", nargs=-1, required=True, type=FOLDER)
@click.option("-f", "--config", default=SETTINGS, type=EXISTING_FILE, help="The settings to use.")
@click.option("--site-dir", type=FOLDER, help="Where the site goes, if not where they say.")
@click.option("--strict", is_flag=True, help="Let warnings fail the build.")
def join(shards: tuple[Path, ...], config: Path, site_dir: Path | None, strict: bool) -> None:
    """Make the site of all its shards, byte for byte as one build would have made it.

    SHARDS are the folders that `build --shard` wrote, in any order, all of them. The files they
    were built from must be here too: home page, map, binder and jobs are made now.
    """
    from pullcord.plugin import join_site  # A check must not wait for MkDocs to be loaded.

    with or_say_why(), garbage_collected_seldom():
        click.echo(f"The site is in {join_site(config, site_dir, strict, shards)}")
