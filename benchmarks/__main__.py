"""All measures by one command: `.venv/bin/python -m benchmarks > results.md`.

Takes an hour or two on a machine that does nothing else; `--small` takes some minutes and is only
there to see whether all runs. Name one or more parts to have only those.
"""

from __future__ import annotations

import argparse
import tempfile
from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path

from benchmarks import browser, build, check, growth, preview
from benchmarks.machine import describe
from benchmarks.table import Line, show

PARTS = ("check", "preview", "growth", "browser", "build")


@dataclass(frozen=True)
class Sizes:
    """How much is measured."""

    builds: tuple[int, ...]
    checked: int
    previews: tuple[int, ...]
    grown: tuple[int, ...]
    largest_build: int
    rounds: int
    long_rounds: int
    """Of the largest build."""


WHOLE = Sizes((100, 300), 1000, (100, 300), (10, 100, 1000, 5000), 1000, 5, 3)
SMALL = Sizes((3, 6), 20, (3,), (3, 6), 6, 2, 1)


def main() -> None:
    """Print a table for each part that was asked for."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("parts", nargs="*", metavar="PART", help=", ".join(PARTS))
    parser.add_argument("--rounds", type=int, help="so many runs of each, instead of five")
    parser.add_argument("--small", action="store_true", help="tiny sizes: does all of it run?")
    parser.add_argument("--mermaid", type=Path, help="Mermaid's mermaid.min.js, fetched by hand")
    parser.add_argument("--place", type=Path, help="an empty folder to work in, and to leave there")
    given = parser.parse_args()
    wanted = given.parts or PARTS
    if unknown := set(wanted) - set(PARTS):
        parser.error(f"no such part: {', '.join(sorted(unknown))}")
    print(describe())
    sizes = SMALL if given.small else WHOLE
    if given.rounds:
        sizes = replace(sizes, rounds=given.rounds, long_rounds=min(given.rounds, 3))
    with tempfile.TemporaryDirectory() as folder:
        place = given.place or Path(folder)
        for part in PARTS:
            if part in wanted:
                _part(part, sizes, place, given.mermaid)


def _part(part: str, sizes: Sizes, place: Path, mermaid: Path | None) -> None:
    if part == "check":
        show("Check", check.NOTE, check.measure(sizes.checked, sizes.rounds, place))
    elif part == "preview":
        show("Preview", preview.NOTE, preview.lines(sizes.previews))
    elif part == "growth":
        lines = growth.measure(sizes.grown, sizes.largest_build, place)
        show("Growth", growth.NOTE, lines)
    elif part == "browser":
        show("In the browser", browser.NOTE, _browser(sizes, place, mermaid))
    else:
        lines = build.measure(sizes.builds, sizes.rounds, sizes.long_rounds, place)
        show("Build", build.NOTE, lines)


def _browser(sizes: Sizes, place: Path, mermaid: Path | None) -> Iterator[Line]:
    yield from browser.measure(sizes.rounds, place, mermaid)
    site = growth.site_of(sizes.largest_build, place)
    yield from browser.search(sizes.rounds, site, sizes.largest_build)


if __name__ == "__main__":
    main()
