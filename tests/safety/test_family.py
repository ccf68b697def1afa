"""A family followed once gives the findings of its procedures followed one by one."""

from __future__ import annotations

from collections.abc import Sequence
from unittest.mock import patch

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pullcord.finding import Flaw
from pullcord.model.procedure import Library, Procedure
from pullcord.safety import conflicts, ends
from pullcord.safety.conflicts import check_conflicts
from pullcord.safety.ends import check_ever_begun, check_put_right
from pullcord.safety.family import family_of, ways_of
from pullcord.safety.forbidden import FORBIDDEN
from tests.safety.make import library, procedure
from tests.safety.random_procedures import procedures

BOUNDED = settings(max_examples=60, deadline=None, print_blob=True)
FIT = "steps: {fit: {fits: bypass, then: procedure second}}"
LOOK = "steps: {look: {}}"


@st.composite
def families(draw: st.DrawFn) -> Library:
    """Return three procedures, each of which may hand over to the next, and one alone."""
    names = ("first", "second", "third", "alone")
    following = {"first": "second", "second": "third"}
    made = (draw(procedures(name, hands_to=following.get(name, ""))) for name in names)
    return Library(procedures=dict(zip(names, made, strict=True)))


def findings(one: Procedure, among: Library) -> Sequence[Flaw]:
    """Return everything the safety rules find about a procedure."""
    found: list[Flaw] = []
    for forbidden in FORBIDDEN.values():
        found += check_conflicts(one, among, forbidden, "mend")
    found += check_put_right(one, among)
    return [*found, *check_ever_begun(one, among)]


@given(families())
@BOUNDED
def test_findings_are_those_of_each_procedure_followed_by_itself(made: Library) -> None:
    """Looking at the family first leaves no finding out and makes none up."""
    with (
        patch.object(conflicts, "family_of", return_value=None),
        patch.object(ends, "family_of", return_value=None),
    ):
        alone = {name: findings(one, made) for name, one in made.procedures.items()}
    assert {name: findings(one, made) for name, one in made.procedures.items()} == alone


def test_a_family_is_followed_once() -> None:
    """Every procedure of a family is given the same analysis; one that stands alone another."""
    made = library(first=FIT, second=LOOK, third=LOOK)
    first, second, third = (family_of(one, made) for one in made.procedures.values())
    assert first is not None
    assert third is not None
    assert ways_of(first) is ways_of(second)
    assert ways_of(third) is not ways_of(first)
    assert "first/step:fit" in ways_of(first).followed.entering
    assert "third/step:look" not in ways_of(first).followed.entering


@pytest.mark.parametrize(
    "handing_over",
    ["steps: {b: {then: procedure first}}", "steps: {b: {then: procedure second}}"],
    ids=["in a circle", "to itself"],
)
def test_a_circle_has_no_family(handing_over: str) -> None:
    """What hands over in a circle is followed by itself: ways that lead on forever are cut."""
    made = library(first=FIT, second=handing_over)
    assert family_of(made.procedures["second"], made) is None


def test_a_procedure_that_the_library_does_not_hold_has_no_family() -> None:
    """Of two files with one name only the first is in the library; the other is checked alone."""
    made = library(first=FIT, second=LOOK)
    assert family_of(procedure(LOOK, "second"), made) is None
    assert family_of(made.procedures["second"], None) is None
