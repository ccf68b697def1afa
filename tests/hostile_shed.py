"""A small shed with every kind of file and every kind of record, for hostile text to be put in."""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping
from itertools import takewhile
from pathlib import Path
from typing import Any

import yaml

from pullcord.finding import Finding, Severity
from pullcord.model.schema import KINDS
from pullcord.project import load_project
from tests.hostile import MARK, fields_of, put
from tests.pages.make import BIKE
from tests.shed import write_files

PROCEDURE = """\
procedure: hostile
title: Hostile
symptom: The lamp stays dark.
also-said: [no light]
signs: {seen: [dark], heard: [hum], smelt: [burnt], felt: [warm]}
about: For anyone.
fits: {kind: [farm-bike], ignition: [points], fuel: [carburettor], strokes: [two]}
before: [Stand still.]
tools: {lamp: {title: Lamp, instead: Another.}}
proves: It lights.
mistakes: [Haste.]
start: look
causes:
  bulb: {title: Bulb burnt out, remedy: Fit a new one., odds: 2, parts: 3, minutes: 5}
  coil: {title: Coil broken, remedy: Fit another., odds: 1}
steps:
  look:
    title: Look
    do: Look at it.
    needs: [lamp]
    ask: Is it on?
    answers: {it is on: step coil, it is off: cause bulb}
    tells: {it is off: [coil]}
  coil:
    title: Measure
    do: Measure across it.
    reading: {quantity: resistance, at: unit.source, against: unit.ground, limits: source-coil,
              general: 200-300 ohm, source: common practice}
    answers: {below: cause coil, within: step after, above: cause coil}
  after:
    title: Put it away
    do: Put it away.
    then: done
"""
SHARED = """\
shared: bench
tools: {hook: {title: Hook, instead: Wire.}}
causes:
  wire: {title: Wire off, remedy: Put it on., odds: 2, parts: 3, minutes: 5}
steps:
  pull: {title: Pull, do: Pull at it., needs: [hook], ask: 'Does it hold?'}
  see: {title: See, do: Read it., reading: {quantity: resistance, at: here, general: 1-2 ohm,
                                              source: common practice}}
"""
BORROWS = """\
procedure: borrows
title: Borrows
symptom: The lamp flickers.
about: For anyone else.
start: pull
causes:
  wire: {as: wire}
  end: {title: Worn, remedy: Fit another.}
steps:
  pull: {as: pull, answers: {it holds: step see, it comes off: cause wire}}
  see: {as: see, answers: {below: cause end, within: done, above: cause end}}
"""
MACHINE = BIKE.replace("value: source-coil}", "value: source-coil, key: 'on', source: the book}")
JOB = """\
job: spring
machine: old-bike
taken-in: 2026-02-14
purpose: To carry ladders.
most: 250
note: It waits.
wanted: {chain: {title: Chain, price: 32, serves: lit, number: C-1, after: [lit], note: Soon.}}
log:
  - date: 2026-02-21
    procedure: hostile
    step: coil
    answer: within
    reading: 252 ohm
    did: Measured it.
    note: Warm.
  - date: 2026-02-22 18:30
    did: Bought one.
    parts: [{title: Bulb, price: 3, number: B-1, serves: lit}]
    note: Cold.
"""
STAGES = """\
stages: lamps
stage:
  lit:
    title: Lit
    means: It lights.
    proved-by:
      - {procedure: hostile, step: look, answers: [it is off]}
      - {procedure: borrows, step: pull, answers: [it holds]}
    looked-for-in: [hostile]
    source: common practice
  rolls: {title: Rolls, means: It rolls., after: [lit]}
"""
METER = """\
title: the good meter
leads: 0.05 ohm
ranges: [{up-to: 2 kohm, step: 0.1 ohm, percent: 0.1, digits: 1}]
"""
WHERE = {
    "procedure": "procedures/hostile.yaml",
    "machine": "machines/old-bike.yaml",
    "job": "jobs/spring.yaml",
    "stages": "procedures/lamps.yaml",
    "shared": "procedures/bench.yaml",
}
TEXTS = {
    "procedure": PROCEDURE, "machine": MACHINE, "job": JOB, "stages": STAGES, "shared": SHARED
}  # fmt: skip
# Every scalar stays text, as in a file of a shop.
DATA: Mapping[str, Any] = {
    kind: yaml.load(text, Loader=yaml.BaseLoader)  # noqa: S506 text only
    for kind, text in TEXTS.items()
}
FIELDS = dict(
    enumerate(
        field for kind, model in KINDS.items() for field in fields_of(kind, model, DATA[kind])
    )
)
"""Every place for a string in these files, numbered."""


_MARK = re.compile(MARK + r"(\d{3})")
Refused = dict[int, tuple[Finding, ...]]
"""What is said, by the number of the field."""


def write_hostile(folder: Path, numbers: Collection[int]) -> Path:
    """Write the shed's files, with hostile text in some fields; return the folder."""
    texts = put(DATA, {number: FIELDS[number] for number in numbers})
    files = {WHERE[kind]: text for kind, text in texts.items()}
    return write_files(folder, {**files, "procedures/borrows.yaml": BORROWS})


def errors_in(folder: Path, numbers: Collection[int]) -> tuple[Finding, ...]:
    """Return every error of the shed with hostile text in some fields."""
    write_hostile(folder, numbers)
    findings = load_project([folder / name for name in ("procedures", "machines", "jobs")]).findings
    return tuple(each for each in findings if each.severity is Severity.ERROR)


def refused_first(folder: Path, numbers: Collection[int]) -> Refused:
    """Return what is said of those fields that are pointed at when all are hostile at once."""
    refused: Refused = {}
    for each in errors_in(folder, numbers):
        for number in _marks(each):
            refused[number] = (*refused.get(number, ()), each)
    return {number: found for number, found in refused.items() if number in numbers}


def refused_in_turn(folder: Path, numbers: Collection[int]) -> Refused:
    """Return what is said of all fields that are refused; one error may hide another at first."""
    refused: Refused = {}
    while found := refused_first(folder, [each for each in numbers if each not in refused]):
        refused |= found
    return refused


def taken_fields(folder: Path) -> tuple[list[int], Refused]:
    """Return free fields that can be hostile together, and what is said of the other free ones.

    Where of two fields only one may be filled in, the other one is tried by itself afterwards.
    """
    free = [number for number, field in FIELDS.items() if field.is_free]
    refused = refused_in_turn(folder, free)
    taken = [number for number in free if number not in refused]
    known = {FIELDS[number].name for number in taken}
    for number in sorted(refused):
        if FIELDS[number].name not in known and errors_in(folder, [*taken, number]) == ():
            taken.append(number)
            known.add(FIELDS[number].name)
    return taken, {each: found for each, found in refused.items() if FIELDS[each].name not in known}


def _marks(finding: Finding) -> list[int]:
    """Return the fields in the line of a finding or in its words, else those in the block below."""
    lines = Path(finding.file).read_text("utf-8").splitlines()[finding.line - 1 :]
    below = takewhile(lambda line: _indent(line) > finding.column - 1, lines[1:])
    found = _MARK.findall(lines[0] + finding.message) or _MARK.findall("\n".join(below))
    return [int(digits) for digits in found]


def _indent(line: str) -> int:
    return len(line) - len(line.lstrip(" -"))
