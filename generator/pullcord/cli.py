"""The command line: the one place that prints and exits.

Exit codes: 0 clean, 1 findings or a failed build, 2 wrong usage.
"""

from __future__ import annotations

import io
import sys
from collections.abc import Iterable
from dataclasses import replace
from pathlib import Path

import click

from pullcord.errors import FindingsError, PullcordError
from pullcord.finding import Finding, Severity
from pullcord.printing.paper import KINDS, PAPERS, Kind, PaperName
from pullcord.project import load_project
from pullcord.rules.show import count_findings, show_finding
from pullcord.site.meter import read_meter
from pullcord.site.pack import pack_site
from pullcord.source.choice import SETTINGS, choose, is_asked
from pullcord.source.files import read_file

EXISTING = click.Path(exists=True, path_type=Path)
EXISTING_FILE = click.Path(exists=True, dir_okay=False, path_type=Path)
FOLDER = click.Path(file_okay=False, path_type=Path)
OUTPUT = click.Path(dir_okay=False, path_type=Path)


@click.group(context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(package_name="pullcord")
def main() -> None:
    """Check diagnostic procedures and build them into a site for the shop."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="backslashreplace")


@main.command()
@click.argument("paths", nargs=-1, type=EXISTING, metavar="[PATH]...")
@click.option("--strict", is_flag=True, help="Let warnings count as errors.")
def check(paths: tuple[Path, ...], strict: bool) -> None:
    """Say what is wrong with procedures and machine sheets.

    PATH is a folder or a file. Without one, the project in the present folder is checked, or the
    procedures that come with Pullcord.
    """
    try:
        choice = choose(paths)
        meter = read_meter(choice.meter, Path(SETTINGS))
        project = load_project(choice.folders, meter=meter, replaces=choice.replaces)
    except FindingsError as error:
        _print_findings(error.findings)
        sys.exit(1)
    except PullcordError as error:
        raise click.UsageError(str(error)) from error
    findings = tuple(each for each in project.findings if is_asked(each.file, choice))
    _print_findings(findings)
    if not findings:
        paths_read = [each.path for each in project.files.values()]
        paths_read += [each.path for each in project.machines.values()]
        count = sum(is_asked(str(path), choice) for path in paths_read)
        click.echo(f"{count} checked, nothing found", err=True)
    sys.exit(any(strict or each.severity is Severity.ERROR for each in findings))


@main.command()
@click.option("-f", "--config", default=SETTINGS, type=EXISTING_FILE, help="The settings to use.")
@click.option("--site-dir", type=FOLDER, help="Where the site goes, if not where they say.")
@click.option("--strict", is_flag=True, help="Let warnings fail the build.")
def build(config: Path, site_dir: Path | None, strict: bool) -> None:
    """Build the site. A build that fails leaves the last good site in place."""
    from pullcord.plugin import build_site  # A check must not wait for MkDocs to be loaded.

    try:
        place = build_site(config, site_dir, strict)
    except FindingsError as error:
        _print_findings(error.findings)
        click.echo("the site stays as it was", err=True)
        sys.exit(1)
    except PullcordError as error:
        click.echo(f"error: {error}", err=True)
        sys.exit(1)
    click.echo(f"The site is in {place}")


@main.command()
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


@main.command("print")
@click.argument("name", default="")
@click.option("--machine", default="", help="A machine, whose limits are printed.")
@click.option("--paper", type=click.Choice(PAPERS), default="a4", show_default=True)
@click.option("--what", type=click.Choice(KINDS), default="flowchart", show_default=True)
@click.option("-o", "--output", required=True, type=OUTPUT, help="The PDF file to write.")
def print_(name: str, machine: str, paper: PaperName, what: Kind, output: Path) -> None:
    """Write a PDF to be printed.

    NAME is a procedure; for `--what pins` it may be a machine. A binder without one holds
    everything.
    """
    from pullcord.printing.output import print_sheets  # A check must not wait for these either.
    from pullcord.printing.press import UnknownNameError
    from pullcord.site.paper import read_project_press

    if not name and what != "binder" and not (what == "pins" and machine):
        raise click.UsageError("name a procedure, such as `pullcord print no-spark -o chart.pdf`")
    try:
        output.write_bytes(print_sheets(read_project_press(paper), what, name, machine))
    except UnknownNameError as error:
        raise click.UsageError(str(error)) from error
    except FindingsError as error:
        _print_findings(error.findings)
        sys.exit(1)
    except PullcordError as error:
        click.echo(f"error: {error}", err=True)
        sys.exit(1)
    except OSError as error:
        click.echo(f"error: {output} cannot be written: {error.strerror}", err=True)
        sys.exit(1)
    click.echo(f"The PDF is {output}")


@main.command()
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
        _print_findings(error.findings)
        sys.exit(1)
    except PullcordError as error:
        click.echo(f"error: {error}", err=True)
        sys.exit(1)
    click.echo(text)


def _print_findings(findings: Iterable[Finding]) -> None:
    found = tuple(findings)
    for finding in found:
        path = Path(finding.file)
        raw = read_file(path, path.parent)
        near = replace(finding, file=_near(path))
        click.echo(show_finding(near, raw if isinstance(raw, bytes) else b""))
    if found:
        click.echo(count_findings(found), err=True)


def _near(path: Path) -> str:
    """Return a path as seen from the present folder, if it is below it."""
    here = Path.cwd()
    return (path.relative_to(here) if path.is_relative_to(here) else path).as_posix()
