"""The walk tables: what a machine with a known fault shows, and the steps that find it out."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal
from pathlib import Path
from typing import Any

import yaml

from pullcord.graph import start_node
from pullcord.model.meter import MeterSheet
from pullcord.model.procedure import Library, Procedure, Reading, Step
from pullcord.model.target import Target
from pullcord.project import load_project
from pullcord.readings import for_machine, judge, parse_amount, parse_limits, parse_meter

HERE = Path(__file__).parent
WALKS = HERE / "walks"
PROCEDURES = HERE.parents[1] / "procedures"
CHEAP_METER = parse_meter(MeterSheet())
"""The cheap meter every reading in the tables is taken with."""


@dataclass(frozen=True)
class Walk:
    """One machine and how its fault is found."""

    procedure: str
    machine: str
    """What happened to it, in a few words."""
    end: str
    """Where the walk must arrive: `cause NAME`, `procedure NAME` or `done`."""
    shows: Mapping[str, str]
    """By step: the answer, or the reading, such as `250 ohm` or `OL`."""
    path: tuple[str, ...]
    """Every step on the way, in order."""


def read_library() -> Library:
    """Return the shipped procedures."""
    return load_project([PROCEDURES]).library


def read_walks() -> Iterator[Walk]:
    """Yield every walk of every table."""
    for path in sorted(WALKS.glob("*.yaml")):
        table = _read(path)
        for row in table["walks"]:
            yield Walk(
                procedure=path.stem,
                machine=row["machine"],
                end=row["end"],
                shows={**table["sound"], **row.get("gives", {})},
                path=tuple(_spelled_out(row["path"], table["stretches"])),
            )


def walked(procedure: Procedure, shows: Mapping[str, str]) -> tuple[list[str], Target]:
    """Follow a procedure with what a machine shows; return the steps and where they end."""
    steps, target = [], Target("step", start_node(procedure).removeprefix("step:"))
    while target.kind == "step":
        steps.append(target.name)
        step = procedure.steps[target.name]
        target = step.then or step.answers[answer_at(step, shows[target.name])]
    return steps, target


def answer_at(step: Step, shown: str) -> str:
    """Return the answer that what is shown stands for; a reading must be clear on the meter."""
    if step.reading is None:
        return shown
    known = for_machine(step.reading, tuple(step.answers), None, CHEAP_METER)
    value = _base(shown, step.reading)
    if known.is_at_face_value:
        return next(share.answer for share in known.shares if value in share.interval)
    band = judge(known.bands, value)
    assert not band.is_close, f"{step.title}: {shown} is too close to call ({band.words})"
    return band.answers[0]


def _base(shown: str, reading: Reading) -> Decimal:
    if shown == "OL":
        return parse_limits(shown, reading.quantity).interval.start.value
    return parse_amount(shown, reading.quantity).base


def _spelled_out(names: list[str], stretches: Mapping[str, list[str]]) -> Iterator[str]:
    for name in names:
        # A stretch may end in the step it is named after, so it is not spelled out twice.
        inner = stretches.get(name)
        if inner is None:
            yield name
        else:
            rest = {key: value for key, value in stretches.items() if key != name}
            yield from _spelled_out(inner, rest)


def _read(path: Path) -> Any:
    # BaseLoader makes text of every scalar and runs nothing.
    return yaml.load(path.read_text(encoding="utf-8"), yaml.BaseLoader)  # noqa: S506
