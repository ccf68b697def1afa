"""The standing texts, and a project's own wording of them."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

import pytest

from pullcord.errors import PullcordError
from pullcord.pages.kit import Kit, read_kit, render
from pullcord.safety.hazards import HAZARDS
from pullcord.source.places import site_templates
from tests.pages.make import KIT, SETTINGS

TEMPLATES = site_templates()


def kit_with(folder: Path, name: str, text: str) -> Kit:
    """Return what the pages are made with when a project words some texts itself."""
    (folder / "texts").mkdir()
    (folder / "texts" / f"{name}.yaml").write_text(text, encoding="utf-8")
    return read_kit(replace(SETTINGS, template_dirs=(folder,)))


def test_a_project_words_what_it_likes_and_keeps_the_rest(tmp_path: Path) -> None:
    """One key is enough, and `no` is a word."""
    kit = kit_with(tmp_path, "words", "go_on: no\n")
    assert kit.words["go_on"] == "no"
    assert kit.words["way_step"] == KIT.words["way_step"]


BROKEN = {
    "a key nobody prints": ("words", "gone_on: Next\n", "gone_on"),
    "an empty text": ("words", "go_on: ''\n", "go_on"),
    "a list for a text": ("words", "go_on: [a]\n", "go_on"),
    "a caution that says not how to avoid it": (
        "cautions",
        "battery: {hazard: It burns., consequence: It hurts.}\n",
        "battery.avoid",
    ),
    "a hazard there is not": (
        "cautions",
        "ghosts: {hazard: A, consequence: B, avoid: C}\n",
        "ghosts",
    ),
    "no YAML": ("standing", "before: [\n", "standing.yaml"),
    "no mapping": ("standing", "- a\n", "mapping"),
    "nested too deep": ("words", "[" * 5000, "words.yaml"),
}


@pytest.mark.parametrize("case", BROKEN)
def test_a_text_that_does_not_fit_is_named(tmp_path: Path, case: str) -> None:
    """The author reads which file and which key, not a traceback."""
    name, text, named = BROKEN[case]
    with pytest.raises(PullcordError, match=re.escape(named)):
        kit_with(tmp_path, name, text)


def test_a_template_that_asks_for_nothing_known_is_named(tmp_path: Path) -> None:
    """A project's own template goes before ours; a slip in it is told."""
    (tmp_path / "pages").mkdir()
    (tmp_path / "pages" / "list.html.j2").write_text("{{ view.nonsense }}", encoding="utf-8")
    kit = read_kit(replace(SETTINGS, template_dirs=(tmp_path,)))
    with pytest.raises(PullcordError, match=r"pages/list\.html\.j2.*nonsense"):
        render(kit, "list", object())


@pytest.mark.parametrize("hazard", HAZARDS)
def test_every_hazard_has_its_words_and_its_drawing(hazard: str) -> None:
    """Whatever the analysis asks for can be printed."""
    sign = HAZARDS[hazard].sign
    assert hazard in KIT.cautions
    assert sign in KIT.signs
    assert set(HAZARDS[hazard].ready) <= set(KIT.ready)
    assert set(HAZARDS[hazard].wear) <= set(KIT.wear)


@pytest.mark.parametrize("sign", ["alert", *KIT.signs])
def test_a_sign_is_drawn_by_us_in_one_ink(sign: str) -> None:
    """Plain shapes in the colour of the text, so that it prints in black; nothing is fetched."""
    drawing = (TEMPLATES / "signs" / f"{sign}.svg").read_text(encoding="utf-8")
    assert 'viewBox="0 0 64 64"' in drawing
    assert not re.search(r"#[0-9a-f]{3}|rgb\(|href|<image|<text|url\(", drawing)


def test_every_drawing_is_used() -> None:
    """No sign is left over."""
    drawn = {path.stem for path in (TEMPLATES / "signs").glob("*.svg")}
    assert drawn == {"alert", *(hazard.sign for hazard in HAZARDS.values())}


def test_every_word_is_printed_somewhere() -> None:
    """A key that nothing asks for is dead; one built from parts is found by its first part."""
    code = Path(__file__).parents[2] / "generator" / "pullcord" / "pages"
    sources = [*code.rglob("*.py"), *(TEMPLATES / "pages").glob("*.j2")]
    text = "\n".join(path.read_text(encoding="utf-8") for path in sources)
    built = [*re.findall(r"f\"(\w+_)\{", text), "guide_", "list_", "map_", "rules_"]
    titles = {"before", "causes", "flowchart", "steps", "remedies", "done"}
    dead = [
        key
        for key in KIT.words
        if not re.search(rf"\b{key}\b", text)
        and not key.startswith(tuple(built))
        and key.removesuffix("_title") not in titles
    ]
    assert dead == []
