"""A shipped procedure is complete, and short enough to be read at arm's length."""

from __future__ import annotations

import pytest

from pullcord.model.procedure import Procedure
from pullcord.project import load_project
from tests.library.table import PROCEDURES as PROCEDURES_FOLDER
from tests.library.table import read_library

PROCEDURES = dict(read_library().procedures)
BY_NAME = pytest.mark.parametrize("procedure", PROCEDURES.values(), ids=PROCEDURES)


def _too_long(texts: dict[str, str], words: int) -> dict[str, int]:
    counted = {name: len(text.split()) for name, text in texts.items()}
    return {name: count for name, count in counted.items() if count > words}


def test_nothing_is_found() -> None:
    """The shipped library has no finding, not even a warning."""
    findings = load_project([PROCEDURES_FOLDER]).findings
    assert [f"{each.file}:{each.line}: {each.rule}" for each in findings] == []


def test_names_are_those_of_the_files() -> None:
    """A procedure is called what its file is called."""
    assert {name: each.procedure for name, each in PROCEDURES.items()} == {
        name: name for name in PROCEDURES
    }


@BY_NAME
def test_is_whole(procedure: Procedure) -> None:
    """It has enough steps and causes, words to be found by, and a before and an after."""
    assert len(procedure.steps) >= 8
    assert len(procedure.causes) >= 6
    assert len(procedure.also_said) >= 5
    assert len(procedure.before) >= 3
    assert len(procedure.mistakes) >= 2
    assert procedure.proves


@BY_NAME
def test_tools_are_those_the_steps_use(procedure: Procedure) -> None:
    """Every tool is used by a step, every tool used is listed, and each has a cheap substitute."""
    used = {tool for step in procedure.steps.values() for tool in step.needs}
    assert used == set(procedure.tools)
    assert [name for name, tool in procedure.tools.items() if not tool.instead] == []


@BY_NAME
def test_reads_at_arms_length(procedure: Procedure) -> None:
    """Titles, instructions, questions and answers keep to their number of words."""
    steps = procedure.steps
    assert _too_long({name: step.title for name, step in steps.items()}, 5) == {}
    assert _too_long({name: step.do for name, step in steps.items()}, 45) == {}
    assert _too_long({name: step.ask or "" for name, step in steps.items()}, 8) == {}
    answers = {f"{name}: {text}": text for name, step in steps.items() for text in step.answers}
    assert _too_long(answers, 5) == {}
    remedies = {name: cause.remedy for name, cause in procedure.causes.items()}
    assert _too_long(remedies, 90) == {}


@BY_NAME
def test_titles_differ(procedure: Procedure) -> None:
    """No two steps, and no two causes, carry the same title: people speak of them by it."""
    for titles in (
        [step.title for step in procedure.steps.values()],
        [cause.title for cause in procedure.causes.values()],
    ):
        assert sorted(titles) == sorted(set(titles))


@BY_NAME
def test_most_steps_say_why(procedure: Procedure) -> None:
    """At least nine steps in ten say what they tell."""
    silent = [name for name, step in procedure.steps.items() if not step.why]
    assert len(silent) <= len(procedure.steps) / 10


@BY_NAME
def test_remedies_end_in_a_proof(procedure: Procedure) -> None:
    """Every remedy says how it is proved, and what it costs in odds, parts and minutes."""
    for name, cause in procedure.causes.items():
        assert "Prove it" in cause.remedy, name
        assert cause.odds is not None, name
        assert cause.odds_from, name
        assert cause.parts is not None, name
        assert cause.minutes is not None, name


@BY_NAME
def test_figures_have_a_source(procedure: Procedure) -> None:
    """General limits and odds say where they come from."""
    readings = [step.reading for step in procedure.steps.values() if step.reading]
    assert [each.at for each in readings if each.general and not each.source] == []
