"""`pullcord build`."""

from __future__ import annotations

from pathlib import Path

import click

from pullcord.commands.garbage import garbage_collected_seldom
from pullcord.commands.kinds import EXISTING_FILE, FOLDER
from pullcord.commands.say import or_say_why
from pullcord.errors import SiteError
from pullcord.site.shards.number import Shard, parse_shard
from pullcord.source.choice import SETTINGS


def _shard(_: object, option: click.Parameter, text: str | None) -> Shard | None:
    try:
        return parse_shard(text) if text else None
    except SiteError as error:
        raise click.BadParameter(str(error), param=option) from None


@click.command()
@click.option("-f", "--config", default=SETTINGS, type=EXISTING_FILE, help="The settings to use.")
@click.option("--site-dir", type=FOLDER, help="Where the site goes, if not where they say.")
@click.option("--strict", is_flag=True, help="Let warnings fail the build.")
@click.option(
    "--shard",
    metavar="I/N",
    callback=_shard,
    help="Build one part of N beside the site, in SITE.shard-I-of-N, for `pullcord join`.",
)
def build(config: Path, site_dir: Path | None, strict: bool, shard: Shard | None) -> None:
    """Build the site. A build that fails leaves the last good site in place."""
    from pullcord.plugin import build_shard, build_site  # A check must not wait for MkDocs.

    with or_say_why(), garbage_collected_seldom():
        if shard:
            place = build_shard(config, site_dir, strict, shard)
            click.echo(f"Shard {shard} is in {place}")
        else:
            click.echo(f"The site is in {build_site(config, site_dir, strict)}")
