"""A small complete job with what belongs to it, so that each example shows only what matters."""

from __future__ import annotations

from collections.abc import Mapping
from textwrap import dedent

MACHINE = """\
machine: old-pump
title: Old pump
kind: pump
values:
  priming-time:
    title: Time until water comes
    limits: under 60 s
    source: common practice
"""

PROCEDURE = """\
procedure: no-prime
title: Pump will not prime
symptom: The engine runs, but no water comes.
about: For a self-priming pump whose engine runs well.
start: casing
causes:
  dry-casing:
    title: No water in the pump casing
    remedy: Fill the casing to the filler plug and fit the plug tight.
  air-leak:
    title: Air leak on the suction side
    remedy: Fit a new hose washer and tighten the clamps.
steps:
  casing:
    title: Water in the casing
    do: Take out the filler plug and look for water.
    ask: Is the casing full?
    answers:
      full: step time-it
      not full: cause dry-casing
  time-it:
    title: Time it
    do: Count the seconds until water comes out of the hose.
    reading:
      quantity: time
      at: the outlet
      limits: priming-time
      general: under 60 s
      source: common practice
    answers:
      within: done
      above: cause air-leak
"""

STAGES = """\
stages: pump-stages
stage:
  taken-in:
    title: Taken in
    means: What it is for and what it may cost is written down.
    proved-by:
      - {job: taken-in}
  primes:
    title: Primes
    means: It draws water by itself.
    after: taken-in
    proved-by:
      - {procedure: no-prime}
    looked-for-in: no-prime
"""

_HEAD = """\
job: old-pump-spring
machine: old-pump
taken-in: 2026-02-01
purpose: To water the seedlings.
most: 80
"""

_PLAIN_STAGES = """\
stages: pump-stages
stage:
  primes: {title: Primes, means: It draws water by itself.}
"""

_FILES = {"no-prime.yaml": PROCEDURE, "pump-stages.yaml": _PLAIN_STAGES}


def job_example(body: str, *files: str) -> Mapping[str, str]:
    """Return a job with this body and its machine's sheet, and those of the other files named."""
    return {
        "old-pump-spring.yaml": _HEAD + dedent(body).lstrip("\n"),
        "old-pump.yaml": MACHINE,
        **{name: _FILES[name] for name in files},
    }


def stages_example(stages: str) -> Mapping[str, str]:
    """Return a list of stages with the procedure it may name."""
    return {"no-prime.yaml": PROCEDURE, "pump-stages.yaml": stages}


def mended(files: Mapping[str, str], wrong: str, right: str) -> Mapping[str, str]:
    """Return an example's files with the words that are wrong replaced in its first one."""
    first, *_ = files
    return {**files, first: files[first].replace(wrong, right)}
