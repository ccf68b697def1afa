"""`pullcord new`."""

from __future__ import annotations

import sys
from collections.abc import Mapping
from datetime import date
from typing import TYPE_CHECKING, Any

import click

from pullcord.commands.say import show_findings
from pullcord.errors import PullcordError

if TYPE_CHECKING:
    from pullcord.site.begin_file import Kind, Place

UNKNOWN = "unknown"
IGNITIONS = ("magneto", "points", "capacitor-discharge", "battery-coil", UNKNOWN)
STROKES = ("two", "four", UNKNOWN)


@click.group()
def new() -> None:
    """Begin a procedure, a machine sheet or a job.

    What is not given is asked. The file is small, complete and commented; change its words to your
    own. Nothing is ever written over.
    """


@new.command()
@click.argument("name")
@click.option("--title", prompt="What is wrong, in a few words", help="What is wrong.")
@click.option(
    "--symptom",
    prompt="What does the owner see or hear, in one sentence",
    help="What the owner sees or hears.",
)
def procedure(name: str, title: str, symptom: str) -> None:
    """Begin a procedure.

    NAME is in small letters with hyphens, such as `wont-charge`.
    """
    _begin(_place(), "procedure", name, {"title": title, "symptom": symptom})


@new.command()
@click.argument("name")
@click.option("--title", prompt="What does your shop call it", help="What your shop calls it.")
@click.option(
    "--kind", prompt="What kind of machine is it, such as `pump`", help="What kind it is."
)
@click.option(
    "--ignition",
    type=click.Choice(IGNITIONS),
    default=UNKNOWN,
    prompt="How is its spark made",
    help="How its spark is made.",
)
@click.option(
    "--strokes",
    type=click.Choice(STROKES),
    default=UNKNOWN,
    prompt="Is its engine a two-stroke or a four-stroke",
    help="Two-stroke or four-stroke.",
)
def machine(name: str, title: str, kind: str, ignition: str, strokes: str) -> None:
    """Begin a machine sheet.

    NAME is in small letters with hyphens, such as `old-mower`.
    """
    from pullcord.site.begin import as_name

    answers = {
        "title": title,
        "kind": as_name(kind) or "machine",
        "ignition": _known(ignition),
        "strokes": _known(strokes),
    }
    _begin(_place(), "machine", name, answers)


@new.command()
@click.argument("name")
@click.option("--machine", "sheet", default="", help="The machine, by the name of its sheet.")
@click.option(
    "--purpose", prompt="What is it meant to do when it is ready", help="What it is meant to do."
)
@click.option("--most", prompt="The most it may cost, all in", help="The most it may cost.")
@click.option("--taken-in", default="", help="The day it came in. Today, if not given.")
def job(name: str, sheet: str, purpose: str, most: str, taken_in: str) -> None:
    """Begin a job: the log of one machine.

    NAME is in small letters with hyphens, such as `old-mower-spring`.
    """
    from pullcord.site.begin_file import has_first_stage

    place = _place()
    answers = {
        "machine": sheet or _ask_machine(place),
        "purpose": purpose,
        "most": most.strip(),
        "today": taken_in or f"{date.today():%Y-%m-%d}",
        "has_stages": has_first_stage(place.project.library),
    }
    _begin(place, "job", name, answers)


def _known(word: str) -> str:
    return "" if word == UNKNOWN else word


def _ask_machine(place: Place) -> str:
    sheets = list(place.project.machines)
    if not sheets:
        raise click.UsageError(
            "there is no machine sheet yet: begin one with `pullcord new machine NAME`"
        )
    default = sheets[0] if len(sheets) == 1 else None
    return str(click.prompt("Which machine", type=click.Choice(sheets), default=default))


def _place() -> Place:
    from pullcord.site.begin_file import begin_place  # Help must not wait for it.

    try:
        return begin_place()
    except PullcordError as error:
        raise click.UsageError(str(error)) from error


def _begin(place: Place, kind: Kind, name: str, answers: Mapping[str, Any]) -> None:
    from pullcord.site.begin import DraftError
    from pullcord.site.begin_file import begin_file

    try:
        path = begin_file(place, kind, name, answers)
    except DraftError as error:
        show_findings(error.findings, error.raw)
        click.echo("nothing was written: this is how the file would read", err=True)
        sys.exit(1)
    except PullcordError as error:
        click.echo(f"error: {error}", err=True)
        sys.exit(1)
    click.echo(f"Written: {path}")
    click.echo("Open it in an editor and change its words to your own; then run `pullcord check`.")
