"""Small sides of a comparison, from text."""

from __future__ import annotations

from pullcord.analysis.diff.libraries import Side
from pullcord.model.machine import Machine
from pullcord.model.procedure import Procedure
from pullcord.rules.document import build_library, read_document

PUMP = """\
procedure: no-prime
title: Pump will not prime
symptom: The engine runs, but no water comes.
also-said: [it sucks air]
about: For a self-priming pump whose engine runs well.
fits: {kind: pump}
before: The hoses are on.
tools:
  meter: {title: A meter}
  bucket: {title: A bucket of water, instead: A can.}
proves: Water comes.
mistakes: Running it dry.
start: casing
other-odds: 2
causes:
  dry: {title: No water in the casing, remedy: Fill the casing to the plug., odds: 4, minutes: 5}
  leak: {title: Air leak at the suction side, remedy: Fit a new washer., parts: 2.50}
  float: {title: Float switch open, remedy: Fit a new float switch., odds-from: common practice}
steps:
  casing:
    title: Water in the casing
    do: Take out the filler plug and look for water.
    needs: bucket
    ask: Is the casing full?
    answers: {full: step float, not full: cause dry}
  float:
    title: Measure the float switch
    do: Unplug the float switch and measure across it with the float up.
    why: It closes when the tank is full.
    source: common practice
    needs: meter
    minutes: 10
    near: moving-parts
    reading:
      quantity: resistance
      at: the switch's two pins
      against: ground
      general: under 10 ohm
      source: common practice
    answers: {within: step washer, above: cause float}
  washer:
    title: Look at the washer
    do: Unscrew the suction hose and look at its washer.
    after: casing
    ask: Is the washer whole?
    answers: {whole: done, torn: cause leak}
    tells: {torn: dry}
"""

MACHINE = """\
machine: old-pump
title: Old pump
kind: pump
fuel: carburettor
altitude-metres: 100
values:
  float: {title: Float switch, limits: under 10 ohm, source: common practice}
  chain: {value: 78 links}
connectors:
  plug:
    title: Float plug
    rows: 1
    columns: 2
    pins:
      one: {at: a1, wire: BK, function: Float}
      two: {at: a2, wire: BN, function: Ground}
"""


def side(*texts: str) -> Side:
    """Return a side that holds some procedures and machine sheets."""
    read = {Procedure: [], Machine: []}
    for text in texts:
        model = Machine if text.startswith("machine:") else Procedure
        document = read_document("x.yaml", text.encode(), model)
        assert document.record is not None, document
        read[model].append(document)
    library = build_library(read[Procedure], read[Machine])
    return Side(library, frozenset(library.procedures), frozenset(library.machines))
