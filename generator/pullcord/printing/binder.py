"""Everything a project prints, as one document with contents and page numbers."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from pullcord.errors import PullcordError
from pullcord.pages.imprint import printed_lines
from pullcord.printing.frame import Said
from pullcord.printing.parts.chart import chart_part
from pullcord.printing.parts.leaving import leaving_part
from pullcord.printing.parts.pins import pin_part
from pullcord.printing.parts.record import record_part, takes_readings
from pullcord.printing.parts.steps import step_part
from pullcord.printing.press import Press, frames_for, subject_named, topic
from pullcord.readings import is_fitting

Part = Mapping[str, Any]
_SIGNALS = ("danger", "warning", "caution", "notice")


def binder_parts(press: Press, name: str = "", machine: str = "") -> list[Part]:
    """Return all parts: contents, then the sheets of each procedure, then those of each machine.

    With a name it is the binder of one procedure; with a machine, that of one machine: its limits
    stand on every sheet, and only procedures that fit it are in. Raises PullcordError for an
    unknown name, or when nothing is left to print.
    """
    names = [topic(press, name).posts.procedure.procedure] if name else list(press.project.files)
    fitting = [each for each in names if not machine or _fits(press, each, machine)]
    machines = [machine] if machine else list(press.project.machines)
    parts = [part for each in fitting for part in _procedure(press, each, machine)]
    parts += [part for each in machines for part in _machine(press, each, fitting, bool(machine))]
    if not parts:
        raise PullcordError("there is nothing to print: no procedure fits")
    return [_contents(press, machine), *parts]


def _procedure(press: Press, name: str, machine: str) -> Iterator[Part]:
    about = topic(press, name, machine)
    yield chart_part(about)
    yield step_part(about)
    if takes_readings(about) and (machine or not _machines_for(press, name)):
        yield record_part(about)
    yield leaving_part(about)


def _machine(press: Press, machine: str, names: list[str], is_only: bool) -> Iterator[Part]:
    """Yield a machine's pin charts, and its record sheets unless they stand with the procedures."""
    subject = subject_named(press, machine)
    if subject.plugs:
        yield pin_part(press, subject)
    for name in () if is_only else names:
        about = topic(press, name, machine)
        if takes_readings(about) and _fits(press, name, machine):
            yield record_part(about)


def _machines_for(press: Press, name: str) -> list[str]:
    return [machine for machine in press.project.machines if _fits(press, name, machine)]


def _fits(press: Press, name: str, machine: str) -> bool:
    subject = subject_named(press, machine)
    procedure = press.project.files[name].procedure
    return subject.machine is not None and is_fitting(procedure, subject.machine)


def _contents(press: Press, machine: str) -> Part:
    words, kit = press.words, press.kit
    said = Said(
        title=words["binder_title"],
        below=words["binder_says"],
        machine=subject_named(press, machine).title if machine else "",
        imprint=printed_lines(kit),
        deferral=kit.standing.deferral,
    )
    frame, _ = frames_for(press, said)
    return {
        "kind": "contents",
        **frame.data(),
        "signals_title": words["binder_signals"],
        "signals": [
            (kit.words[f"signal_{level}"], level != "notice", kit.words[f"signal_{level}_means"])
            for level in _SIGNALS
        ],
    }
