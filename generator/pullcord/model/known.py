"""Whether what an entry names is there: its procedure, step, answer, cause and value."""

from __future__ import annotations

from collections.abc import Collection, Iterator

from pullcord.model.job import Entry, Job
from pullcord.model.nearest import did_you_mean, listed
from pullcord.model.procedure import Library, Procedure

DONE = "done"
"""The answer of an entry that says its procedure was gone through to the end."""
_MOST = 12


def check_known(entry: Entry, job: Job, library: Library) -> Iterator[str]:
    """Yield a sentence for every name in an entry that nothing carries, with the nearest one."""
    yield from _of_sheet(entry, job, library)
    if entry.procedure is None:
        for kind in ("step", "cause", "answer"):
            if getattr(entry, kind) is not None:
                yield f"a {kind} belongs to a procedure: name the procedure too"
        return
    procedure = library.procedures.get(entry.procedure)
    if procedure is None:
        yield no_procedure(entry.procedure, library)
        return
    name = f"`{procedure.procedure}`"
    if entry.step is not None and entry.step not in procedure.steps:
        yield f"{name} has no step `{entry.step}`; {_near(entry.step, procedure.steps)}"
    if entry.cause is not None and entry.cause not in procedure.causes:
        yield f"{name} has no cause `{entry.cause}`; {_near(entry.cause, procedure.causes)}"
    yield from check_answer(entry, procedure)


def check_answer(entry: Entry, procedure: Procedure) -> Iterator[str]:
    """Yield a sentence when the step has no such answer."""
    if entry.answer is None or (entry.step is None and entry.answer == DONE):
        return
    if entry.step is None:
        yield f"`{entry.answer}` is the answer of a step: name the step too"
        return
    step = procedure.steps.get(entry.step)
    if step and not step.answers:
        yield f"the step `{entry.step}` asks nothing: leave out the answer `{entry.answer}`"
    elif step and entry.answer not in step.answers:
        near = _near(entry.answer, step.answers)
        yield f"the step `{entry.step}` has no answer `{entry.answer}`; {near}"


def no_procedure(name: str, library: Library) -> str:
    """Return the sentence about a procedure that is not there or cannot be read."""
    if name in library.unread:
        return f"the procedure `{name}` has errors: mend them first, `pullcord check` names them"
    return f"there is no procedure `{name}`; {_near(name, library.procedures)}"


def _of_sheet(entry: Entry, job: Job, library: Library) -> Iterator[str]:
    machine = library.machines.get(job.machine)
    if entry.value is not None and machine is not None and entry.value not in machine.values:
        near = _near(entry.value, machine.values)
        yield f"the sheet of `{job.machine}` has no value `{entry.value}`; {near}"


def _near(word: str, known: Collection[str]) -> str:
    some = list(known)[:_MOST]
    more = ", and more" if len(known) > _MOST else ""
    return did_you_mean(word, known, f"there are: {listed(some) or 'none'}{more}")
