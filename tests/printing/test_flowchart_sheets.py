"""The printed flowchart says all that the procedure says, large enough, black on white."""

from __future__ import annotations

import pytest

from pullcord.model.procedure import Procedure
from pullcord.printing.paper import PaperName
from pullcord.safety.notes import SafetyNotes
from tests.printing.sheets import (
    Printed,
    about,
    margin_faults,
    press,
    printed,
    squeezed,
    text_colours,
)

PROCEDURES = tuple(press().project.files)
CASES: list[tuple[str, str, PaperName]] = [
    # The two large ones, one in four of the others, and some of them on the other paper.
    *((name, "", "a4") for name in sorted({"no-spark", "wont-idle", *PROCEDURES[::4]})),
    *((name, "", "letter") for name in PROCEDURES[2::9]),
    ("no-spark", "quince", "a4"),
    ("no-spark", "damson", "letter"),
]
LEAST_PT = 7.0
MOST_SHEETS = {"no-spark": 6, "wont-idle": 6}
"""Of the two large ones; any other takes no more than three."""


@pytest.fixture(scope="module", params=CASES, ids="-".join)
def case(request: pytest.FixtureRequest) -> tuple[str, str, PaperName]:
    """One procedure, for one machine or all, on one paper."""
    found: tuple[str, str, PaperName] = request.param
    return found


@pytest.fixture(scope="module")
def chart(case: tuple[str, str, PaperName]) -> Printed:
    """Its flowchart."""
    name, machine, paper = case
    return printed("flowchart", name, machine, paper)


@pytest.fixture(scope="module")
def procedure(case: tuple[str, str, PaperName]) -> Procedure:
    """The procedure itself."""
    return about(case[0]).posts.procedure


def test_every_step_and_every_answer_is_there(chart: Printed, procedure: Procedure) -> None:
    """Titles, questions and answers of all steps, and the titles of all causes, can be read."""
    said = [step.title for step in procedure.steps.values()]
    said += [step.ask for step in procedure.steps.values() if step.ask]
    said += [f"☐{answer}" for step in procedure.steps.values() for answer in step.answers]
    said += [cause.title for cause in procedure.causes.values()]
    assert [text for text in said if squeezed(text) not in chart.text] == []


def test_every_step_bears_its_number(chart: Printed, procedure: Procedure) -> None:
    """A step has the number it has on every other sheet."""
    numbers = about(procedure.procedure).posts.order.numbers
    said = [f"{numbers[f'step:{name}']}.{step.title}" for name, step in procedure.steps.items()]
    assert [text for text in said if squeezed(text) not in chart.text] == []


def test_every_caution_is_on_its_sheet(chart: Printed, procedure: Procedure) -> None:
    """Each sheet says in full every hazard of the steps and causes that stand on it."""
    notes, kit = about(procedure.procedure).notes, press().kit
    for sheet in chart.sheets:
        text = squeezed(sheet.text)
        parts = {f"step:{name}": f".{step.title}" for name, step in procedure.steps.items()}
        parts |= {f"cause:{name}": cause.title for name, cause in procedure.causes.items()}
        here = {
            hazard
            for node, title in parts.items()
            if squeezed(title) in text
            for box in notes.boxes[node]
            for hazard in box.hazards
        }
        cautions = [kit.cautions[hazard] for hazard in sorted(here)]
        said = [f"{c.hazard}{c.consequence}{c.avoid}" for c in cautions]
        assert [words for words in said if squeezed(words) not in text] == []


def test_a_symbol_bears_its_signal_word(chart: Printed, procedure: Procedure) -> None:
    """Before the title of a step with a caution stands the gravest of its signal words."""
    notes: SafetyNotes = about(procedure.procedure).notes
    for name, step in procedure.steps.items():
        boxes = notes.boxes[f"step:{name}"]
        if boxes:
            before = chart.text.split(squeezed(f".{step.title}"))[0][-40:]
            assert max(box.signal for box in boxes).name in before


def test_limits_stand_at_their_readings(
    chart: Printed, case: tuple[str, str, PaperName], procedure: Procedure
) -> None:
    """A reading has a line to write on, and says what is good where that is known."""
    machine = press().project.machines[case[1]].machine if case[1] else None
    steps = [step for step in procedure.steps.values() if step.reading]
    assert chart.text.count("Read:____") >= len(steps)
    for step in steps:
        assert step.reading is not None
        value = machine.values.get(step.reading.limits or "") if machine else None
        has_limits = bool(step.reading.general or (value and value.limits))
        after = chart.text.split(squeezed(f".{step.title}"))[1][:160].split("Read:")[0]
        assert ("Good:" in after) == has_limits


def test_type_can_be_read(chart: Printed) -> None:
    """No run of text is smaller than 7 points by the matrices in the file."""
    assert min(size for sheet in chart.sheets for size in sheet.sizes_pt) >= LEAST_PT - 0.001


def test_as_few_sheets_as_promised(chart: Printed, procedure: Procedure) -> None:
    """A shipped procedure takes no more sheets than a person will pin up side by side."""
    assert len(chart.sheets) <= MOST_SHEETS.get(procedure.procedure, 3)


def test_the_binding_edge_stays_free(chart: Printed) -> None:
    """Ink keeps 20 mm from the edge that is punched (ISO 838) and 10 mm from the others."""
    assert margin_faults(chart) == []


def test_all_text_is_black(chart: Printed) -> None:
    """Hazards are told by word, symbol and line, so that any printer and any copy will do."""
    assert text_colours(chart.content) == {(0, 0, 0)}
