"""The order of keys: every key has its rank, and names keep the author's order."""

from __future__ import annotations

import pytest

from pullcord.model.action import Action
from pullcord.model.base import Record
from pullcord.model.job import Entry, Job
from pullcord.model.order import EFFECTS, ORDERS, in_order, ranks_of
from pullcord.model.procedure import Procedure, Step
from pullcord.model.shape import keys_of


@pytest.mark.parametrize("record", ORDERS, ids=lambda record: record.__name__)
def test_an_order_names_every_key_once(record: type[Record]) -> None:
    """A new key of the model is not forgotten, a dropped one not kept."""
    named = ORDERS[record].split()
    effects = {key for key in ranks_of(record) if key not in named}
    assert len(named) == len(set(named))
    assert ({*named} - {EFFECTS}) | effects == set(keys_of(record))
    assert (EFFECTS in named) == issubclass(record, Action)


def test_effects_keep_the_order_they_happen_in() -> None:
    """First it cools, then the ignition is disabled: no table knows that."""
    keys = ["then", "minutes", "cools", "disables", "do", "title"]
    expected = ["title", "do", "cools", "disables", "minutes", "then"]
    assert in_order(Procedure, ("steps", "a"), keys) == expected


CASES = {
    "a whole file": (Job, (), ["log", "machine", "job"], ["job", "machine", "log"]),
    "names": (Procedure, ("steps",), ["b", "a"], ["b", "a"]),
    "answers": (Procedure, ("steps", "a", "answers"), ["y", "n"], ["y", "n"]),
    "an entry": (Job, ("log", 0), ["note", "fills", "date"], ["date", "fills", "note"]),
    "keys nobody knows": (
        Job,
        (),
        ["zebra", "log", "apple", "job"],
        ["job", "log", "zebra", "apple"],
    ),
}


@pytest.mark.parametrize(("model", "place", "keys", "expected"), CASES.values(), ids=CASES)
def test_keys_stand_in_their_order(
    model: type[Record], place: tuple[str | int, ...], keys: list[str], expected: list[str]
) -> None:
    """By the model; what has no order keeps its own."""
    assert in_order(model, place, keys) == expected


def test_a_step_and_an_entry_order_their_effects_alike() -> None:
    """Both are told by the same verbs."""
    assert {ranks_of(Step)[key] for key in keys_of(Action)} == {ranks_of(Step)["opens"]}
    assert ranks_of(Entry)["drains"] == ranks_of(Entry)["opens"]
