"""A machine sheet: what may be written, and what is refused."""

from __future__ import annotations

import pytest
from pydantic import ValidationError

from pullcord.model.machine import Machine
from pullcord.model.procedure import Library
from pullcord.model.spot import Spot, is_inside, parse_spot

SHEET = {
    "machine": "old-bike",
    "title": "Old bike",
    "kind": "farm-bike",
    "ignition": "capacitor-discharge",
    "values": {"source-coil": {"limits": "200-300 ohm", "winding": "copper", "at-celsius": "25"}},
    "connectors": {
        "unit": {
            "title": "Unit plug",
            "rows": "2",
            "columns": "3",
            "blanks": "b3",
            "pins": {"ground": {"at": "a1", "wire": "GN", "function": "Ground"}},
        }
    },
}


def test_a_sheet_is_read_from_text() -> None:
    """Every scalar in the file is text; numbers are made of it here."""
    machine = Machine.model_validate(SHEET)
    assert machine.values["source-coil"].at_celsius == 25
    plug = machine.connectors["unit"]
    assert (plug.rows, plug.columns, plug.latch, plug.blanks) == (2, 3, "top", ("b3",))
    assert plug.seen == "into the harness plug"


def test_almost_everything_may_be_missing() -> None:
    """A machine nobody knows yet has a name, a title and a kind."""
    bare = Machine.model_validate({"machine": "m", "title": "M", "kind": "pump"})
    assert (bare.ignition, dict(bare.values), dict(bare.connectors)) == (None, {}, {})


@pytest.mark.parametrize(
    ("change", "where"),
    [
        ({"ignition": "steam"}, ("ignition",)),
        ({"machine": "Old Bike"}, ("machine",)),
        ({"colour": "red"}, ("colour",)),
        ({"altitude-metres": "high"}, ("altitude-metres",)),
        ({"values": {"x": {"winding": "tin"}}}, ("values", "x", "winding")),
        (
            {"connectors": {"c": {"title": "C", "rows": "0", "columns": "1", "pins": {}}}},
            ("connectors", "c", "rows"),
        ),
        (
            {
                "connectors": {
                    "c": {
                        "title": "C", "rows": "1", "columns": "1",
                        "pins": {"p": {"at": "a1", "function": "F", "expect": [{}]}},
                    }
                }
            },
            ("connectors", "c", "pins", "p", "expect", 0, "against"),
        ),
    ],
)  # fmt: skip
def test_what_is_wrong_has_a_place(change: dict[str, object], where: tuple[object, ...]) -> None:
    """Each refusal names where in the sheet it is."""
    with pytest.raises(ValidationError) as caught:
        Machine.model_validate(SHEET | change)
    assert [error["loc"] for error in caught.value.errors()] == [where]


def test_a_library_may_have_no_machines() -> None:
    """The shipped procedures stand alone, with the cheap meter."""
    library = Library(procedures={})
    assert dict(library.machines) == {}
    assert library.meter.title == "a cheap 3½-digit meter"


@pytest.mark.parametrize(
    ("text", "spot"),
    [
        ("a1", Spot(1, 1)), ("A1", Spot(1, 1)), ("b12", Spot(2, 12)), ("1,1", Spot(1, 1)),
        ("2, 3", Spot(2, 3)), ("a0", Spot(1, 0)), ("", None), ("top", None), ("1", None),
        ("a", None), ("99,1", None), ("a123", None),
    ],
)  # fmt: skip
def test_places_are_read(text: str, spot: Spot | None) -> None:
    """A letter and a number, or two numbers; nothing else."""
    assert parse_spot(text) == spot


def test_places_have_one_name() -> None:
    """`1,2` and `a2` are the same place, and print the same."""
    assert parse_spot("1,2") == parse_spot("a2")
    assert Spot(1, 2).label == "a2"
    assert is_inside(Spot(2, 3), rows=2, columns=3)
    assert not is_inside(Spot(3, 1), rows=2, columns=3)
    assert not is_inside(Spot(1, 0), rows=2, columns=3)
