"""Odds as shares and words."""

from __future__ import annotations

import pytest

from pullcord.model.procedure import Procedure
from pullcord.pages.odds import other_share, say_share, shares
from tests.pages.make import KIT
from tests.safety.make import procedure

WORDS = {
    1.0: "often, about 100 %",
    0.25: "often, about 25 %",
    0.2499: "now and then, about 25 %",
    0.10: "now and then, about 10 %",
    0.05: "seldom, about 5 %",
    0.03: "seldom, about 3 %",
    0.02: "rare, about 2 %",
    0.004: "rare, under 1 %",
}


@pytest.mark.parametrize(("share", "expected"), WORDS.items())
def test_a_share_has_a_word(share: float, expected: str) -> None:
    """The words change where the guide page says they do."""
    assert say_share(KIT.words, share).replace("\N{NO-BREAK SPACE}", " ") == expected


def example(other_odds: float | None) -> Procedure:
    """Return a procedure with odds 6 and 2, and one cause without."""
    made = procedure("{steps: {a: }, causes: {x: {odds: 6}, y: {odds: 2}, z: }}")
    return made.model_copy(update={"other_odds": other_odds})


def test_shares_are_of_all_odds_that_are_given() -> None:
    """6 and 2 of 8; with 2 for none of them, of 10. No figure is made up for the third."""
    assert shares(example(None)) == {"x": 0.75, "y": 0.25}
    assert other_share(example(None)) == 0
    assert shares(example(2)) == {"x": 0.6, "y": 0.2}
    assert other_share(example(2)) == 0.2


def test_no_odds_at_all_give_no_shares() -> None:
    """Nothing is divided by nothing."""
    bare = procedure("{steps: {a: }, causes: {x: , y: }}")
    assert shares(bare) == {}
    assert other_share(bare) == 0
