"""What an entry says of its procedure: the answer given, and where that leads."""

from __future__ import annotations

from pullcord.analysis.job.given import Given
from pullcord.analysis.job.measured import answer_read
from pullcord.model.job import Entry

DONE = "done"
ENDS = ("cause", "procedure", DONE)


def answer_in(given: Given, entry: Entry) -> str | None:
    """Return the answer an entry gives at its step: as written, or as its reading proves it."""
    step = given.step_of(entry)
    if step is None:
        return None
    if entry.answer is not None:
        return entry.answer if entry.answer in step.answers else None
    return answer_read(given, entry, step)


def leads_to(given: Given, entry: Entry) -> str | None:
    """Return the graph node an entry comes to in its procedure, such as `step:plug` or `done`.

    None when it follows no procedure, or when what it says settles nothing. A cause it names counts
    more than an answer: it is what was found in the end.
    """
    procedure = given.procedure_of(entry)
    if procedure is None:
        return None
    if entry.cause is not None:
        return f"cause:{entry.cause}" if entry.cause in procedure.causes else None
    step = given.step_of(entry)
    if step is None:
        return DONE if entry.answer == DONE and entry.step is None else None
    answer = answer_in(given, entry)
    target = step.answers[answer] if answer is not None else step.then
    return target.node if target else None


def is_end(node: str | None) -> bool:
    """Say whether a graph node ends its procedure."""
    return node is not None and node.partition(":")[0] in ENDS


def is_remedied(entry: Entry) -> bool:
    """Say whether an entry says that the cause it names has been put right."""
    return entry.cause is not None and bool(entry.did or entry.parts)
