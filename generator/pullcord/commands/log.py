"""`pullcord log`."""

from __future__ import annotations

import sys
from collections.abc import Mapping
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from pullcord.commands.entry_options import entry_options
from pullcord.commands.kinds import EXISTING_FILE
from pullcord.commands.say import print_findings, show_findings
from pullcord.errors import FindingsError, PullcordError
from pullcord.model.base import kebab
from pullcord.source.item import block_item

if TYPE_CHECKING:
    from pullcord.site.job_log import Added

EXAMPLE = "pullcord log damson-spring --did 'Cleaned the tank' --minutes 30"


@click.command()
@click.argument("job")
@click.option("--walk", type=EXISTING_FILE, help="Take in a file that the guided walk has saved.")
def log(job: str, walk: Path | None, **given: Any) -> None:
    """Add an entry to a job's log, or take in a guided walk.

    JOB is a job's name, or the path of its file. What stands in the file stays as it is: comments,
    order, blank lines. The new entry is checked first, and nothing is written unless all is well.

    \b
    pullcord log damson-spring --did "Cleaned the tank" --drains petrol --minutes 40
    pullcord log damson-spring --procedure no-spark --step source-coil
        --reading "252 ohm" --answer within
    pullcord log damson-spring --part "Spark plug=4.50 #ORCH-7" --part "Fuel hose=3"
    pullcord log damson-spring --walk no-spark-damson.json
    """
    from pullcord.site.find_job import UnknownJobError  # A check must not wait for these.
    from pullcord.site.job_log import EntryError

    options = {kebab(name): value for name, value in given.items() if value not in (None, ())}
    if walk is not None and options:
        raise click.UsageError("--walk takes everything from the file: say the rest by itself")
    if walk is None and not set(options) - {"date"}:
        raise click.UsageError(f"say what was done, such as\n  {EXAMPLE}")
    try:
        _add(job, walk, options)
    except UnknownJobError as error:
        raise click.UsageError(str(error)) from error
    except EntryError as error:
        show_findings(error.findings, error.raw)
        click.echo("nothing was written: this is how the log would read", err=True)
        sys.exit(1)
    except FindingsError as error:
        print_findings(error.findings)
        click.echo("nothing was written: mend this first", err=True)
        sys.exit(1)
    except PullcordError as error:
        click.echo(f"error: {error}", err=True)
        sys.exit(1)


for add_option in entry_options():
    add_option(log)


def _add(job: str, walk: Path | None, options: Mapping[str, Any]) -> None:
    from pullcord.site.find_job import find_job
    from pullcord.site.job_log import add_entries, open_log
    from pullcord.site.typed_entry import read_typed
    from pullcord.site.walk_file import read_walk

    place = find_job(job)
    opened = open_log(place)
    now = f"{datetime.now():%Y-%m-%d %H:%M}"
    notes: list[str] = []
    if walk is not None:
        maker = read_walk(walk, opened.project, now, notes.append)
    else:
        maker = read_typed(options, now[:10])
    added = add_entries(opened, maker)
    for note in notes:
        click.echo(f"note: {note}", err=True)
    _tell(place.path, added)


def _tell(path: Path, added: Added) -> None:
    if not added.entries:
        click.echo(f"{path} stays as it is: there is nothing new")
        return
    count = "1 entry" if len(added.entries) == 1 else f"{len(added.entries)} entries"
    click.echo(f"{count} added to {path}:")
    for entry in added.entries:
        click.echo("\n".join(block_item(entry, 2)))
    if added.is_amid:
        click.echo("note: entries of a later date stand behind it", err=True)
    show_findings(added.warnings, added.raw)
