"""What proving a stage is likely to cost: what is wanted for it, and parts by the causes' odds."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from pullcord.analysis.job.believed import believed_in
from pullcord.analysis.job.chances import NOTHING, Chances, cents_of, chances_of, mean_of, sum_of
from pullcord.analysis.job.given import Given
from pullcord.analysis.job.report import StageState
from pullcord.analysis.job.walks import Walk, walks_of
from pullcord.model.job import Wanted
from pullcord.readings.fits import is_fitting


@dataclass(frozen=True)
class Outlay:
    """The likely cost of one stage."""

    stage: str
    """Empty for what is wanted for stages that are proved already, or that nobody knows."""
    mean: Fraction
    """In cents."""
    chances: Chances


def still_wanted(given: Given) -> Mapping[str, Wanted]:
    """Return what is wanted and has not been bought yet, by name."""
    bought = {part.wanted for entry in given.job.log for part in entry.parts}
    return {name: want for name, want in given.job.wanted.items() if name not in bought}


def read_outlays(given: Given, states: tuple[StageState, ...]) -> tuple[Outlay, ...]:
    """Return the outlay of every stage not proved, in the list's order, then that of the rest.

    A procedure that several stages look for a fault in counts for the first of them. Procedures
    are independent of one another; in each, one thing at most is wrong.
    """
    wanted, walks = still_wanted(given), walks_of(given)
    counted: set[str] = set()
    outlays = []
    for state in states:
        if state.proof != "proved":
            serving = [want for want in wanted.values() if want.serves == state.name]
            looked = [name for name in state.stage.looked_for_in if name not in counted]
            counted.update(looked)
            parts = list(_parts(given, looked, walks, bool(serving)))
            outlays.append(_outlay(state.name, serving, parts))
    unproved = {outlay.stage for outlay in outlays}
    rest = [want for want in wanted.values() if want.serves not in unproved]
    return (*outlays, _outlay("", rest, []))


def not_passed(
    given: Given, names: Iterable[str], walks: Mapping[str, tuple[Walk, ...]]
) -> list[str]:
    """Return those of some procedures that fit the machine and have not been passed yet."""
    known = given.library.procedures
    return [
        name
        for name in names
        if name in known
        and (given.machine is None or is_fitting(known[name], given.machine))
        and not (walks.get(name) and walks[name][-1].is_passed)
    ]


def _outlay(stage: str, wanted: list[Wanted], parts: list[Chances]) -> Outlay:
    certain = sum(cents_of(want.price) for want in wanted)
    mean = sum((mean_of(part) for part in parts), Fraction(certain))
    return Outlay(stage, mean, sum_of([{certain: 1.0}, *parts]))


def _parts(
    given: Given, looked: list[str], walks: Mapping[str, tuple[Walk, ...]], has_wanted: bool
) -> Iterator[Chances]:
    for name in not_passed(given, looked, walks):
        walk = walks[name][-1] if walks.get(name) else None
        yield _chances(given, name, walk, has_wanted)


def _chances(given: Given, procedure: str, walk: Walk | None, has_wanted: bool) -> Chances:
    """Return what parts a procedure may come to.

    A cause that has been found costs its part until it is put right, unless something is wanted
    for the stage: then the owner has written down what it takes.
    """
    is_found = walk is not None and (walk.at or "").startswith("cause:")
    if walk is not None and is_found and (walk.is_remedied or has_wanted):
        return NOTHING
    is_under_way = walk is not None and (is_found or not walk.is_over)
    believed = believed_in(given, procedure, walk if is_under_way else None)
    if believed is None:
        return NOTHING
    causes = believed.tree.procedure.causes
    prices = {f"cause:{name}": cents_of(each.parts or Decimal(0)) for name, each in causes.items()}
    return chances_of((prices.get(name, 0), share) for name, share in believed.shares.items())
