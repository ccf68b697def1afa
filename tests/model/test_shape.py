"""Which keys may stand where, asked of the model."""

from __future__ import annotations

import pytest

from pullcord.model.machine import Machine, Pin
from pullcord.model.procedure import Cause, Fits, Procedure, Reading, Step, Tool
from pullcord.model.shape import keys_of, record_at

CASES = {
    "the file": (Procedure, (), Procedure),
    "a step": (Procedure, ("steps", "any"), Step),
    "a reading, which may be left out": (Procedure, ("steps", "any", "reading"), Reading),
    "a cause": (Procedure, ("causes", "any"), Cause),
    "a tool": (Procedure, ("tools", "any"), Tool),
    "a record with a default": (Procedure, ("fits",), Fits),
    "a key with a hyphen": (Procedure, ("also-said",), None),
    "a text": (Procedure, ("title",), None),
    "a list item": (Procedure, ("before", 0), None),
    "an answer": (Procedure, ("steps", "any", "answers", "yes"), None),
    "nothing": (Procedure, ("zebra", "x", 3), None),
    "a pin": (Machine, ("connectors", "any", "pins", "any"), Pin),
}


@pytest.mark.parametrize(("model", "place", "record"), CASES.values(), ids=CASES)
def test_record_at(model, place, record) -> None:
    """The record whose keys are known there, or None."""
    assert record_at(model, place) is record


def test_keys_are_as_an_author_writes_them_with_their_meaning() -> None:
    """Hyphens, the model's own order, and the words of the reference."""
    keys = keys_of(Cause)
    assert list(keys)[-7:] == ["title", "remedy", "odds", "odds-from", "parts", "minutes", "source"]
    assert keys["odds-from"] == "Where the odds come from."
    assert keys_of(None) == {}
