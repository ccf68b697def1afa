"""The name an author meant."""

from __future__ import annotations

import pytest

from pullcord.model.nearest import did_you_mean, nearest

KNOWN = ["air-leak", "dry-casing", "stop-wire", "plug"]
CASES = {
    "a slip of the finger": ("air-leek", "air-leak"),
    "two letters swapped": ("plgu", "plug"),
    "capitals": ("Stop-Wire", "stop-wire"),
    "underscores": ("dry_casing", "dry-casing"),
    "spaces": ("dry casing", "dry-casing"),
    "something else": ("zebra", None),
    "nothing": ("", None),
    "far too long": ("air-leak" * 50, None),
}


@pytest.mark.parametrize(("word", "meant"), CASES.values(), ids=CASES)
def test_nearest(word: str, meant: str | None) -> None:
    """Near names are found, far ones are not guessed."""
    assert nearest(word, KNOWN) == meant


def test_a_question_or_other_words() -> None:
    """Where nothing is near, something else is said."""
    assert did_you_mean("plugg", KNOWN, "add it") == "did you mean `plug`?"
    assert did_you_mean("zebra", KNOWN, "add it") == "add it"
