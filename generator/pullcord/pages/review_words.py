"""Names and figures as a review says them."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from pullcord.analysis.tree import Path, Tree, count_paths, paths_to
from pullcord.model.nearest import listed
from pullcord.model.procedure import Library, Procedure
from pullcord.pages.odds import say_percent

MOST_STEPS = 4
"""How many steps of a way are named; ways begin alike, and differ where they end."""
MOST_SURE = 100
"""A factor above this says no more than that it is large."""


@dataclass(frozen=True)
class Namer:
    """Says what steps and outcomes are called: by their names, for the author looks for those."""

    procedure: Procedure
    library: Library
    words: Mapping[str, str]
    """Those of `texts/review.yaml`."""

    def outcome(self, node: str) -> str:
        """Return what an outcome is called, from its graph node."""
        kind, _, name = node.partition(":")
        if kind == "cause":
            return f"{self.procedure.causes[name].title} (`{name}`)"
        if kind == "procedure":
            other = self.library.procedures.get(name)
            return self.words["hand_over"].format(title=other.title if other else f"`{name}`")
        return self.words["done"]

    def outcomes(self, nodes: Iterable[str]) -> str:
        """Return several in a row."""
        return ", ".join(map(self.outcome, nodes))

    def way(self, tree: Tree, outcome: str) -> str:
        """Return the end of the first way to an outcome, and how many more ways there are."""
        path = paths_to(tree, outcome, most=1)[0]
        more = count_paths(tree)[outcome] - 1
        said = " > ".join(_passed(path[-MOST_STEPS:]))
        if len(path) > MOST_STEPS:
            said = self.words["way_after"].format(count=len(path) - MOST_STEPS, way=said)
        return self.words["more_ways"].format(way=said, count=more) if more else said


def say_steps(names: Iterable[str]) -> str:
    """Return steps' names in a row."""
    return listed(names)


def say_number(value: float) -> str:
    """Return a figure to a tenth, or as a whole number where that is the same."""
    return f"{value:.1f}".removesuffix(".0")


def say_two(first: float, second: float) -> tuple[str, str]:
    """Return two figures that differ, to as many digits as it takes to see it."""
    if say_number(first) != say_number(second):
        return say_number(first), say_number(second)
    return f"{first:.2f}", f"{second:.2f}"


def say_share(share: float) -> str:
    """Return a share in percent; one that is not nothing is not said to be nothing."""
    if 0 < share < 0.005:
        return f"{share:.1%}".replace("%", "\N{NO-BREAK SPACE}%")
    return say_percent(share)


def say_factor(factor: float) -> str:
    """Return a factor of at least 1."""
    return f"over {MOST_SURE}" if factor > MOST_SURE else say_number(factor)


def _passed(path: Path) -> Iterable[str]:
    for step, answer in path:
        yield f"`{step}` {answer}" if answer else f"`{step}`"
