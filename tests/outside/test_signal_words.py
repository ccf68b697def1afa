"""Signal words, their order and colours against the standard.

ANSI Z535.4-2007, 4.14, as quoted by secondary pages (safetylabel.com, safetysign.com,
electromark.com); ANSI Z535.6 and ISO 3864-2 themselves were not read. The standard's exact colour
values were not found: only the kind of colour is held here.
"""

from __future__ import annotations

import re
from colorsys import rgb_to_hls
from pathlib import Path

import pytest
import yaml

from pullcord.pages.caution import box_views
from pullcord.pages.kit import read_kit
from pullcord.pages.settings import Settings
from pullcord.safety.box import Box, SignalWord
from pullcord.safety.boxes import boxes_of
from pullcord.safety.hazards import HAZARDS

TEMPLATES = Path(__file__).parents[2] / "site_templates"
# Signal word: (what it warns of, in the standard's words; hue of its panel in degrees, from - to).
STANDARD = {
    "DANGER": ("will kill or seriously injure", (345, 375)),
    "WARNING": ("could kill or seriously injure", (20, 42)),
    "CAUTION": ("could injure, lightly or moderately", (43, 60)),
    "NOTICE": ("injures nobody", (200, 240)),
}


def test_the_words_are_the_standards_from_mild_to_grave() -> None:
    """4.14.1 to 4.14.4: DANGER before WARNING before CAUTION, NOTICE beside them."""
    assert [word.name for word in sorted(SignalWord, reverse=True)] == list(STANDARD)


@pytest.mark.parametrize("word", STANDARD)
def test_a_panel_has_the_standards_colour(word) -> None:
    """Red, orange, yellow, blue: the hue of the colour the stylesheet gives the panel."""
    style = (TEMPLATES / "assets" / "pullcord.css").read_text(encoding="utf-8")
    match = re.search(rf"--pc-{word.lower()}: #([0-9a-f]{{6}});", style)
    assert match is not None
    red, green, blue = (int(match[1][place : place + 2], 16) / 255 for place in (0, 2, 4))
    hue, _, saturation = rgb_to_hls(red, green, blue)
    least, most = STANDARD[word][1]
    degrees = hue * 360
    assert saturation > 0.5
    assert least <= degrees <= most or least <= degrees + 360 <= most


@pytest.mark.parametrize("word", STANDARD)
def test_a_word_is_explained_as_the_standard_defines_it(word) -> None:
    """Will or could; death and serious injury, or lighter injury, or none."""
    words = yaml.safe_load((TEMPLATES / "texts" / "words.yaml").read_text(encoding="utf-8"))
    assert words[f"signal_{word.lower()}"] == word
    said = words[f"signal_{word.lower()}_means"]
    expected = STANDARD[word][0]
    assert all(each in said for each in re.findall(r"\w+", expected))


def test_several_hazards_on_one_panel_have_the_word_of_the_gravest() -> None:
    """ANSI Z535.4-2007, as quoted: the signal word of the greatest hazard."""
    (box,) = boxes_of(frozenset({"flame", "vapour"}))
    assert {HAZARDS[name].signal.name for name in box.hazards} == {"DANGER", "WARNING"}
    assert box.signal.name == "DANGER"


def test_notice_never_bears_the_alert_symbol_and_the_others_always_do() -> None:
    """4.14.4: NOTICE is not for personal injury; the safety alert symbol shall not be used."""
    kit = read_kit(Settings(build_date="2026-03-01", revision="1"))
    boxes = tuple(Box(hazard.signal, (hazard.id,)) for hazard in HAZARDS.values())
    shown = {(view.word, view.has_alert_symbol) for view in box_views(kit, boxes)}
    assert shown == {("DANGER", True), ("WARNING", True), ("CAUTION", True), ("NOTICE", False)}


INJURES = re.compile(r"\b(kill|burn|explo|crush|strike|cut|shock|break|burst)", re.IGNORECASE)


@pytest.mark.parametrize("hazard", HAZARDS.values(), ids=HAZARDS)
def test_notice_is_kept_for_what_injures_nobody(hazard) -> None:
    """A text says an injury exactly when its word is graver than NOTICE (4.14.4)."""
    cautions = yaml.safe_load((TEMPLATES / "texts" / "cautions.yaml").read_text(encoding="utf-8"))
    names_an_injury = INJURES.search(cautions[hazard.id]["consequence"]) is not None
    assert names_an_injury == (hazard.signal > SignalWord.NOTICE)
