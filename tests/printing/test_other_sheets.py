"""Steps, record sheets, pin charts and walk-away lists say all they should."""

from __future__ import annotations

import pytest

from pullcord.errors import PullcordError
from pullcord.pages.step import cause_view, step_view
from pullcord.printing.output import print_sheets
from pullcord.printing.paper import Kind
from pullcord.readings import connector_views, for_machine
from tests.printing.sheets import (
    BUILT,
    REVISION,
    Printed,
    about,
    margin_faults,
    press,
    printed,
    read,
    squeezed,
    text_colours,
)

STEPS = [("leaks-fuel", ""), ("no-spark", "quince"), ("wont-idle", "")]
RECORDS = [("no-spark", ""), ("no-spark", "quince"), ("wont-idle", "medlar")]
MACHINES = tuple(press().project.machines)
EVERY_KIND: list[tuple[Kind, str, str]] = [
    ("steps", "leaks-fuel", ""),
    ("record", "no-spark", "quince"),
    ("walkaway", "no-spark", ""),
    ("pins", "damson", ""),
    ("flowchart", "leaks-fuel", ""),
]


@pytest.fixture(scope="module", params=STEPS, ids="-".join)
def steps(request: pytest.FixtureRequest) -> tuple[str, str, Printed]:
    """The steps of one procedure, with its name and the machine's."""
    name, machine = request.param
    return name, machine, printed("steps", name, machine)


def test_steps_say_everything_caution_first(steps: tuple[str, str, Printed]) -> None:
    """Each step: its cautions in full, then the instruction, its limits, its answers, in order."""
    name, machine, sheets = steps
    topic, kit = about(name, machine), press().kit
    at = 0
    for step_name in topic.posts.order.steps:
        view = step_view(kit, topic.posts, step_name, topic.notes)
        said = [f"{view.label}: {view.title}"]
        for box in view.boxes:
            said += [box.word]
            said += [f"{c.hazard}{c.consequence}{c.avoid}" for c in box.hazards]
        said += view.instruction
        said += [view.reading.limits] if view.reading else []
        said += [view.ask] if view.ask else []
        for way in view.answers:
            said += [way.said, f"{way.label}: {way.title}" if way.title else way.label]
        for text in said:
            found = sheets.text.find(squeezed(text), at)
            assert found >= 0, f"{step_name}: {text}"
            at = found


def test_remedies_stand_behind_their_cautions(steps: tuple[str, str, Printed]) -> None:
    """Each cause: its cautions in full, then its remedy."""
    name, machine, sheets = steps
    topic, kit = about(name, machine), press().kit
    at = sheets.text.index(squeezed(kit.words["remedies_title"]))
    for cause_name in topic.posts.order.causes:
        view = cause_view(kit, topic.posts, cause_name, topic.notes)
        said = [f"{view.label}: {view.title}"]
        for box in view.boxes:
            said += [box.word, *(f"{c.hazard}{c.consequence}{c.avoid}" for c in box.hazards)]
        for text in (*said, *view.remedy):
            found = sheets.text.find(squeezed(text), at)
            assert found >= 0, f"{cause_name}: {text}"
            at = found


@pytest.mark.parametrize(("name", "machine"), RECORDS, ids=["general", "quince", "medlar"])
def test_the_record_sheet_lists_every_reading(name: str, machine: str) -> None:
    """Each reading with its limits for this machine and meter, and three columns for evenings."""
    sheets = printed("record", name, machine)
    topic = about(name, machine)
    subject = topic.posts.subject
    for step in topic.posts.procedure.steps.values():
        if step.reading:
            assert squeezed(step.title) in sheets.text
            resolved = for_machine(
                step.reading, tuple(step.answers), subject.machine, subject.meter
            )
            assert resolved.limits is None or squeezed(resolved.limits.words) in sheets.text
            assert all(squeezed(band.words) in sheets.text for band in resolved.bands)
    evenings = squeezed(press().words["record_evening"])
    assert all(squeezed(sheet.text).count(evenings) >= 3 for sheet in sheets.sheets)


def test_there_is_no_record_of_nothing() -> None:
    """A procedure that measures nothing has no record sheet."""
    with pytest.raises(PullcordError, match="takes no reading"):
        print_sheets(press(), "record", "leaks-fuel")


@pytest.mark.parametrize("name", press().project.files)
def test_the_walk_away_list_is_whole(name: str) -> None:
    """The standing items, and behind each step and remedy what has to be seen to after it."""
    sheets = printed("walkaway", name)
    topic, kit = about(name), press().kit
    posts = topic.posts
    assert all(squeezed(item) in sheets.text for item in kit.standing.walk_away)
    for node, items in topic.notes.walk_away.items():
        kind, part = node.split(":")
        titled = (posts.procedure.steps if kind == "step" else posts.procedure.causes)[part]
        label = kit.words[f"way_{kind}"].format(number=posts.order.numbers[node])
        label = squeezed(f"{label}: {titled.title}")
        assert (label in sheets.text) == bool(items)
        after = sheets.text.split(label)[-1] if items else ""
        assert all(squeezed(kit.walk_away[item]) in after for item in items)


@pytest.mark.parametrize("machine", MACHINES)
def test_pin_charts_say_every_pin(machine: str) -> None:
    """Each connector with every pin's place, wire and function, and what it should read."""
    sheets = printed("pins", machine)
    for view in connector_views(press().project.machines[machine].machine, press().meter):
        assert squeezed(view.connector.title) in sheets.text
        for pin in view.pins:
            said = [pin.spot.label, pin.function, *(each.short for each in pin.readings)]
            said += [pin.wire.code] if pin.wire else []
            assert [text for text in said if squeezed(text) not in sheets.text] == []


def test_two_pin_charts_share_a_sheet() -> None:
    """Charts that are small enough take half a sheet each, with head and foot of their own."""
    sheets = printed("pins", "damson")
    connectors = press().project.machines["damson"].machine.connectors
    assert len(sheets.sheets) == (len(connectors) + 1) // 2
    text = squeezed(sheets.sheets[0].text)
    assert text.count(squeezed(press().kit.words["sheet_deferral"])) == 2


@pytest.mark.parametrize(("kind", "name", "machine"), EVERY_KIND, ids=lambda word: word or "any")
def test_every_sheet_says_what_it_is(kind: Kind, name: str, machine: str) -> None:
    """Title, symptom, revisions, build date, count, deferral, and a line to fill in."""
    sheets = printed(kind, name, machine)
    posts = about("no-spark" if kind == "pins" else name, machine).posts
    deferral = press().kit.standing.deferral if kind != "pins" else ()
    symptom = posts.procedure.symptom if kind != "pins" else ""
    digest = press().project.files[name].digest if kind != "pins" else ""
    for number, sheet in enumerate(sheets.sheets, start=1):
        said = ["Machine", "Name", "Date", BUILT, REVISION, posts.subject.title, symptom, digest]
        said += [f"sheet {number} of {len(sheets.sheets)}", *deferral]
        text = squeezed(sheet.text)
        assert [words for words in said if squeezed(words) not in text] == []


@pytest.mark.parametrize(("kind", "name", "machine"), EVERY_KIND, ids=lambda word: word or "any")
def test_every_sheet_can_be_read_and_bound(kind: Kind, name: str, machine: str) -> None:
    """Type of 7 points and more, all of it black, and no ink where the holes are punched."""
    sheets = printed(kind, name, machine)
    sizes = [size for sheet in read(sheets.content).sheets for size in sheet.sizes_pt]
    assert min(sizes) >= 7 - 0.001
    assert text_colours(sheets.content) == {(0, 0, 0)}
    assert margin_faults(sheets) == []
