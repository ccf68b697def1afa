"""Every hazard, reminder and requirement has its words, and no words are left over."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

import pytest
import yaml

from pullcord.safety.hazards import HAZARDS
from pullcord.safety.vocabulary import CONDITIONS

TEXTS = Path(__file__).parents[2] / "site_templates" / "texts"


def texts(name: str) -> Mapping[str, Any]:
    """Read one of the shipped text files, every scalar as text."""
    content = (TEXTS / f"{name}.yaml").read_text(encoding="utf-8")
    return yaml.load(content, Loader=yaml.BaseLoader)  # noqa: S506


EXPECTED = {
    "cautions": list(HAZARDS),
    "walk-away": [each.id for each in CONDITIONS.values() if each.reminds],
    "wear": {name for hazard in HAZARDS.values() for name in hazard.wear},
    "ready": {name for hazard in HAZARDS.values() for name in hazard.ready},
}


@pytest.mark.parametrize(("name", "keys"), EXPECTED.items(), ids=EXPECTED)
def test_the_file_has_these_keys_and_no_others(name, keys) -> None:
    """A hazard without words would stand mute before its step; words without a hazard are dead."""
    assert sorted(texts(name)) == sorted(keys)


@pytest.mark.parametrize("hazard", HAZARDS)
def test_a_caution_says_hazard_consequence_and_how_to_avoid_it(hazard) -> None:
    """The three parts ANSI Z535.6 asks for, each in sentences short enough to be read in gloves."""
    caution = texts("cautions")[hazard]
    assert list(caution) == ["hazard", "consequence", "avoid"]
    for part in caution.values():
        assert part.endswith(".")
        assert max(len(sentence.split()) for sentence in part.split(". ")) <= 26
    assert sum(len(part) for part in caution.values()) <= 560


STANDS = {
    "carbon-monoxide": ("kills", "outdoors only"),
    "open-petrol": ("vapour", "floor", "class B"),
    "high-voltage": ("pacemaker",),
    "battery": ("acid", "Ground lead off first and on last"),
    "charging": ("hydrogen",),
    "tyre-pressure": ("split rim", "explosion"),
    "under-machine": ("stands", "Never rely on a jack"),
    "flame-or-hot-work": ("empty", "Never heat, weld or cut a tank"),
}


@pytest.mark.parametrize(("hazard", "words"), STANDS.items(), ids=STANDS)
def test_what_must_never_be_left_out(hazard, words) -> None:
    """The facts that save a life stay in the text, however it is worded."""
    said = " ".join(texts("cautions")[hazard].values())
    assert [word for word in words if word not in said] == []
