"""`pullcord check`."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from pullcord.commands.kinds import EXISTING
from pullcord.commands.say import print_findings
from pullcord.errors import FindingsError, PullcordError
from pullcord.finding import Severity
from pullcord.site.own import load_chosen
from pullcord.source.choice import choose, is_asked


@click.command()
@click.argument("paths", nargs=-1, type=EXISTING, metavar="[PATH]...")
@click.option("--strict", is_flag=True, help="Let warnings count as errors.")
def check(paths: tuple[Path, ...], strict: bool) -> None:
    """Say what is wrong with procedures and machine sheets.

    PATH is a file, a folder of them, or a project: a folder whose mkdocs.yml lists the plugin.
    Without one, the project in the present folder is checked, or the procedures that come with
    Pullcord.
    """
    try:
        choice = choose(paths)
        project = load_chosen(choice)
    except FindingsError as error:
        print_findings(error.findings)
        sys.exit(1)
    except PullcordError as error:
        raise click.UsageError(str(error)) from error
    findings = tuple(each for each in project.findings if is_asked(each.file, choice))
    print_findings(findings)
    if not findings:
        kinds = (project.files, project.machines, project.jobs)
        paths_read = [each.path for kind in kinds for each in kind.values()]
        count = sum(is_asked(str(path), choice) for path in paths_read)
        click.echo(f"{count} checked, nothing found", err=True)
    sys.exit(any(strict or each.severity is Severity.ERROR for each in findings))
