"""`pullcord build`."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from pullcord.commands.kinds import EXISTING_FILE, FOLDER
from pullcord.commands.say import print_findings
from pullcord.errors import FindingsError, PullcordError
from pullcord.source.choice import SETTINGS


@click.command()
@click.option("-f", "--config", default=SETTINGS, type=EXISTING_FILE, help="The settings to use.")
@click.option("--site-dir", type=FOLDER, help="Where the site goes, if not where they say.")
@click.option("--strict", is_flag=True, help="Let warnings fail the build.")
def build(config: Path, site_dir: Path | None, strict: bool) -> None:
    """Build the site. A build that fails leaves the last good site in place."""
    from pullcord.plugin import build_site  # A check must not wait for MkDocs to be loaded.

    try:
        place = build_site(config, site_dir, strict)
    except FindingsError as error:
        print_findings(error.findings)
        click.echo("the site stays as it was", err=True)
        sys.exit(1)
    except PullcordError as error:
        click.echo(f"error: {error}", err=True)
        sys.exit(1)
    click.echo(f"The site is in {place}")
