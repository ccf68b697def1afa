"""A bounded run of every target; `__main__.py` makes the long one."""

from __future__ import annotations

from random import Random

import pytest
from hypothesis import given, note, settings
from hypothesis import strategies as st

from tests.fuzz.bounds import hold_within_bounds
from tests.fuzz.change import change, input_of
from tests.fuzz.seeds import SCALARS, TOKENS, seeds_of
from tests.fuzz.targets import TARGETS, hold_limits

NUMBERS = st.integers(0, 2**32)
"""Each names an input: the seed, and every change to it."""
BOUNDED = settings(max_examples=100, deadline=None, print_blob=True)


def hold(target: str, number: int) -> None:
    """Hold a target to its property on one input and on a further change of it."""
    draw = Random(number)  # noqa: S311 # The same number, the same input.
    raw = input_of(target, draw)
    for each in (raw, change(target, raw, draw)):
        note(repr(each))
        hold_within_bounds(TARGETS[target], each)


@BOUNDED
@given(NUMBERS)
def test_any_file_is_read_or_refused(number: int) -> None:
    """Procedures, machine sheets, stages, shared pieces: a record or findings, no more."""
    hold("loader", number)


@BOUNDED
@given(NUMBERS)
def test_any_limits_are_read_or_refused(number: int) -> None:
    """Limits, amounts and answers: figures or a reason."""
    hold("limits", number)


@BOUNDED
@given(st.lists(st.sampled_from([*TOKENS, *SCALARS]) | st.text(max_size=9), max_size=12))
def test_any_lines_are_read_or_refused_as_limits(parts: list[str]) -> None:
    """Also what no seed looks like."""
    hold_within_bounds(hold_limits, "".join(parts).encode("utf-8", "surrogatepass"))


@BOUNDED
@given(NUMBERS)
def test_any_log_is_reported_on_or_refused(number: int) -> None:
    """Job logs and saved walks: a whole report or findings, and room for one more entry."""
    hold("log", number)


@settings(max_examples=3, deadline=None, print_blob=True)
@given(NUMBERS)
def test_any_project_is_built_or_stopped(number: int) -> None:
    """Settings, and every kind of file in a project: pages, or an error MkDocs prints."""
    hold("plugin", number)


@pytest.mark.parametrize("target", sorted({"loader", "limits", "log"}))
def test_seeds_hold(target: str) -> None:
    """What every input begins with is no failure itself, and there is enough of it."""
    assert len(seeds_of(target)) >= 3
    for raw in seeds_of(target):
        hold_within_bounds(TARGETS[target], raw)
