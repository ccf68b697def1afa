"""A check of many files beside merely parsing them."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from functools import partial
from pathlib import Path

from benchmarks.library import write_library
from benchmarks.table import Line, at_most
from benchmarks.timing import PULLCORD, in_turn, middle, spend

STEPS = 30
MOST_OF_PARSING, MOST_MB = 2.0, 300
NOTE = (
    f"`pullcord check` on procedures of {STEPS} steps beside a Python that only reads the same "
    "files with PyYAML's CSafeLoader. Both as whole processes of "
    "one thread; the ratio is that of processor seconds; medians."
)
PARSE = """
import sys, pathlib, yaml
for path in sorted(pathlib.Path(sys.argv[1]).glob("*.yaml")):
    yaml.load(path.read_bytes(), yaml.CSafeLoader)
"""


def measure(size: int, rounds: int, place: Path) -> Iterator[Line]:
    """Yield a line for the time and one for the memory."""
    folder = place / f"check-{size}"
    write_library(folder / "procedures", size, STEPS)
    spent = in_turn(
        {
            "check": partial(spend, (*PULLCORD, "check", "procedures"), folder),
            "parse": partial(spend, (sys.executable, "-c", PARSE, "procedures"), folder),
        },
        rounds,
    )
    mine, other = middle(spent["check"]), middle(spent["parse"])
    ratio = mine.cpu_s / other.cpu_s
    what = f"check of {size} procedures"
    yield Line(what, f"{mine.times} ({rounds} runs)", f"parsing {other.times}", ratio,
               f"at most {MOST_OF_PARSING:g} x", ratio <= MOST_OF_PARSING)  # fmt: skip
    yield at_most(f"{what}, memory", mine.held_mb, "MB", MOST_MB, rounds)
