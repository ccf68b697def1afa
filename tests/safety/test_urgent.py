"""Which procedures are about a machine that is dangerous as it stands."""

from __future__ import annotations

import pytest

from pullcord.project import load_project
from pullcord.safety.box import SignalWord
from pullcord.safety.urgent import is_urgent, word_at_sight
from pullcord.source.places import shipped_procedures
from tests.analysis.making import make_procedure

FIRST_STEPS = {
    "look": ({}, None, False),
    "smell": ({"near": "petrol"}, SignalWord.WARNING, False),
    "stand-it-firm": ({"near": "hot-parts", "cools": "engine"}, SignalWord.WARNING, False),
    "spin-it": ({"makes": "cranking"}, SignalWord.WARNING, False),
    "pull-the-cap": ({"disables": "ignition"}, SignalWord.WARNING, False),
    "petrol-runs-out": ({"opens": "petrol"}, SignalWord.DANGER, True),
    "it-runs-on": ({"near": ["moving-parts", "hot-parts"]}, SignalWord.WARNING, True),
    "it-hangs": ({"near": "raised-machine"}, SignalWord.WARNING, True),
    "it-hisses": ({"near": "pressure"}, SignalWord.WARNING, True),
}


@pytest.mark.parametrize(("first", "word", "urgent"), FIRST_STEPS.values(), ids=FIRST_STEPS)
def test_the_first_step_says_whether_it_is_urgent(
    first: dict[str, object], word: SignalWord | None, urgent: bool
) -> None:
    """What the step itself brings about is no danger the machine came with, short of DANGER."""
    made = make_procedure({"first": {**first, "then": "cause it"}}, {"it": {}})
    assert (word_at_sight(made), is_urgent(made)) == (word, urgent)


def test_what_comes_later_does_not_make_it_urgent() -> None:
    """Every procedure meets something on its way."""
    steps = {
        "look": {"then": "step open"},
        "open": {"opens": "petrol", "then": "cause it"},
    }
    assert not is_urgent(make_procedure(steps, {"it": {}}))


def test_a_start_that_is_not_there_is_not_urgent() -> None:
    """A rule reports it; nothing falls over."""
    assert not is_urgent(make_procedure({"look": {"then": "done"}}, {}, start="lost"))


def test_of_the_shipped_procedures_a_leak_is_urgent_and_no_spark_is_not() -> None:
    """As anybody in the trade would say."""
    known = load_project([shipped_procedures()]).library.procedures
    urgent = {name for name, procedure in known.items() if is_urgent(procedure)}
    assert "leaks-fuel" in urgent
    assert urgent.isdisjoint({"no-spark", "wont-idle"})
    assert urgent <= {"leaks-fuel", "stop-switch"}
