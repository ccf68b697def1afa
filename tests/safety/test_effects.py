"""What one step does, whatever the order of its keys."""

from __future__ import annotations

import pytest

from pullcord.model.action import Action
from pullcord.safety.effects import effects_of, exposure, state_during, state_leaving

CASES = {
    "opens": ({"opens": "petrol"}, [], ["petrol-open"], ["petrol-open"]),
    "opens and closes": (
        {"closes": "petrol", "opens": "petrol"},
        [],
        ["petrol-open", "vapour"],
        ["vapour"],
    ),
    "closes and clears": (
        {"clears": "vapour", "closes": "petrol"},
        ["petrol-open"],
        ["petrol-open", "vapour"],
        [],
    ),
    "clears while it stays open": (
        {"clears": "vapour"},
        ["petrol-open", "vapour"],
        ["petrol-open", "vapour"],
        ["petrol-open"],
    ),
    "disables and enables": (
        {"enables": "ignition", "disables": "ignition"},
        ["ignition-live"],
        ["ignition-live", "ignition-off", "near-high-voltage"],
        ["ignition-live"],
    ),
    "disables": (
        {"disables": "ignition"},
        ["ignition-live"],
        ["ignition-live", "ignition-off", "near-high-voltage"],
        ["ignition-off"],
    ),
    "runs and cools": (
        {"makes": "running", "cools": "engine"},
        [],
        ["engine-running", "hot-parts", "running"],
        [],
    ),
    "starts and leaves running": (
        {"starts": "engine"},
        [],
        ["engine-running", "hot-parts", "running"],
        ["engine-running", "hot-parts"],
    ),
    "starts and stops": (
        {"starts": "engine", "stops": "engine"},
        [],
        ["engine-running", "hot-parts", "running"],
        ["hot-parts"],
    ),
    "auxiliary tank goes on": (
        {"fits": "auxiliary-tank"},
        [],
        ["auxiliary-tank", "petrol-open", "vapour"],
        ["auxiliary-tank", "vapour"],
    ),
    "raises and supports": (
        {"supports": "machine", "raises": "machine"},
        [],
        ["machine-raised", "near-raised-machine", "unsupported"],
        ["machine-raised"],
    ),
    "lowers": (
        {"lowers": "machine"},
        ["machine-raised"],
        ["machine-raised", "unsupported"],
        ["unsupported"],
    ),
    "charges and takes the charger off": (
        {"connects": "charger", "disconnects": "charger"},
        [],
        ["battery-spark", "charging", "near-battery"],
        [],
    ),
    "reconnects the battery": (
        {"connects": "battery", "disconnects": "battery"},
        ["battery-connected"],
        ["battery-connected", "battery-spark", "near-battery"],
        ["battery-connected"],
    ),
    "two things": (
        {"fits": ["test-lead", "bypass"]},
        [],
        ["bypass", "fitting-test-lead", "test-lead"],
        ["bypass", "test-lead"],
    ),
}


@pytest.mark.parametrize(("keys", "entering", "during", "leaving"), CASES.values(), ids=CASES)
def test_a_step_changes_the_state(keys, entering, during, leaving) -> None:
    """During a step everything counts that holds at any moment of it; afterwards, what is left."""
    effects = effects_of(Action.model_validate(keys))
    state = frozenset(entering)
    assert sorted(state_during(state, effects)) == during
    assert sorted(state_leaving(state, effects)) == leaving


def test_putting_right_is_an_exposure_even_when_nothing_was_declared() -> None:
    """Whoever closes petrol has hands on it, whether or not a step said that it was open."""
    effects = effects_of(Action.model_validate({"closes": "petrol"}))
    assert "petrol-open" not in state_during(frozenset(), effects)
    assert "petrol-open" in exposure(frozenset(), effects)


def test_making_safe_exposes_to_nothing_by_itself() -> None:
    """Arranging for air is no hazard; only what is assumed at the start is ended by it."""
    effects = effects_of(Action.model_validate({"arranges": ["fresh-air", "way-to-stop"]}))
    assert exposure(frozenset(), effects) == frozenset()
