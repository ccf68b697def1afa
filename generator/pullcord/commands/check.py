"""`pullcord check`."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from pullcord.commands.garbage import garbage_collected_seldom
from pullcord.commands.kinds import EXISTING
from pullcord.commands.say import TEXT, print_report
from pullcord.errors import FindingsError, PullcordError
from pullcord.finding import Severity
from pullcord.project import Project
from pullcord.rules.report import FORMATS
from pullcord.rules.report.made import Report
from pullcord.site.own import load_chosen
from pullcord.source.choice import Choice, choose, is_asked


@click.command()
@click.argument("paths", nargs=-1, type=EXISTING, metavar="[PATH]...")
@click.option("--strict", is_flag=True, help="Let warnings count as errors.")
@click.option(
    "--format",
    "form",
    type=click.Choice((TEXT, *FORMATS)),
    default=TEXT,
    show_default=True,
    help="For a person, or for a program.",
)
def check(paths: tuple[Path, ...], strict: bool, form: str) -> None:
    """Say what is wrong with procedures, machine sheets, stages and job logs.

    PATH is a file, a folder of them, or a project: a folder whose mkdocs.yml lists the plugin.
    Without one, the project in the present folder is checked, or the procedures that come with
    Pullcord.
    """
    try:
        choice = choose(paths)
        with garbage_collected_seldom():
            project = load_chosen(choice)
    except FindingsError as error:
        print_report(Report(error.findings), form)
        sys.exit(1)
    except PullcordError as error:
        raise click.UsageError(str(error)) from error
    report = Report(
        tuple(each for each in project.findings if is_asked(each.file, choice)),
        tuple(each for each in project.allowed if is_asked(each.finding.file, choice)),
    )
    print_report(report, form)
    _say_what_else(report, project, choice)
    sys.exit(any(strict or each.severity is Severity.ERROR for each in report.findings))


def _say_what_else(report: Report, project: Project, choice: Choice) -> None:
    if not report.findings:
        kinds = (project.files, project.machines, project.jobs)
        paths_read = [each.path for kind in kinds for each in kind.values()]
        count = sum(is_asked(str(path), choice) for path in paths_read)
        click.echo(f"{count} checked, nothing found", err=True)
    if report.allowed:
        click.echo(f"{len(report.allowed)} allowed by the files themselves", err=True)
