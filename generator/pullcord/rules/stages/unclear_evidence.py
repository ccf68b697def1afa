"""Evidence names one thing: a procedure, a value of the sheet, or the job itself.

A step needs its procedure and, when it asks something, the answers that count; answers need their
step. Otherwise nobody can tell what proves the stage, and what takes the proof back.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.procedure import Library
from pullcord.model.stage import Evidence, StageList
from pullcord.rules.example_job import STAGES, stages_example

ID = "unclear-evidence"

MENDED = stages_example(
    STAGES.replace("{procedure: no-prime}", "{procedure: no-prime, step: casing, answers: full}")
)

FAILING = stages_example(MENDED["pump-stages.yaml"].replace(", answers: full", ""))


def check(stages: StageList, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every piece of evidence that names too little or too much."""
    for name, stage in stages.stage.items():
        for place, evidence in enumerate(stage.proved_by):
            for message, mend in _faults(evidence, library):
                yield Flaw(("stage", name, "proved-by", place), message, mend)


def _faults(evidence: Evidence, library: Library) -> Iterator[tuple[str, str]]:
    named = (evidence.procedure, evidence.value, evidence.job)
    count = sum(each is not None for each in named)
    if count > 1:
        yield "this evidence names several things", "write each as an item of its own"
    elif evidence.procedure is None and (evidence.step or evidence.answers):
        yield "this evidence has no procedure", "add `procedure:`"
    elif not count:
        yield "this evidence names nothing", "add `procedure:`, `value:` or `job: taken-in`"
    elif evidence.answers and evidence.step is None:
        yield "these answers belong to no step", "add `step:`"
    elif _asks(evidence, library) and not evidence.answers:
        yield "this step asks something, but no answer counts", "add `answers:`"


def _asks(evidence: Evidence, library: Library) -> bool:
    procedure = library.procedures.get(evidence.procedure or "")
    step = procedure.steps.get(evidence.step or "") if procedure else None
    return step is not None and bool(step.answers)
