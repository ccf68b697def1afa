"""What proves a stage is there: the procedure, its step, the answers of that step.

Evidence that no log can ever give leaves the stage unproved for good, however well the machine
runs.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from pullcord.finding import Flaw, Place
from pullcord.model.nearest import did_you_mean, listed
from pullcord.model.procedure import Library
from pullcord.model.stage import Evidence, StageList
from pullcord.rules.example_job import STAGES, stages_example

ID = "unknown-evidence"

MENDED = stages_example(
    STAGES.replace("{procedure: no-prime}", "{procedure: no-prime, step: time-it, answers: within}")
)

FAILING = stages_example(MENDED["pump-stages.yaml"].replace("answers: within", "answers: in time"))


def check(stages: StageList, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every procedure, step and answer in the list that does not exist."""
    known = (*library.procedures, *library.unread)
    for name, stage in stages.stage.items():
        for number, looked in enumerate(stage.looked_for_in):
            if looked not in known:
                at = ("stage", name, "looked-for-in", number)
                yield _flaw(at, "procedure", looked, known)
        for place, evidence in enumerate(stage.proved_by):
            yield from _evidence(("stage", name, "proved-by", place), evidence, library, known)


def _evidence(
    place: Place, evidence: Evidence, library: Library, known: tuple[str, ...]
) -> Iterator[Flaw]:
    if evidence.procedure is not None and evidence.procedure not in known:
        yield _flaw((*place, "procedure"), "procedure", evidence.procedure, known)
    procedure = library.procedures.get(evidence.procedure or "")
    if procedure is None or evidence.step is None:
        return
    if evidence.step not in procedure.steps:
        yield _flaw((*place, "step"), "step", evidence.step, procedure.steps)
        return
    answers = procedure.steps[evidence.step].answers
    for number, answer in enumerate(evidence.answers):
        if answer not in answers:
            yield _flaw((*place, "answers", number), "answer", answer, answers)


def _flaw(place: Place, kind: str, name: str, known: Iterable[str]) -> Flaw:
    names = tuple(known)
    otherwise = f"there are {listed(names)}" if 0 < len(names) < 12 else "see the procedure's page"
    return Flaw(place, f"there is no {kind} `{name}`", did_you_mean(name, names, otherwise))
