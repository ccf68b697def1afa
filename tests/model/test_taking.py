"""A guided walk taken into a job log."""

from __future__ import annotations

from typing import Any

import pytest

from pullcord.model.job import Entry, Job
from pullcord.model.parse import parse_procedure, parse_record
from pullcord.model.procedure import Library, Procedure
from pullcord.model.taking import Taken, places_in, plain, take_walk
from pullcord.model.walk_record import WalkRecord
from pullcord.rules.example import example
from pullcord.source.tree import read_tree

REVISION = "0123456789ab"
PROCEDURE = example(
    """
    steps:
      casing:
        title: Casing
        do: Look.
        then: step hose
      hose:
        title: Hose
        do: Measure.
        reading: {quantity: length, at: the hose, general: 10-20 mm, source: common practice}
        answers: {below: cause air-leak, within: done, above: cause dry-casing}
    """
)


def library() -> Library:
    """Return a library of one small procedure."""
    procedure = parse_procedure(read_tree(PROCEDURE.encode()).data)
    assert isinstance(procedure, Procedure)
    return Library(procedures={"no-prime": procedure}, unread=("bad",))


def job(*entries: dict[str, str]) -> Job:
    """Return the log of the machine `pump`."""
    data = {"job": "a", "machine": "pump", "taken-in": "2026-03-01", "purpose": "x", "most": "9"}
    found = parse_record(Job, {**data, "log": list(entries)})
    assert isinstance(found, Job)
    return found


def one_round(at: str, *answers: tuple[str, str, str]) -> dict[str, Any]:
    """Return a round of answers: step, answer, when. A reading stands beside `within`."""
    rows = [
        {"step": step, "answer": said, "when": when}
        | ({"reading": "15 mm"} if said == "within" else {})
        for step, said, when in answers
    ]
    return {"began": answers[0][2], "left": answers[-1][2], "at": at, "answers": rows}


def record(*rounds: dict[str, Any], **given: str) -> WalkRecord:
    """Return a walk record of the pump."""
    head = {"walk": "no-prime", "format": "1", "revision": REVISION, "machine": "pump"}
    found = parse_record(WalkRecord, {**head, **given, "rounds": list(rounds)})
    assert isinstance(found, WalkRecord)
    return found


FIRST = one_round(
    "cause air-leak",
    ("casing", "", "2026-03-02 19:00"),
    ("hose", "below", "2026-03-02 19:05"),
)
SECOND = one_round(
    "done",
    ("casing", "", "2026-03-03 19:00"),
    ("hose", "within", "2026-03-03 19:10"),
)


def take(walk: WalkRecord, log: Job | None = None, revision: str = REVISION) -> Taken:
    """Take a walk into a log, in the evening of the third of March."""
    return take_walk(walk, log or job(), library(), revision, "2026-03-03 20:00")


def test_every_answer_of_every_round_becomes_an_entry() -> None:
    """With what was read, how warm it was, the cause that was found and the end reached."""
    taken = take(record(FIRST, SECOND, **{"shop-celsius": "9"}))
    assert [plain(entry) for entry in taken.entries] == [
        {"date": "2026-03-02 19:00", "procedure": "no-prime", "step": "casing"},
        {
            "date": "2026-03-02 19:05",
            "procedure": "no-prime",
            "step": "hose",
            "answer": "below",
            "cause": "air-leak",
        },
        {"date": "2026-03-03 19:00", "procedure": "no-prime", "step": "casing"},
        {
            "date": "2026-03-03 19:10",
            "procedure": "no-prime",
            "step": "hose",
            "answer": "within",
            "reading": "15 mm",
            "celsius": "9",
        },
        {"date": "2026-03-03 19:10", "procedure": "no-prime", "answer": "done"},
    ]
    assert (taken.skipped, taken.notes, taken.refusals) == (0, (), ())


def test_what_is_in_the_log_is_skipped_and_counted() -> None:
    """A walk that is saved every evening is taken in every evening, and nothing is there twice."""
    first = take(record(FIRST))
    entries = [dict(plain(entry)) for entry in first.entries]  # type: ignore[call-overload]
    again = take(record(FIRST, SECOND), job(*entries))
    assert (len(again.entries), again.skipped) == (3, 2)
    everything = [*entries, *(dict(plain(entry)) for entry in again.entries)]  # type: ignore[call-overload]
    assert take(record(FIRST, SECOND), job(*everything)).entries == ()


LATE = one_round("step hose", ("casing", "", "2031-01-01 08:00"))
ODD = one_round("step hose", ("hose", "so so", "2026-03-02 19:00"))
ASKS_NOTHING = one_round("step hose", ("casing", "fine", "2026-03-02 19:00"))
NO_STEP = one_round("step hose", ("hoose", "below", "2026-03-02 19:00"))
NO_DAY = one_round("step hose", ("casing", "", "2026-02-30 19:00"))
NO_CAUSE = one_round("cause rust", ("casing", "", "2026-03-02 19:00"))
OTHER = "ffffffffffff"

REFUSED = {
    "another machine": (record(FIRST, machine="plough"), REVISION, "made on `plough`"),
    "a procedure nobody has": (record(FIRST, walk="no-prim"), "", "did you mean `no-prime`?"),
    "a procedure with errors": (record(FIRST, walk="bad"), "", "has errors: mend them first"),
    "a step nobody has": (record(NO_STEP), REVISION, "no step `hoose`; did you mean `hose`?"),
    "and of another revision": (record(NO_STEP), OTHER, "no step `hoose`"),
    "a cause nobody has": (record(NO_CAUSE), REVISION, "no cause `rust`"),
    "an answer nobody can give": (record(ODD), REVISION, "no answer `so so`"),
    "an answer to no question": (record(ASKS_NOTHING), REVISION, "no answer `fine`"),
    "a day nobody has": (record(NO_DAY), REVISION, "no such day"),
}


@pytest.mark.parametrize(("walk", "revision", "said"), REFUSED.values(), ids=REFUSED)
def test_what_cannot_be_taken_in_is_told(walk: WalkRecord, revision: str, said: str) -> None:
    """In a sentence that names it."""
    refusals = take(walk, revision=revision).refusals
    assert len(refusals) == 1
    assert said in refusals[0]


NOTED = {
    "no machine": (record(FIRST).model_copy(update={"machine": None}), REVISION, ["taken for"]),
    "another revision": (record(FIRST), OTHER, ["changed since"]),
    "and an answer that was reworded": (record(ODD), OTHER, ["changed since", "kept as a note"]),
    "a clock that is ahead": (record(LATE), REVISION, ["clock was ahead"]),
}


@pytest.mark.parametrize(("walk", "revision", "said"), NOTED.values(), ids=NOTED)
def test_what_is_odd_is_noted_and_taken_in(
    walk: WalkRecord, revision: str, said: list[str]
) -> None:
    """Nothing is lost because a word was changed since."""
    taken = take(walk, revision=revision)
    assert taken.refusals == ()
    assert taken.entries
    assert [words in note for words, note in zip(said, taken.notes, strict=True)] == [True] * len(
        said
    )


def test_an_answer_that_was_reworded_is_kept_and_not_taken_twice() -> None:
    """As a note, for no answer of today's is meant; a second time it is in the log already."""
    taken = take(record(ODD), revision=OTHER)
    entry = plain(taken.entries[0])
    assert entry == {
        "date": "2026-03-02 19:00",
        "procedure": "no-prime",
        "step": "hose",
        "note": "Answered at the time: so so",
    }
    again = take(record(ODD), job(entry), OTHER)
    assert (again.entries, again.skipped, again.notes) == (
        (),
        1,
        ("`no-prime` was changed since this walk",),
    )


DATES = ("2026-03-01", "2026-03-02 19:00", "2026-03-02 20:00", "2026-03-04")
PLACES = {
    "before all": ("2026-02-28", 0),
    "the same day": ("2026-03-01", 1),
    "a minute of a day without one": ("2026-03-01 23:59", 1),
    "the same minute": ("2026-03-02 19:00", 2),
    "between": ("2026-03-02 19:30", 2),
    "a day without a minute goes behind all of its own": ("2026-03-02", 3),
    "after all": ("2026-03-05 07:00", 4),
}


@pytest.mark.parametrize(("date", "place"), PLACES.values(), ids=PLACES)
def test_an_entry_stands_where_its_date_belongs(date: str, place: int) -> None:
    """Behind the last one that is not later."""
    log = [Entry(date=each) for each in DATES]
    assert places_in(log, [date]) == [place]


def test_the_first_entry_of_all() -> None:
    """An empty log has one place."""
    assert places_in([], ["2026-03-01"]) == [0]
