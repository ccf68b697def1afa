"""How the machine was left: the effects of steps, remedies and entries, one after the other."""

from __future__ import annotations

import pytest

from pullcord.analysis.job.left import BEFORE, OUT, read_left
from pullcord.analysis.job.report import LeftState
from pullcord.model.job import Liquid
from pullcord.safety.vocabulary import CONDITIONS
from tests.analysis.job.making import make_given

FITS = "{date: 2026-02-02, procedure: spark, step: fit-lead}"


def left(*log: str) -> LeftState:
    """Return how the machine stands after a log."""
    return read_left(make_given(*log))


CONDITIONS_LEFT = {
    "nothing done": ([], ()),
    "the step's own effects": ([FITS], ("test-lead",)),
    "and those of a later step": (
        [FITS, "{date: 2026-02-03, procedure: spark, step: lead-off}"], (),
    ),
    "the entry's own verbs": (["{date: 2026-02-02, opens: petrol}"], ("petrol-open",)),
    "the entry has the last word": (
        ["{date: 2026-02-02, procedure: spark, step: fit-lead, takes-off: test-lead}"], (),
    ),
    "a cause found is not put right yet": (
        [FITS, "{date: 2026-02-03, procedure: spark, cause: plug}"], ("test-lead",),
    ),
    "a remedy that was done": (
        [FITS, "{date: 2026-02-03, procedure: spark, cause: plug, did: New plug.}"], (),
    ),
    "a remedy told by its part": (
        [FITS, "{date: 2026-02-03, procedure: spark, cause: plug, parts: [{title: P, price: 5}]}"],
        (),
    ),
    "a remedy that opens something": (
        ["{date: 2026-02-03, procedure: spark, cause: coil, did: New coil.}"], ("guard-off",),
    ),
    "a step of a procedure nobody knows": (
        ["{date: 2026-02-02, procedure: unheard-of, step: fit-lead}"], (),
    ),
    "closed petrol leaves its vapour": (
        ["{date: 2026-02-02, opens: petrol}", "{date: 2026-02-02, closes: petrol}"], ("vapour",),
    ),
    "what is seen to first comes first": (
        ["{date: 2026-02-02, raises: machine, fits: bypass, starts: engine}"],
        ("engine-running", "bypass", "machine-raised", "hot-parts"),
    ),
    "warm on the day it ran": (
        ["{date: 2026-02-02, procedure: idle, step: start-it, answer: idles}"], ("hot-parts",),
    ),
    "cold on the next": (
        [
            "{date: 2026-02-02, procedure: idle, step: start-it, answer: idles}",
            "{date: 2026-02-03, note: Looked at it.}",
        ], (),
    ),
}  # fmt: skip


@pytest.mark.parametrize(("log", "conditions"), CONDITIONS_LEFT.values(), ids=CONDITIONS_LEFT)
def test_what_is_left_follows_from_every_entry(log, conditions) -> None:
    """Conditions are folded over the whole log, those to be seen to first in front."""
    assert left(*log).conditions == conditions


DRAINED = {
    "never": ([], ()),
    "drained": (["{date: 2026-02-02, drains: petrol}"], ("petrol",)),
    "several": (["{date: 2026-02-02, drains: [petrol, oil]}"], ("oil", "petrol")),
    "filled again": (
        ["{date: 2026-02-02, drains: [petrol, oil]}", "{date: 2026-02-09, fills: oil}"],
        ("petrol",),
    ),
    "filled and drained in one evening": (
        ["{date: 2026-02-02, fills: petrol, drains: petrol}"], ("petrol",),
    ),
    "it ran after that": (
        ["{date: 2026-02-02, drains: petrol}", "{date: 2026-02-09, makes: running}"], (),
    ),
    "it ran and was drained again": (
        [
            "{date: 2026-02-02, drains: petrol}",
            "{date: 2026-02-09, makes: running, drains: petrol}",
        ], ("petrol",),
    ),
}  # fmt: skip


@pytest.mark.parametrize(("log", "drained"), DRAINED.values(), ids=DRAINED)
def test_what_is_out_follows_from_every_entry(log, drained) -> None:
    """What was let out stays out until it is filled, or until the engine has run on it."""
    assert left(*log).drained == drained


SAFE = {
    "nobody drained it": ([], False),
    "drained": (["{date: 2026-02-02, drains: petrol}"], True),
    "drained, but a lead on": (["{date: 2026-02-02, drains: petrol, fits: test-lead}"], False),
    "drained, plug cap off": (["{date: 2026-02-02, drains: petrol, disables: ignition}"], True),
    "oil alone": (["{date: 2026-02-02, drains: oil}"], False),
    "vapour left": (["{date: 2026-02-02, closes: petrol, drains: petrol}"], False),
    "vapour cleared": (
        ["{date: 2026-02-02, closes: petrol, clears: vapour, drains: petrol}"],
        True,
    ),
}


@pytest.mark.parametrize(("log", "is_safe"), SAFE.values(), ids=SAFE)
def test_a_drained_machine_without_loose_ends_is_left_safe(log, is_safe) -> None:
    """A drained tank is the state to leave between evenings (common practice)."""
    assert left(*log).is_safe is is_safe


def test_what_is_off_is_told_by_its_name() -> None:
    """Disconnected, disabled or open, in the words an author writes."""
    found = left("{date: 2026-02-02, disconnects: battery, disables: ignition, opens: plug-hole}")
    assert found.off == ("battery", "ignition", "plug-hole")
    assert left("{date: 2026-02-02, disconnects: battery, connects: battery}").off == ()


def test_what_is_fitted_is_told_by_its_name() -> None:
    """Whatever was put on for testing, in the order of the vocabulary."""
    found = left("{date: 2026-02-02, fits: [auxiliary-tank, bypass]}")
    assert found.fitted == ("bypass", "auxiliary-tank")


SAID = {
    "petrol unknown": ([], ["Nobody wrote"]),
    "petrol in it": (["{date: 2026-02-02, fills: petrol}"], ["There is petrol in it"]),
    "nothing at all": (["{date: 2026-02-02, drains: petrol}"], []),
    "bypass before petrol": (
        ["{date: 2026-02-02, fits: bypass}", "{date: 2026-02-09, note: Still on.}"],
        ["A bypass is still fitted: a switch that should stop it may not do so. "
         "(Since 2026-02-02.)", "Nobody wrote"],
    ),
    "no brakes": (
        ["{date: 2026-02-02, drains: [petrol, brake-fluid], disables: ignition}"],
        ["The brake fluid is out", "Look that the plug cap is off"],
    ),
}  # fmt: skip


@pytest.mark.parametrize(("log", "sentences"), SAID.values(), ids=SAID)
def test_before_touching_it_again_the_gravest_comes_first(log, sentences) -> None:
    """Loose ends, then petrol, then what is out, then what is only to be known."""
    found = left(*log).before_touching
    assert len(found) == len(sentences)
    for said, words in zip(found, sentences, strict=True):
        assert said.startswith(words)


def test_there_are_words_for_everything_that_may_be_left() -> None:
    """No condition someone must be told of, and no liquid, is left without a sentence."""
    assert set(BEFORE) == {each.id for each in CONDITIONS.values() if each.reminds}
    assert set(OUT) == set(Liquid.__args__) - {"petrol"}
