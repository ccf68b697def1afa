"""A build beside plain MkDocs of the same pages, and beside Sphinx of the same charts."""

from __future__ import annotations

import shutil
import sys
from collections.abc import Iterator
from functools import partial
from pathlib import Path

from benchmarks.charts import procedures_of, rst_of
from benchmarks.library import write_library
from benchmarks.plain import SETTINGS, write_plain
from benchmarks.table import Line
from benchmarks.timing import PULLCORD, Spent, in_turn, middle, spend

STEPS = 12
MOST_OF_FLOOR, LEAST_OF_SPHINX = 1.15, 3.0
NOTE = (
    f"Procedures of {STEPS} steps, `library: false`, no machine sheets, otherwise as it comes: on "
    "are the pages for authors, four printed sheets (PDF) and one bound file a procedure, the "
    "binder, and the search. The floor has the same pages, styles and scripts and the theme's own "
    "search, but no sheets and no bound files. Sphinx draws the same nodes and arrows with `dot` "
    "and has the same words, on all cores; it makes nothing to print either. Cold: nothing kept "
    "from before. Warm: charts kept, everything else written anew. "
    "Ratios are those of processor seconds, of all processes together; medians."
)
SPHINX = "extensions = ['sphinx.ext.graphviz']\ngraphviz_output_format = 'svg'\n"


def measure(sizes: tuple[int, ...], rounds: int, long_rounds: int, place: Path) -> Iterator[Line]:
    """Yield the lines of each size; the largest is built `long_rounds` times."""
    for size in sizes:
        count = long_rounds if size == max(sizes) and len(sizes) > 1 else rounds
        yield from compare(size, count, place / f"build-{size}")


def compare(size: int, rounds: int, folder: Path) -> Iterator[Line]:
    """Yield the lines of one size."""
    ours, floor, sphinx = (folder / name for name in ("ours", "floor", "sphinx"))
    write_project(ours, size, STEPS)
    pages = write_plain(ours, floor)
    write_sphinx(ours / "procedures", sphinx)
    plain = (sys.executable, "-m", "mkdocs", "build", "--quiet")
    spent = in_turn(
        {
            "cold": partial(cold, ours),
            "warm": partial(spend, (*PULLCORD, "build"), ours),
            "floor": partial(spend, plain, floor),
            "sphinx cold": partial(sphinx_cold, sphinx),
            "sphinx warm": partial(spend, sphinx_command("-E"), sphinx),
        },
        rounds,
    )
    figures = {name: middle(runs) for name, runs in spent.items()}
    least = figures["floor"]
    for state in ("cold", "warm"):
        mine, other = figures[state], figures[f"sphinx {state}"]
        what = f"build of {size}, {pages} pages, {state}"
        figure = f"{mine.times} ({rounds} runs)"
        ratio = mine.cpu_s / least.cpu_s
        yield Line(what, figure, f"plain MkDocs {least.times}", ratio,
                   f"at most {MOST_OF_FLOOR} x", ratio <= MOST_OF_FLOOR)  # fmt: skip
        ratio = other.cpu_s / mine.cpu_s
        yield Line(what, figure, f"Sphinx {other.times}", ratio,
                   f"{LEAST_OF_SPHINX:g} x faster", ratio >= LEAST_OF_SPHINX)  # fmt: skip


def write_project(folder: Path, size: int, steps: int) -> None:
    """Write a project of a made-up library."""
    write_library(folder / "procedures", size, steps)
    (folder / "docs").mkdir(exist_ok=True)
    (folder / "mkdocs.yml").write_text(SETTINGS, encoding="utf-8")


def cold(folder: Path) -> Spent:
    """Build a project with nothing kept."""
    for name in (".cache", "site"):
        shutil.rmtree(folder / name, ignore_errors=True)
    return spend((*PULLCORD, "build"), folder)


def write_sphinx(procedures: Path, folder: Path) -> None:
    """Write the same procedures as Sphinx's sources."""
    folder.mkdir(parents=True)
    read = procedures_of(procedures)
    for name, procedure in read.items():
        (folder / f"{name}.rst").write_text(rst_of(procedure), encoding="utf-8")
    listed = "\n".join(f"   {name}" for name in read)
    index = f"Made up\n=======\n\n.. toctree::\n\n{listed}\n"
    (folder / "index.rst").write_text(index, encoding="utf-8")
    (folder / "conf.py").write_text(SPHINX, encoding="utf-8")


def sphinx_command(*options: str) -> tuple[str, ...]:
    """Return the command that builds a folder of its sources into `out`."""
    return (sys.executable, "-m", "sphinx", "-q", "-j", "auto", *options, ".", "out")


def sphinx_cold(folder: Path) -> Spent:
    """Build them with nothing kept."""
    shutil.rmtree(folder / "out", ignore_errors=True)
    return spend(sphinx_command(), folder)
