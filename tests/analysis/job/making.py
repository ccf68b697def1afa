"""A small shed to think about: three procedures, one sheet, six stages, and logs as their text."""

from __future__ import annotations

from typing import Any

from pullcord.analysis.job.given import Given, given_of
from pullcord.model.base import Record
from pullcord.model.job import Job
from pullcord.model.machine import Machine
from pullcord.model.procedure import Library, Procedure
from pullcord.model.stage import StageList
from pullcord.rules.document import read_document

SPARK = """\
procedure: spark
title: No spark
symptom: It turns over without a spark.
about: For trying out.
start: fit-lead
tools:
  lead: {title: Test lead}
  meter: {title: Ohm meter}
causes:
  unit: {title: Ignition unit dead, remedy: Fit another., odds: 1, parts: 60}
  coil: {title: Source coil bad, remedy: Fit another., odds: 2, parts: 40, opens: guard}
  plug: {title: Plug fouled, remedy: Fit a new one., odds: 5, parts: 5, takes-off: test-lead}
steps:
  fit-lead: {title: Fit the lead, do: Fit it., needs: lead, minutes: 2, fits: test-lead,
             then: step gap}
  gap:
    title: Look at the gap
    do: Spin it.
    minutes: 3
    makes: spark
    ask: What do you see?
    answers: {strong spark: step lead-off, weak spark: cause plug, no spark: step coil}
  coil:
    title: Measure the coil
    do: Measure it.
    needs: meter
    minutes: 10
    reading: {quantity: resistance, at: its wire, limits: source-coil}
    answers: {below: cause coil, within: cause unit, above: cause coil}
  lead-off: {title: Take the lead off, do: Take it off., takes-off: test-lead, then: done}
"""

LEAK = """\
procedure: leak
title: It leaks
symptom: It smells of petrol.
about: For trying out.
start: look
causes:
  tap: {title: Tap leaks, remedy: Fit a new one., odds: 3, parts: 12}
  hose: {title: Hose cracked, remedy: Fit a new one., odds: 1, parts: 4}
steps:
  look:
    title: Look under the tank
    do: Look.
    ask: What is wet?
    minutes: 4
    answers: {tap: cause tap, hose: cause hose, nothing: done}
"""

IDLE = """\
procedure: idle
title: It will not idle
symptom: It dies.
about: For trying out.
start: start-it
causes:
  jet: {title: Jet blocked, remedy: Clean it., odds: 1}
steps:
  start-it:
    title: Start it
    do: Start it.
    minutes: 6
    makes: running
    ask: What does it do?
    answers: {idles: done, dies: cause jet, never starts: procedure spark, smells: procedure leak}
"""

STAGES = """\
stages: small
stage:
  taken-in: {title: Taken in, means: Written down., proved-by: [{job: taken-in}]}
  safe: {title: Safe to work on, means: It is safe., after: taken-in}
  spark-proved:
    title: Spark proved
    means: It sparks.
    after: safe
    proved-by:
      - {procedure: spark}
      - {value: plug-gap}
      - {procedure: spark, step: gap, answers: strong spark}
    looked-for-in: spark
    not-while: [test-lead, bypass]
    ends-here: 10
  fuel-proved:
    title: Fuel proved
    means: It holds.
    after: safe
    proved-by: [{procedure: leak}]
    looked-for-in: leak
    ends-here: 5
  runs:
    title: Runs
    means: It runs.
    after: [spark-proved, fuel-proved]
    proved-by: [{procedure: idle}]
    looked-for-in: idle
    not-while: [test-lead, bypass, borrowed-part, auxiliary-tank]
    ends-here: 20
  drives: {title: Drives, means: It drives., after: [runs, fuel-proved], ends-here: 8}
"""

MACHINE = """\
machine: old-bike
title: Old bike
kind: farm-bike
values:
  source-coil: {title: Source coil, limits: 200-300 ohm, winding: copper, source: common practice}
  plug-gap: {title: Plug gap, limits: 0.6-0.7 mm, source: common practice}
  charging-voltage: {title: Charging voltage, limits: 13.8-14.6 V, source: common practice}
  stop-wire-run: {title: Stop wire at run, limits: over 1 Mohm, source: common practice}
  chain: {value: 78 links}
"""

HEAD = """\
job: old-bike-spring
machine: old-bike
taken-in: 2026-02-01
purpose: To carry ladders.
most: 200
"""

SAFE = "{date: 2026-02-01, shows: safe, drains: petrol}"
SPARKS = "{date: 2026-02-02, procedure: spark, answer: done}"
TIGHT = "{date: 2026-02-03, procedure: leak, answer: done}"
RUNS = "{date: 2026-02-04, procedure: idle, answer: done}"


def read(text: str, model: type[Record]) -> Any:
    """Return a record from its text; what is wrong with it fails the test."""
    document = read_document("file.yaml", text.encode(), model)
    assert document.record is not None, (document.text_flaws, document.flaws)
    return document.record


def make_job(*log: str, head: str = HEAD) -> Job:
    """Return a job whose entries are given as YAML flow mappings."""
    lines = "".join(f"  - {entry}\n" for entry in log)
    return read(head + (f"log:\n{lines}" if log else ""), Job)


def make_library(*jobs: Job, stages: str = STAGES, **changes: Any) -> Library:
    """Return the shed with some jobs."""
    procedures = [read(text, Procedure) for text in (SPARK, LEAK, IDLE)]
    return Library(
        **{
            "procedures": {each.procedure: each for each in procedures},
            "machines": {"old-bike": read(MACHINE, Machine)},
            "stages": read(stages, StageList).stage,
            "jobs": {each.job: each for each in jobs},
            **changes,
        }
    )


def make_given(*log: str, head: str = HEAD, **changes: Any) -> Given:
    """Return a job of this shed, ready to be read."""
    job = make_job(*log, head=head)
    return given_of(job, make_library(job, **changes))
