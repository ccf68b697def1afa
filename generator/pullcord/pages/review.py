"""The review of a procedure in plain words, for its author, section by section.

The command line prints it and the author's page lays it out; nothing is decided there.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from pullcord.analysis.cost import OutcomeCost
from pullcord.analysis.review import Review
from pullcord.analysis.spread import Spread
from pullcord.pages.review_order import say_order
from pullcord.pages.review_words import Namer, say_number, say_share, say_steps
from pullcord.readings.tables import Table


@dataclass(frozen=True)
class ReviewSection:
    """Facts that stand together."""

    id: str
    title: str
    lines: tuple[str, ...]
    table: Table | None = None


def review_sections(names: Namer, found: Review, currency: str = "") -> tuple[ReviewSection, ...]:
    """Return everything a review says. `currency` stands behind amounts of money."""
    words = names.words
    return (
        _section(names, "time", _time(names, found), _time_table(names, found)),
        _section(names, "causes", _unreached(names, found), _causes_table(names, found)),
        _section(names, "telling", tuple(_telling(names, found)) or (words["tells_all"],)),
        _section(names, "order", say_order(names, found)),
        _section(names, "odds", _odds(names, found)),
        _section(names, "parts", _parts(names, found, currency)),
    )


def _section(
    names: Namer, name: str, lines: Iterable[str], table: Table | None = None
) -> ReviewSection:
    return ReviewSection(name, names.words[f"{name}_title"], tuple(lines), table)


def _time(names: Namer, found: Review) -> Iterator[str]:
    words, cost = names.words, found.cost
    if cost.minutes is None:
        yield words["time_none"]
    for minutes, share in cost.settled_after.items():
        yield words["settled"].format(minutes=say_number(minutes), share=say_share(share))
    if found.undoable:
        yield words["undoable"].format(steps=say_steps(found.undoable))
    for step, share in cost.stuck.items():
        yield words["stuck"].format(share=say_share(share), step=say_steps([step]))
    if cost.stuck:
        yield words["stuck_out"]
    for (outcome, end), share in cost.misled.items():
        yield words["misled"].format(
            share=say_share(share), end=names.outcome(end), outcome=names.outcome(outcome)
        )


def _time_table(names: Namer, found: Review) -> Table | None:
    words, cost = names.words, found.cost
    if cost.minutes is None or cost.checks is None:
        return None
    columns = tuple(words[key] for key in ("figure", "mean", "median", "worst"))
    rows = (
        (words["minutes_row"], *_figures(cost.minutes)),
        (words["checks_row"], *_figures(cost.checks)),
    )
    return Table(words["time_title"], columns, rows, "")


def _figures(spread: Spread) -> tuple[str, str, str]:
    return say_number(spread.mean), say_number(spread.median), say_number(spread.worst)


def _unreached(names: Namer, found: Review) -> Iterator[str]:
    if found.tree.unreached:
        causes = names.outcomes(f"cause:{name}" for name in found.tree.unreached)
        yield names.words["unreached"].format(causes=causes)


def _causes_table(names: Namer, found: Review) -> Table:
    words = names.words
    columns = tuple(words[key] for key in ("cause", "share", "minutes_head", "checks_head", "way"))
    likeliest = sorted(found.cost.outcomes, key=lambda each: -each.share)
    rows = tuple(_cause_row(names, found, each) for each in likeliest)
    return Table(words["causes_title"], columns, rows, "")


def _cause_row(names: Namer, found: Review, cost: OutcomeCost) -> tuple[str, ...]:
    name = names.outcome(cost.outcome)
    if cost.minutes is None or cost.checks is None:
        return name, say_share(cost.share), "", "", names.words["no_way"]
    return (
        name,
        say_share(cost.share),
        say_number(cost.minutes.mean),
        say_number(cost.checks.mean),
        names.way(found.tree, cost.outcome),
    )


def _telling(names: Namer, found: Review) -> Iterator[str]:
    words = names.words
    for step in found.tell_nothing:
        yield words["tells_nothing"].format(step=say_steps([step]))
    for group in found.never_told_apart:
        yield words["never_apart"].format(outcomes=names.outcomes(group))
    for step, first in found.needs_not_met:
        yield words["need_not_met"].format(step=say_steps([step]), first=say_steps([first]))


def _odds(names: Namer, found: Review) -> Iterator[str]:
    words, odds = names.words, found.odds
    if odds.basis == "partly given":
        yield words["odds_partly"]
    if odds.basis == "equal" and not odds.jobs:
        yield words["odds_equal"]
    else:
        for source, count in Counter(odds.sources.values()).items():
            yield words["odds_from"].format(source=source, count=count, all=len(odds.sources))
    if odds.something_else:
        yield words["odds_else"].format(share=say_share(odds.something_else))


def _parts(names: Namer, found: Review, currency: str) -> Iterator[str]:
    words, parts = names.words, found.parts
    if not parts.order:
        yield words["parts_none"]
        return
    yield words["parts_in_order"].format(money=f"{parts.in_order:.2f} {currency}".strip())
    yield words["parts_found"].format(money=f"{parts.found_first:.2f} {currency}".strip())
    if parts.unpriced:
        yield words["parts_unpriced"].format(causes=names.outcomes(parts.unpriced))
