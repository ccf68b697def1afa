"""Which answer an outcome gives where, and where this is known from."""

from __future__ import annotations

import pytest

from pullcord.analysis.table import Origin, read_table, without_presumptions
from pullcord.analysis.telling import never_told_apart, told_apart
from pullcord.analysis.tree import read_tree
from tests.analysis.making import make_procedure

STEPS = {
    "spark": {"ask": "Spark?", "answers": {"yes": "step bowl", "no": "step cap"}},
    "bowl": {"ask": "Petrol?", "answers": {"dry": "cause tap", "wet": "step jet"}},
    "jet": {"ask": "Clear?", "answers": {"blocked": "cause jet", "clear": "done"}},
    "cap": {
        "ask": "Which?",
        "answers": {"a": "cause cap", "b": "cause cap", "c": "cause coil"},
        "tells": {"a": ["jet", "coil"]},
    },
}
CAUSES = {name: {} for name in ("tap", "jet", "cap", "coil")}
TREE = read_tree(make_procedure(STEPS, CAUSES))
TABLE = read_table(TREE)

CELLS = {
    "the branches say it": ("bowl", "tap", ("dry",), Origin.BRANCH),
    "further down the same way": ("bowl", "jet", ("wet",), Origin.BRANCH),
    "two ways to one cause": ("cap", "cap", ("a", "b"), Origin.BRANCH),
    "told besides the branch": ("cap", "coil", ("a", "c"), Origin.BRANCH),
    "told where the procedure does not look": ("cap", "jet", ("a",), Origin.TOLD),
    "sound parts pass": ("bowl", "coil", ("wet",), Origin.PRESUMED),
    "done goes on": ("jet", "cap", ("clear",), Origin.PRESUMED),
    "no answer goes on": ("cap", "tap", ("a", "b", "c"), Origin.UNKNOWN),
}


@pytest.mark.parametrize(("check", "cause", "answers", "origin"), CELLS.values(), ids=CELLS)
def test_cells(check: str, cause: str, answers: tuple[str, ...], origin: Origin) -> None:
    """The answers and their origin follow the model in the table's own words."""
    cell = TABLE[check][f"cause:{cause}"]
    assert (cell.answers, cell.origin) == (answers, origin)
    assert [cell.likelihood(answer) for answer in answers] == [1 / len(answers)] * len(answers)
    assert cell.likelihood("something else") == 0


def test_presumptions_can_be_left_out() -> None:
    """Then only what branches and `tells` say is known."""
    sure = without_presumptions(TABLE)
    assert sure["bowl"]["cause:coil"].origin is Origin.UNKNOWN
    assert sure["bowl"]["cause:tap"] == TABLE["bowl"]["cause:tap"]


def test_outcomes_that_no_check_tells_apart() -> None:
    """Coil and cap may both answer `a`; without the first check nothing tells jet from tap."""
    assert never_told_apart(TABLE, TREE.outcomes) == (("cause:cap", "cause:coil"),)
    only_cap = {"cap": TABLE["cap"]}
    assert told_apart(only_cap, TREE.outcomes) == (TREE.outcomes,)
