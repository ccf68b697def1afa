"""One line a measure, as a Markdown table."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

HEAD = "| what | figure | beside | ratio | goal | met |\n| --- | --- | --- | --- | --- | --- |"


@dataclass(frozen=True)
class Line:
    """One measure."""

    what: str
    figure: str
    """With its unit, and the number of runs it is the median of."""
    beside: str = ""
    """What it is compared with, and the same figure of that."""
    ratio: float | None = None
    goal: str = ""
    is_met: bool | None = None
    """None where there is no goal."""

    def __str__(self) -> str:
        """Return the row of the table."""
        ratio = "" if self.ratio is None else f"{self.ratio:.2f}"
        met = {True: "yes", False: "**no**", None: ""}[self.is_met]
        return f"| {self.what} | {self.figure} | {self.beside} | {ratio} | {self.goal} | {met} |"


def show(title: str, note: str, lines: Iterable[Line]) -> None:
    """Print a table, each line as soon as it is measured."""
    print(f"\n## {title}\n\n{note}\n\n{HEAD}", flush=True)
    for line in lines:
        print(line, flush=True)


def at_most(what: str, figure: float, unit: str, goal: float, runs: int) -> Line:
    """Return the line of a figure that must not be above its goal."""
    shown = f"{figure:.3g} {unit} ({runs} runs)"
    return Line(what, shown, goal=f"at most {goal:g} {unit}", is_met=figure <= goal)
