"""What stands beside a fuzzed file: a small project, and what a meter and a walk need of it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from pullcord.model.base import Record
from pullcord.model.job import Job
from pullcord.model.machine import Machine
from pullcord.model.procedure import Library, Procedure
from pullcord.model.shared import Shared
from pullcord.model.stage import StageList
from pullcord.rules.document import Document, build_library, model_of, read_document, read_pieces
from pullcord.rules.example import example

PROCEDURE = example(
    """
    tools: {multimeter: {title: Multimeter}}
    causes:
      air-leak:
        title: Air leak
        odds: 3
        odds-from: from memory
        remedy: Tighten the clamps.
        parts: 4
        minutes: 10
      flat-battery:
        title: Flat battery
        odds: 2
        odds-from: from memory
        remedy: Charge it outdoors.
      lead-open: {title: Broken lead, remedy: Fit a new lead.}
    steps:
      casing:
        title: Casing
        do: Look.
        ask: Is it full?
        answers: {full: cause air-leak, not full: step battery}
      battery:
        title: Battery
        do: Measure.
        needs: multimeter
        reading: {quantity: voltage, at: battery, general: 12-13 V, source: common practice}
        answers: {below: cause flat-battery, within: step lead, above: cause flat-battery}
      lead:
        title: Source coil
        do: Measure.
        near: high-voltage
        needs: multimeter
        reading: {quantity: resistance, at: plug.lead, against: ground, limits: lead}
        answers: {below: cause lead-open, within: done, above: cause lead-open}
    """
)
STAGES = """\
stages: own
stage:
  taken-in: {title: Taken in, means: It is here., proved-by: [{job: taken-in}]}
  runs:
    title: Runs
    means: It runs.
    after: taken-in
    proved-by: [{procedure: no-prime, step: casing, answers: full}]
    looked-for-in: no-prime
    not-while: [test-lead, bypass]
    ends-here: 8
    source: from memory
  drives: {title: Drives, means: It drives., after: runs}
"""
MACHINE = """\
machine: plough
title: Old plough
kind: plough
values:
  lead: {limits: 200-300 ohm, source: measured from a good one, winding: copper}
connectors:
  plug:
    title: The plug by the seat
    rows: 1
    columns: 2
    pins:
      lead: {at: a1, wire: BK/WH, function: source coil, expect: [{against: ground, value: lead}]}
      other: {at: a2, wire: RD, function: charging}
"""
JOB = """\
job: plough-autumn
machine: plough
taken-in: 2026-03-01
purpose: To plough the upper field.
most: 250.00
wanted:
  chain: {title: Drive chain, price: 32, serves: drives}
log:
  - {date: 2026-03-01, did: It turns., shows: taken-in, opens: petrol, minutes: 20}
  - {date: 2026-03-02 19:40, procedure: no-prime, step: casing, answer: not full}
  - date: 2026-03-03
    procedure: no-prime
    step: lead
    answer: within
    reading: 252 ohm
    celsius: 9.5
    parts:
      - {title: Fuel hose, price: 3.20, serves: runs, number: FH-1}
    note: The lamp came on for a moment.
"""
WALK = """\
walk: no-prime
format: 1
revision: 0123456789ab
machine: plough
shop-celsius: 10
rounds:
  - began: 2026-03-04 19:20
    left: 2026-03-04 20:05
    at: step lead
    answers:
      - {step: casing, answer: not full, when: 2026-03-04 19:30}
      - {step: battery, answer: within, reading: 12.4 V, when: 2026-03-04 19:40}
"""
FILES = {
    "procedures/no-prime.yaml": PROCEDURE,
    "procedures/own.yaml": STAGES,
    "machines/plough.yaml": MACHINE,
    "jobs/plough-autumn.yaml": JOB,
}
"""The project, text by path."""
KINDS: tuple[type[Record], ...] = (Procedure, Machine, StageList, Job, Shared)

Documents = Mapping[type[Record], list[Document[Any]]]
"""Files by what they hold."""


def read_all(files: Mapping[str, bytes]) -> Documents:
    """Read files as a project does: those that share pieces first."""
    shared = [read_document(n, raw, Shared) for n, raw in files.items() if model_of(raw) is Shared]
    pieces = read_pieces(shared)
    documents = {model: list[Document[Any]]() for model in KINDS}
    documents[Shared] = shared
    for name, raw in files.items():
        model = model_of(raw)
        if model is not Shared:
            documents[model].append(read_document(name, raw, model, pieces))
    return documents


def library_of(documents: Documents) -> Library:
    """Return what could be read of them as one library."""
    return build_library(
        documents[Procedure],
        documents[Machine],
        None,
        documents[StageList],
        documents[Job],
    )
