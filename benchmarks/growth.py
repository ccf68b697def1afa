"""How the cost of a build, a check and an analysis grows with the library."""

from __future__ import annotations

import sys
from collections.abc import Iterator, Mapping
from itertools import pairwise
from math import log
from pathlib import Path

from benchmarks.build import cold, write_project
from benchmarks.library import write_library
from benchmarks.table import Line
from benchmarks.timing import PULLCORD, spend

STEPS = 12
MOST_SLOPE = 1.05
NOTE = (
    f"Procedures of {STEPS} steps, each size measured once, in seconds of the processor. The slope "
    "is that between each size and the next on logarithmic scales; what counts is the steepest: "
    "what a program needs to begin makes the slope of the small sizes flatter than it is. Builds "
    "begin with nothing kept. The analysis is the review that every author's page shows."
)
ANALYSE = """
import pathlib, sys
from pullcord.analysis.review import review
from pullcord.project import load_project
for procedure in load_project([pathlib.Path(sys.argv[1])]).library.procedures.values():
    review(procedure)
"""


def measure(sizes: tuple[int, ...], largest_build: int, place: Path) -> Iterator[Line]:
    """Yield the slopes, and what a site weighs. The sites are left in the place."""
    libraries = {size: place / f"growth-{size}" for size in sizes}
    for size, folder in libraries.items():
        write_library(folder / "procedures", size, STEPS)
    builds = {size: _built(folder, size) for size, folder in libraries.items()
              if size <= largest_build}  # fmt: skip
    yield _slope("cold build", builds)
    again = {size: spend((*PULLCORD, "build"), libraries[size]).cpu_s for size in builds}
    yield _slope("warm build", again)
    for size in builds:
        yield _weight(libraries[size] / "site", size)
    checks = {size: spend((*PULLCORD, "check", "procedures"), folder).cpu_s
              for size, folder in libraries.items()}  # fmt: skip
    yield _slope("check", checks)
    analyses = {size: spend((sys.executable, "-c", ANALYSE, "procedures"), folder).cpu_s
                for size, folder in libraries.items()}  # fmt: skip
    yield _slope("analysis, with the check before it", analyses)


def _built(folder: Path, size: int) -> float:
    write_project(folder, size, STEPS)
    return cold(folder).cpu_s


def _slope(what: str, seconds: Mapping[int, float]) -> Line:
    pairs = list(pairwise(seconds.items()))
    slopes = [log(after / before) / log(more / less)
              for (less, before), (more, after) in pairs]  # fmt: skip
    figure = ", ".join(f"{size}: {spent:.2f} s" for size, spent in seconds.items())
    beside = "slopes " + ", ".join(f"{slope:.2f}" for slope in slopes)
    steepest = max(slopes)
    return Line(f"growth of {what}", figure, beside, steepest, f"at most {MOST_SLOPE}",
                steepest <= MOST_SLOPE)  # fmt: skip


def _weight(site: Path, size: int) -> Line:
    files = {path: path.stat().st_size for path in site.rglob("*") if path.is_file()}
    index = sum(size for path, size in files.items() if path.name.startswith("search-"))
    whole = sum(files.values())
    figure = f"{whole / size / 1000:.0f} kB a procedure, {whole / 1e6:.0f} MB in all"
    return Line(f"site of {size}", figure, f"index {index / size / 1000:.1f} kB a procedure")


def site_of(size: int, place: Path) -> Path:
    """Return the site of that size, built now if it was not."""
    folder = place / f"growth-{size}"
    if not (folder / "site" / "index.html").is_file():
        _built(folder, size)
    return folder / "site"
