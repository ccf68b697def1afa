"""A step says what can hurt before it says what to do."""

from __future__ import annotations

import pytest

from pullcord.pages.step import render_cause, render_step
from pullcord.safety.box import Box, SignalWord
from pullcord.safety.notes import SafetyNotes, safety_notes
from pullcord.safety.walkaway import BeforeStart
from tests.pages.make import (
    KIT,
    NO_SPARK,
    WONT_IDLE,
    example_pages,
    posts_of,
    procedure,
    shelf,
    tree_of,
)
from tests.pages.tree import Element, read_html

SHELF = shelf(procedure(NO_SPARK), procedure(WONT_IDLE))
NOTES = safety_notes(SHELF.library)
POSTS = {name: posts_of(SHELF, name) for name in SHELF.files}
SECTIONS = [(name, node) for name, notes in NOTES.items() for node in notes.boxes if node != "done"]


def section(name: str, node: str) -> Element:
    """Return the section of a step or cause on its procedure's page."""
    page = tree_of(example_pages()[f"procedures/{name}.md"])
    return page.by_id(node.replace(":", "-"))


@pytest.mark.parametrize(("name", "node"), SECTIONS)
def test_every_caution_stands_before_the_instruction(name: str, node: str) -> None:
    """Title, boxes, instruction, answers: in this order, and nothing is folded away."""
    part = section(name, node)
    kinds = ("pc-label", "pc-box", "pc-instruction", "pc-way")
    order = [next((k for k in kinds if k in e.classes), None) for e in part.walk()]
    found = [kind for kind in order if kind]
    assert found == sorted(found, key=kinds.index)
    assert found.count("pc-box") == len(NOTES[name].boxes[node])
    assert found.count("pc-instruction") == 1
    assert part.tags("details") == []


@pytest.mark.parametrize(("name", "node"), SECTIONS)
def test_a_box_says_hazard_consequence_and_how_to_avoid_it(name: str, node: str) -> None:
    """The three parts of ANSI Z535.6, under the signal word, for every hazard of the box."""
    for shown, box in zip(section(name, node).all("pc-box"), NOTES[name].boxes[node], strict=True):
        assert shown.all("pc-box__panel")[0].text == box.signal.name
        assert len(shown.all("pc-sign")) >= 1
        for hazard in box.hazards:
            said = KIT.cautions[hazard]
            text = shown.all("pc-box__text")[0].text
            at = [text.index(part) for part in (said.hazard, said.consequence, said.avoid)]
            assert at == sorted(at)


def test_the_examples_have_both_harmless_and_harmful_steps() -> None:
    """The two tests above look at something."""
    counts = {len(notes.boxes[node]) for notes in NOTES.values() for node in notes.boxes}
    assert {0, 1, 2} <= counts


@pytest.mark.parametrize("signal", list(SignalWord))
def test_the_alert_symbol_stands_beside_all_words_but_notice(signal: SignalWord) -> None:
    """ANSI Z535.4-2007, 4.14.4: the safety alert symbol shall not be used with NOTICE."""
    boxes = {"step:look": (Box(signal, ("borrowed-part",)),)}
    notes = SafetyNotes(boxes, {"step:look": ()}, BeforeStart((), (), ()))
    part = read_html(render_step(KIT, POSTS["no-spark"], "look", notes))
    symbols = part.all("pc-box__panel")[0].all("pc-alert")
    assert len(symbols) == (0 if signal is SignalWord.NOTICE else 1)


@pytest.mark.parametrize(("render", "name"), [(render_step, "look"), (render_cause, "coil")])
def test_nothing_is_printed_without_its_boxes_worked_out(render: object, name: str) -> None:
    """A step whose hazards nobody computed cannot be printed at all."""
    nobody = SafetyNotes({}, {}, BeforeStart((), (), ()))
    with pytest.raises(KeyError):
        render(KIT, POSTS["no-spark"], name, nobody)  # type: ignore[operator]


def test_a_step_says_what_to_see_to_when_one_stops_there() -> None:
    """What may be open or fitted after a step is told at that step."""
    part = section("wont-idle", "step:jet")
    told = part.all("pc-stop")[0].text
    for item in NOTES["wont-idle"].walk_away["step:jet"]:
        assert KIT.walk_away[item] in told
    assert "petrol-open" in NOTES["wont-idle"].walk_away["step:jet"]


def test_every_step_names_the_steps_it_is_reached_from() -> None:
    """Each arrival once, with the answer that leads here."""
    page = tree_of(example_pages()["procedures/no-spark.md"])
    links = page.by_id("cause-coil").all("pc-from")[0].tags("a")
    assert [link.attrs["href"] for link in links] == ["#step-coil", "#step-coil"]
    assert "Below the limits" in links[0].text
    assert "Above the limits" in links[1].text
    assert page.by_id("step-plug").all("pc-from") == []
