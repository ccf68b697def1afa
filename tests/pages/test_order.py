"""The order of a page, and its numbers."""

from __future__ import annotations

import pytest
from hypothesis import given, settings

from pullcord.graph import procedure_graph
from pullcord.model.procedure import Procedure
from pullcord.pages.order import letter, reading_order
from tests.safety.make import procedure
from tests.safety.random_procedures import procedures

LETTERS = {0: "A", 1: "B", 25: "Z", 26: "AA", 27: "AB", 51: "AZ", 52: "BA", 701: "ZZ", 702: "AAA"}


@pytest.mark.parametrize(("place", "expected"), LETTERS.items())
def test_letters_go_on_as_columns_do(place: int, expected: str) -> None:
    """A to Z, then AA."""
    assert letter(place) == expected


ORDERS = {
    "the author's order": ("steps: {a: {then: step b}, b: {then: step c}, c: }", "a b c"),
    "answers lead down": (
        "steps: {a: {then: step c}, b: {then: done}, c: {then: step b}}",
        "a c b",
    ),
    "a step nobody reaches": ("steps: {a: , lost: {then: step a}}", "lost a"),
    "a circle": ("steps: {a: {then: step c}, b: {then: step a}, c: {then: step b}}", "a b c"),
}


@pytest.mark.parametrize("case", ORDERS)
def test_steps_stand_above_what_they_lead_to(case: str) -> None:
    """Where that leaves a choice, or cannot be had, the author's order stands."""
    text, expected = ORDERS[case]
    assert " ".join(reading_order(procedure(text)).steps) == expected


@given(procedures())
@settings(max_examples=60, deadline=None, print_blob=True)
def test_no_answer_ever_leads_up(example: Procedure) -> None:
    """In any procedure without circles; each step has its place once."""
    order = reading_order(example)
    assert sorted(order.steps) == sorted(example.steps)
    place = {f"step:{name}": n for n, name in enumerate(order.steps)}
    graph = procedure_graph(example)
    assert all(place[a] < place[b] for a, b in graph.edges if b in place)


def test_causes_stand_likeliest_first() -> None:
    """Causes without odds come last, in the author's order."""
    text = "{steps: {a: }, causes: {x: , rare: {odds: 1}, y: , often: {odds: 9}}}"
    order = reading_order(procedure(text))
    assert order.causes == ("often", "rare", "x", "y")
    assert order.numbers["cause:often"] == "A"
    assert order.numbers["step:a"] == "1"
