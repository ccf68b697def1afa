"""Whole commands timed from outside, the compared ones in turn."""

from __future__ import annotations

import os
import statistics
import subprocess
import sys
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

PULLCORD = (sys.executable, "-c", "from pullcord.cli import main; main()")
_SET = {"NO_MKDOCS_2_WARNING": "1", "SOURCE_DATE_EPOCH": "1772323200"}
_NOT_SET = {"PYTHONDONTWRITEBYTECODE"}
"""An installed program is compiled once; one that runs from its sources would be every time."""
_ENVIRONMENT = {key: value for key, value in os.environ.items() if key not in _NOT_SET} | _SET

_WATCH = """
import os, sys, time
begun = time.monotonic()
process = os.spawnvp(os.P_NOWAIT, sys.argv[2], sys.argv[2:])
_, status, used = os.wait4(process, 0)
wall = time.monotonic() - begun
with open(sys.argv[1], "w") as file:
    code = os.waitstatus_to_exitcode(status)
    print(code, wall, used.ru_utime + used.ru_stime, used.ru_maxrss, file=file)
"""
"""A small process in between: a system counts what a process holds from before it is its own."""


@dataclass(frozen=True)
class Spent:
    """What one run of a command took, or the middle of several."""

    wall_s: float
    cpu_s: float
    """Of all its processes together."""
    held_mb: float
    """The most memory its largest process held at once, in 10^6 bytes."""

    @property
    def times(self) -> str:
        """Return both times, for a reader."""
        return f"{self.wall_s:.1f} s, CPU {self.cpu_s:.1f} s"


def spend(command: Sequence[str], folder: Path, good: Sequence[int] = (0,)) -> Spent:
    """Run a command in a folder. Raises RuntimeError when it ends with another code than `good`."""
    told, said = folder / "spent.txt", folder / "said.txt"
    with said.open("wb") as file:
        watched = (sys.executable, "-S", "-c", _WATCH, str(told), *command)
        subprocess.run(watched, cwd=folder, stdout=file, stderr=file, env=_ENVIRONMENT, check=True)
    code, wall, cpu, held = map(float, told.read_text(encoding="ascii").split())
    if code not in good:
        text = said.read_text(encoding="utf-8", errors="replace")
        raise RuntimeError(f"{command[:3]} ended with {code:.0f}:\n{text[-3000:]}")
    return Spent(wall, cpu, held * (1 if sys.platform == "darwin" else 1024) / 1e6)


def in_turn(jobs: Mapping[str, Callable[[], Spent]], rounds: int) -> dict[str, list[Spent]]:
    """Run each job so many times: all once, then all again, so that none has the quiet hour."""
    spent: dict[str, list[Spent]] = {name: [] for name in jobs}
    for _ in range(rounds):
        for name, job in jobs.items():
            spent[name].append(job())
    return spent


def middle(runs: Sequence[Spent]) -> Spent:
    """Return the median of each figure."""
    return Spent(
        statistics.median(run.wall_s for run in runs),
        statistics.median(run.cpu_s for run in runs),
        statistics.median(run.held_mb for run in runs),
    )
