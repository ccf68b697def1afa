"""Every cause of the shipped procedures is found, with what a machine with that fault shows."""

from __future__ import annotations

from itertools import groupby

import pytest

from tests.library.table import Walk, read_library, read_walks, walked

LIBRARY = read_library()
WALKS = tuple(read_walks())


def _names() -> list[str]:
    keys = [f"{walk.procedure}-{walk.end.split()[-1]}" for walk in WALKS]
    return [f"{key}-{keys[:place].count(key) + 1}" for place, key in enumerate(keys)]


@pytest.mark.parametrize("walk", WALKS, ids=_names())
def test_fault_is_found(walk: Walk) -> None:
    """A machine with a known fault leads to that fault, by the steps a mechanic would take."""
    steps, target = walked(LIBRARY.procedures[walk.procedure], walk.shows)
    arrived = f"{target.kind} {target.name}".strip()
    assert (arrived, steps) == (walk.end, list(walk.path))


@pytest.mark.parametrize("name", LIBRARY.procedures)
def test_every_end_is_walked(name: str) -> None:
    """No cause, hand-over or good end of a procedure is without a machine that comes to it."""
    procedure = LIBRARY.procedures[name]
    ends = {f"cause {cause}" for cause in procedure.causes}
    for step in procedure.steps.values():
        targets = [*step.answers.values(), *filter(None, [step.then])]
        ends |= {f"procedure {each.name}" for each in targets if each.kind == "procedure"}
        ends |= {"done" for each in targets if each.kind == "done"}
    assert {walk.end for walk in WALKS if walk.procedure == name} == ends


@pytest.mark.parametrize("name", LIBRARY.procedures)
def test_every_step_is_walked(name: str) -> None:
    """No step of a procedure is without a machine that needs it."""
    passed = {step for walk in WALKS if walk.procedure == name for step in walk.path}
    assert passed == set(LIBRARY.procedures[name].steps)


def test_no_two_machines_are_the_same() -> None:
    """Two walks of one procedure never show the very same thing."""
    shown = sorted((walk.procedure, tuple(sorted(walk.shows.items()))) for walk in WALKS)
    assert [key[0] for key, rows in groupby(shown) if len(list(rows)) > 1] == []
