"""The review in plain words."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from decimal import Decimal
from typing import Any

import pytest

from pullcord.analysis.review import review
from pullcord.model.procedure import Library, Procedure
from pullcord.pages.review import ReviewSection, review_sections
from pullcord.pages.review_guard import read_guard
from pullcord.pages.review_text import review_text
from pullcord.pages.review_words import Namer, say_two
from tests.analysis.making import chain, make_procedure
from tests.pages.make import KIT

RUN = chain([5, 3, 2], [4, 1, 2])
"""Checks k0, k1, k2 of 4, 1 and 2 minutes name c0, c1, c2 of odds 5, 3 and 2, or else go on.

Nobody says how often it is none of these, so that is taken as an average cause: 10/3. Of 40/3 in
all the shares are 0.375, 0.225, 0.15 and 0.25, and the answers come after 4, 5, 7 and 7 minutes.
"""


def sections(
    procedure: Procedure, tools: Collection[str] | None = None
) -> Mapping[str, ReviewSection]:
    """Return the sections of a review by their names."""
    names = Namer(procedure, Library(procedures={procedure.procedure: procedure}), KIT.review)
    found = review(procedure, tools=tools, guard=read_guard(procedure))
    return {each.id: each for each in review_sections(names, found, "EUR")}


def said(procedure: Procedure, section: str, tools: Collection[str] | None = None) -> str:
    """Return the sentences of one section."""
    return "\n".join(sections(procedure, tools)[section].lines).replace("\N{NO-BREAK SPACE}", " ")


def test_the_time_to_a_cause() -> None:
    """4 x 0.375 + 5 x 0.225 + 7 x 0.4 = 5.425; half have ended at 5; the worst is 7.

    Checks: 1 x 0.375 + 2 x 0.225 + 3 x 0.4 = 2.025.
    """
    table = sections(RUN)["time"].table
    assert table is not None
    assert [row[1:] for row in table.rows] == [("5.4", "5", "7"), ("2", "2", "3")]
    assert said(RUN, "time").splitlines() == [
        "Settled after 5 minutes: 60 % of all faults.",
        "Settled after 10 minutes: 100 % of all faults.",
        "Settled after 20 minutes: 100 % of all faults.",
    ]


def test_the_way_to_each_cause() -> None:
    """The likeliest first, with its share, its minutes, its checks and the answers given."""
    table = sections(RUN)["causes"].table
    assert table is not None
    rows = [tuple(cell.replace("\N{NO-BREAK SPACE}", " ") for cell in row) for row in table.rows]
    assert rows == [
        ("c0 (`c0`)", "38 %", "4", "1", "`k0` bad"),
        ("End with nothing found", "25 %", "7", "3", "`k0` good > `k1` good > `k2` good"),
        ("c1 (`c1`)", "22 %", "5", "2", "`k0` good > `k1` bad"),
        ("c2 (`c2`)", "15 %", "7", "3", "`k0` good > `k1` good > `k2` bad"),
    ]


def test_the_change_that_wins_most_and_what_it_rests_on() -> None:
    """With k1 first: 1 x 0.225 + 5 x 0.375 + 7 x 0.4 = 4.9 minutes.

    It gains 4 x 0.225 = 0.9 at c1 and loses 1 x 0.375 at c0, so it stays a saving up to a factor of
    sqrt(0.9 / 0.375) = 1.55 on both, or of 0.9 / 0.375 = 2.4 on one alone.
    """
    order = said(RUN, "order")
    assert "If parts that are sound pass every check: Ask `k1` before `k0`: 5.4 -> 4.9" in order
    assert "what `k1` shows when it is: c0 (`c0`)" in order
    assert "wrong by more than 1.5 times" in order
    assert "is 2.4 times" in order
    assert "No single safe change saves time." in order


def test_a_change_that_rests_on_what_is_said() -> None:
    """With `tells:` nothing is presumed any more, and the change is proposed as it is."""
    steps: dict[str, dict[str, Any]] = {
        "slow": {"minutes": 30, "answers": {"bad": "cause a", "good": "step quick"}},
        "quick": {
            "minutes": 2,
            "answers": {"bad": "cause b", "good": "done"},
            "tells": {"good": ["a"]},
        },
    }
    asked = {name: {"ask": "Sound?", **step} for name, step in steps.items()}
    # a, b and none of these are equally likely. Written: 30 / 3 + 32 / 3 + 32 / 3 = 31.3 minutes;
    # quick first: 32 / 3 + 2 / 3 + 32 / 3 = 22.
    procedure = make_procedure(asked, {"a": {}, "b": {}})
    order = said(procedure, "order")
    assert "In the quickest order: 22 minutes." in order
    assert "Ask `quick` before `slow`: 31.3 -> 22 minutes on average." in order
    assert "presume" not in order
    assert said(procedure, "odds").startswith("All equal: nobody gave any.")


def test_an_unsafe_order_is_not_proposed() -> None:
    """Looking into the bowl first is quicker, but then a spark is made beside open petrol."""
    steps: dict[str, dict[str, Any]] = {
        "spark": {
            "minutes": 30,
            "makes": ["spark"],
            "ask": "Spark?",
            "answers": {"none": "cause coil", "blue": "step bowl"},
        },
        "bowl": {
            "minutes": 2,
            "opens": ["petrol"],
            "ask": "Clean?",
            "answers": {"dirty": "cause dirt", "clean": "step shut"},
            "tells": {"clean": ["coil"]},
        },
        "shut": {"minutes": 1, "closes": ["petrol"], "clears": ["vapour"], "then": "done"},
    }
    causes: dict[str, dict[str, Any]] = {
        "coil": {"closes": ["petrol"], "clears": ["vapour"]},
        "dirt": {"closes": ["petrol"], "clears": ["vapour"]},
    }
    procedure = make_procedure(steps, causes)
    unguarded = review(procedure).sure.advice
    assert unguarded is not None
    assert (unguarded.change.step, unguarded.change.before) == ("bowl", "spark")
    order = said(procedure, "order")
    assert "Ask `bowl`" not in order
    assert "No single safe change saves time." in order


def test_checks_that_tell_nothing_and_causes_that_look_alike() -> None:
    """A check whose answers lead to the same place, and two causes behind one answer."""
    steps: dict[str, dict[str, Any]] = {
        "idle": {"ask": "Red?", "answers": {"yes": "step last", "no": "step last"}},
        "last": {"ask": "Sound?", "answers": {"bad": "cause a", "good": "done"}},
    }
    text = said(make_procedure(steps, {"a": {}, "b": {}}), "telling")
    assert "`idle` tells nothing" in text
    unreached = said(make_procedure(steps, {"a": {}, "b": {}}), "causes")
    assert unreached == "No way leads to: b (`b`)."
    # `idle` costs its 5 minutes and nothing else comes of it.
    assert "Leave out `idle`: 10 -> 5 minutes" in said(make_procedure(steps, {"a": {}}), "order")


def test_missing_tools_are_said() -> None:
    """Which steps cannot be done, where walks end, and that nothing is compared."""
    needy = chain([5, 3, 2], [4, 1, 2], needs="meter")
    time = said(needy, "time", [])
    assert "Cannot be done with these tools: `k0`, `k1`, `k2`." in time
    assert "100 % of all walks end at `k0` for want of a tool." in time
    assert "No check that can be done tells these apart" in said(needy, "telling", [])
    assert "With a tool missing, no change is sought." in said(needy, "order", [])


def test_parts() -> None:
    """Shares 0.375 and 0.225, parts of 10 and 20.

    Bought in order: 10 + 20 x (1 - 0.375) = 22.50. Cause first: 3.75 + 4.50 = 8.25.
    """
    prices = {"c0": Decimal(10), "c1": Decimal(20), "c2": None}
    causes = {
        name: cause.model_copy(update={"parts": prices[name]}) for name, cause in RUN.causes.items()
    }
    priced = RUN.model_copy(update={"causes": causes})
    text = said(priced, "parts")
    assert "until it runs: 22.50 EUR" in text
    assert "only its part bought: 8.25 EUR" in text
    assert "for: c2 (`c2`)." in text
    assert said(RUN, "parts") == "No cause says what its parts cost."


def test_the_text_stands_in_columns() -> None:
    """Title, headings and rows as a terminal shows them, no line longer than it is wide."""
    lines = review_text("A try-out", sections(RUN).values()).splitlines()
    assert lines[:4] == [
        "A try-out",
        "",
        "Time to a cause",
        "  Figure              On average  Half of all walks need no more than  Worst",
    ]
    assert max(map(len, lines)) <= 96


@pytest.mark.parametrize(
    ("figures", "shown"),
    [((31.04, 24.0), ("31", "24")), ((7.04, 7.01), ("7.04", "7.01"))],
    ids=["apart", "close"],
)
def test_two_figures_are_told_apart(figures: tuple[float, float], shown: tuple[str, str]) -> None:
    """A saving is never shown as none."""
    assert say_two(*figures) == shown
