"""What one entry says about one stage: that it is proved, that it is not, or nothing."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from pullcord.analysis.job.given import Given
from pullcord.analysis.job.noted import DONE, Noted
from pullcord.model.stage import Evidence, Stage


@dataclass(frozen=True)
class Said:
    """What an entry says about a stage."""

    is_proof: bool
    """Whether it proves the stage; else it takes the proof back."""
    words: str
    """What was seen and on which day: a sentence without its full stop."""


def said_of(given: Given, name: str, stage: Stage, note: Noted) -> Said | None:
    """Return what an entry says about a stage, or None when it says nothing.

    What speaks against the stage counts more than what speaks for it, and what somebody wrote
    down in so many words counts more than what follows from an answer.
    """
    if name in note.entry.unproves:
        return Said(False, f"on {note.day} it was written down that it does not hold")
    if name in note.entry.shows:
        return Said(True, f"it was shown by hand on {note.day}")
    heard = [*_against(given, stage, note), *_by_evidence(stage, note)]
    return min(heard, key=lambda said: said.is_proof, default=None)


def proving_procedures(stage: Stage) -> tuple[str, ...]:
    """Return the procedures that prove a stage by being gone through to the end."""
    return tuple(each.procedure for each in stage.proved_by if each.procedure and each.step is None)


def _against(given: Given, stage: Stage, note: Noted) -> Iterator[Said]:
    """Yield what the end of a procedure says against a stage."""
    node = note.at
    kind, _, name = (node or "").partition(":")
    procedure = note.procedure
    if procedure is None:
        return
    if kind == "cause" and procedure.procedure in _looking(stage):
        title = procedure.causes[name].title
        yield Said(False, f"“{title}” was found in “{procedure.title}” on {note.day}")
    if kind != "procedure":
        return
    proving = proving_procedures(stage)
    to = given.library.procedures.get(name)
    title = to.title if to else name
    if procedure.procedure in proving or name in proving:
        yield Said(False, f"“{procedure.title}” led to “{title}” on {note.day}")


def _looking(stage: Stage) -> frozenset[str]:
    proving = (each.procedure for each in stage.proved_by if each.procedure)
    return frozenset((*proving, *stage.looked_for_in))


def _by_evidence(stage: Stage, note: Noted) -> Iterator[Said]:
    for evidence in stage.proved_by:
        said = _value_says(evidence, note) or _procedure_says(evidence, note)
        if said is not None:
            yield said


def _value_says(evidence: Evidence, note: Noted) -> Said | None:
    if note.measured is None or evidence.value is None or note.measured.name != evidence.value:
        return None
    if note.verdict not in ("within", "outside"):
        return None
    words = f"“{note.measured.title}” read {note.entry.reading} on {note.day}"
    return Said(note.verdict == "within", f"{words}, {note.verdict} its limits")


def _procedure_says(evidence: Evidence, note: Noted) -> Said | None:
    procedure = note.procedure
    if procedure is None or procedure.procedure != evidence.procedure:
        return None
    if evidence.step is None:
        words = f"“{procedure.title}” was gone through to its end on {note.day}"
        return Said(True, words) if note.at == DONE else None
    return _step_says(evidence, note) if note.entry.step == evidence.step else None


def _step_says(evidence: Evidence, note: Noted) -> Said | None:
    if note.step is None:
        return None
    if not note.step.answers:
        return Said(True, f"{note.where} was done on {note.day}")
    if note.answer is None:
        return None
    words = f"{note.where} gave “{note.answer}” on {note.day}"
    return Said(note.answer in evidence.answers, words)
