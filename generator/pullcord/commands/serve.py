"""`pullcord serve`."""

from __future__ import annotations

import logging
import sys
from pathlib import Path

import click

from pullcord.commands.kinds import EXISTING_FILE
from pullcord.errors import PullcordError
from pullcord.source.choice import SETTINGS

HERE, EVERYWHERE = "127.0.0.1", "0.0.0.0"  # noqa: S104 (asked for by --lan, and said plainly)
PORT = 8000
WARNING = (
    "Anyone on this network can read the site, and nothing is encrypted on the way. Nobody can "
    "change anything. Do not do this on a network of strangers."
)


@click.command()
@click.option("-f", "--config", default=SETTINGS, type=EXISTING_FILE, help="The settings to use.")
@click.option("--lan", is_flag=True, help="Serve the site as it was last built to the network.")
@click.option("--port", default=PORT, show_default=True, type=click.IntRange(0, 65535))
@click.option("--open", "open_browser", is_flag=True, help="Open it in a browser.")
def serve(config: Path, lan: bool, port: int, open_browser: bool) -> None:
    """Show the site on this computer and follow every change, until Ctrl+C.

    A mistake in a file stops nothing: the pages show it above the last good site. With --lan, the
    site that `build` wrote is served to every tablet in the shop instead, to be read only.
    """
    try:
        if lan:
            _serve_lan(config, port)
        else:
            _preview(config, port, open_browser)
    except KeyboardInterrupt:
        click.echo("stopped", err=True)
    except PullcordError as error:
        click.echo(f"error: {error}", err=True)
        sys.exit(1)


def _preview(config: Path, port: int, open_browser: bool) -> None:
    from pullcord.plugin import preview_site  # A check must not wait for MkDocs to be loaded.

    said = logging.StreamHandler()
    said.setFormatter(logging.Formatter("%(message)s"))
    logger = logging.getLogger("mkdocs")
    logger.addHandler(said)
    logger.setLevel(logging.INFO)
    preview_site(config, f"{HERE}:{port}", open_browser)


def _serve_lan(config: Path, port: int) -> None:
    from pullcord.plugin import built_folder
    from pullcord.site.lan import lan_server, own_address

    with lan_server(built_folder(config), EVERYWHERE, port) as server:
        address = own_address()
        if address is None:
            click.echo("This computer is in no network: only its own browser gets there.", err=True)
        url = f"http://{address or HERE}:{server.server_address[1]}/"
        click.echo(f"The site is at {url}")
        _print_code(url)
        click.echo(WARNING)
        click.echo("Stop with Ctrl+C.")
        server.serve_forever()


def _print_code(url: str) -> None:
    """Print the address as a QR code, where the terminal has the characters for it."""
    import segno

    try:
        "▀▄█".encode(sys.stdout.encoding or "ascii")
    except UnicodeEncodeError:
        return
    segno.make(url, error="m", micro=False).terminal(compact=True)
