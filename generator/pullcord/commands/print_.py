"""`pullcord print`."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from pullcord.commands.kinds import OUTPUT
from pullcord.commands.say import print_findings
from pullcord.errors import FindingsError, PullcordError
from pullcord.printing.paper import KINDS, PAPERS, Kind, PaperName


@click.command("print")
@click.argument("name", default="")
@click.option("--machine", default="", help="A machine, whose limits are printed.")
@click.option("--paper", type=click.Choice(PAPERS), default="a4", show_default=True)
@click.option("--what", type=click.Choice(KINDS), default="flowchart", show_default=True)
@click.option("-o", "--output", required=True, type=OUTPUT, help="The PDF file to write.")
def print_(name: str, machine: str, paper: PaperName, what: Kind, output: Path) -> None:
    """Write a PDF to be printed.

    NAME is a procedure; for `--what pins` it may be a machine, for `--what job` it is a job. A
    binder without one holds everything.
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
        print_findings(error.findings)
        sys.exit(1)
    except PullcordError as error:
        click.echo(f"error: {error}", err=True)
        sys.exit(1)
    except OSError as error:
        click.echo(f"error: {output} cannot be written: {error.strerror}", err=True)
        sys.exit(1)
    click.echo(f"The PDF is {output}")
