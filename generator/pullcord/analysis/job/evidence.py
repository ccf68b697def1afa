"""What one entry says about one stage: that it is proved, that it is not, or nothing."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from pullcord.analysis.job.given import Given
from pullcord.analysis.job.measured import judged, measured_in, shown_in
from pullcord.analysis.job.said import DONE, answer_in, leads_to
from pullcord.analysis.job.words import day, place_words
from pullcord.model.job import Entry
from pullcord.model.stage import Evidence, Stage


@dataclass(frozen=True)
class Said:
    """What an entry says about a stage."""

    is_proof: bool
    """Whether it proves the stage; else it takes the proof back."""
    words: str
    """What was seen and on which day: a sentence without its full stop."""


def said_of(given: Given, name: str, stage: Stage, entry: Entry) -> Said | None:
    """Return what an entry says about a stage, or None when it says nothing.

    What speaks against the stage counts more than what speaks for it, and what somebody wrote
    down in so many words counts more than what follows from an answer.
    """
    if name in entry.unproves:
        return Said(False, f"on {day(entry)} it was written down that it does not hold")
    if name in entry.shows:
        return Said(True, f"it was shown by hand on {day(entry)}")
    heard = [*_against(given, stage, entry), *_by_evidence(given, stage, entry)]
    return min(heard, key=lambda said: said.is_proof, default=None)


def proving_procedures(stage: Stage) -> tuple[str, ...]:
    """Return the procedures that prove a stage by being gone through to the end."""
    return tuple(each.procedure for each in stage.proved_by if each.procedure and each.step is None)


def _against(given: Given, stage: Stage, entry: Entry) -> Iterator[Said]:
    """Yield what the end of a procedure says against a stage."""
    node = leads_to(given, entry)
    kind, _, name = (node or "").partition(":")
    procedure = given.procedure_of(entry)
    if procedure is None:
        return
    if kind == "cause" and entry.procedure in _looking(stage):
        title = procedure.causes[name].title
        yield Said(False, f"“{title}” was found in “{procedure.title}” on {day(entry)}")
    if kind != "procedure":
        return
    proving = proving_procedures(stage)
    to = given.library.procedures.get(name)
    title = to.title if to else name
    if entry.procedure in proving or name in proving:
        yield Said(False, f"“{procedure.title}” led to “{title}” on {day(entry)}")


def _looking(stage: Stage) -> frozenset[str]:
    proving = (each.procedure for each in stage.proved_by if each.procedure)
    return frozenset((*proving, *stage.looked_for_in))


def _by_evidence(given: Given, stage: Stage, entry: Entry) -> Iterator[Said]:
    for evidence in stage.proved_by:
        said = _value_says(given, evidence, entry) or _procedure_says(given, evidence, entry)
        if said is not None:
            yield said


def _value_says(given: Given, evidence: Evidence, entry: Entry) -> Said | None:
    measured = measured_in(given, entry) if evidence.value else None
    shown = shown_in(entry, measured) if measured else None
    if measured is None or shown is None or measured.name != evidence.value:
        return None
    verdict = judged(measured, entry, shown, given.meter)
    if verdict not in ("within", "outside"):
        return None
    words = f"“{measured.title}” read {entry.reading} on {day(entry)}, {verdict} its limits"
    return Said(verdict == "within", words)


def _procedure_says(given: Given, evidence: Evidence, entry: Entry) -> Said | None:
    if evidence.procedure is None or entry.procedure != evidence.procedure:
        return None
    if evidence.step is None:
        words = f"“{_title(given, entry)}” was gone through to its end on {day(entry)}"
        return Said(True, words) if leads_to(given, entry) == DONE else None
    step = given.step_of(entry)
    if step is None or entry.step != evidence.step:
        return None
    if not step.answers:
        return Said(True, f"{place_words(given, entry)} was done on {day(entry)}")
    answer = answer_in(given, entry)
    if answer is None:
        return None
    words = f"{place_words(given, entry)} gave “{answer}” on {day(entry)}"
    return Said(answer in evidence.answers, words)


def _title(given: Given, entry: Entry) -> str:
    procedure = given.procedure_of(entry)
    return procedure.title if procedure else ""
