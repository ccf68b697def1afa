"""What has been proved so far, and what took a proof back.

The latest entry that says anything about a stage decides. It does not count while something is
fitted that the stage may not be proved with, and a stage is not proved before those it comes after.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace

from pullcord.analysis.job.evidence import Said, proving_procedures, said_of
from pullcord.analysis.job.given import Given
from pullcord.analysis.job.report import Proof, StageState
from pullcord.analysis.job.state import Standing, standings
from pullcord.analysis.job.words import listed, titles_of
from pullcord.model.stage import Stage
from pullcord.safety.vocabulary import CONDITIONS

Proved = Mapping[str, bool]
"""By stage: whether it is proved."""


@dataclass(frozen=True)
class _Heard:
    """What has been said about one stage so far."""

    said: Said | None = None
    """The latest that counts."""
    entry: int | None = None
    """The position of its entry; None for the job's own heading."""
    discounted: str = ""
    """A later proof that did not count, in words, and why."""
    was_proved: bool = False


@dataclass
class _Course:
    """How far the stages are, while the log is gone through."""

    heard: dict[str, _Heard]
    proved: dict[str, bool] = field(default_factory=dict)


def read_stages(given: Given) -> tuple[StageState, ...]:
    """Return how far every stage is, in the order of the list of stages."""
    stages = given.library.stages
    order = order_of(stages)
    course = _Course({name: _at_start(given, stage) for name, stage in stages.items()})
    standing = Standing()
    _settle(course, stages, order, standing)
    for note, standing in zip(given.notes, standings(given), strict=True):
        for name, stage in stages.items():
            said = said_of(given, name, stage, note)
            if said is not None:
                course.heard[name] = _hear(course.heard[name], said, note.place, stage, standing)
        _settle(course, stages, order, standing)
    told: dict[str, StageState] = {}
    for name in order:
        told[name] = _told(given, name, course, standing, told)
    return tuple(told[name] for name in stages)


def order_of(stages: Mapping[str, Stage]) -> tuple[str, ...]:
    """Return the stages' names, each behind those it comes after; a circle is cut open."""
    done: dict[str, None] = {}
    for name in stages:
        way, seen = [name], {name}
        while way:
            before = [each for each in stages[way[-1]].after if each in stages]
            waiting = [each for each in before if each not in done and each not in seen]
            if waiting:
                way.append(waiting[0])
                seen.add(waiting[0])
            else:
                done[way.pop()] = None
    return tuple(done)


def all_before(stages: Mapping[str, Stage], names: tuple[str, ...]) -> tuple[str, ...]:
    """Return the given stages and all that must be proved before them, in the list's order."""
    found: set[str] = set()
    waiting = list(names)
    while waiting:
        name = waiting.pop()
        if name not in found:
            found.add(name)
            waiting += stages[name].after if name in stages else ()
    known = [name for name in stages if name in found]
    return (*known, *sorted(found - set(known)))


def _at_start(given: Given, stage: Stage) -> _Heard:
    if any(evidence.job for evidence in stage.proved_by):
        return _Heard(Said(True, f"the machine was taken in on {given.job.taken_in}"))
    return _Heard()


def _hear(heard: _Heard, said: Said, place: int, stage: Stage, standing: Standing) -> _Heard:
    on = [each for each in stage.not_while if each in standing.at_proof]
    if said.is_proof and on:
        return replace(heard, discounted=f"{said.words}, but {_says(on)}, so it does not count")
    return replace(heard, said=said, entry=place, discounted="")


def _settle(
    course: _Course, stages: Mapping[str, Stage], order: tuple[str, ...], standing: Standing
) -> None:
    course.proved = {}
    for name in order:
        stage, heard = stages[name], course.heard[name]
        course.proved[name] = (
            heard.said is not None
            and heard.said.is_proof
            and standing.state.isdisjoint(stage.not_while)
            and all(course.proved.get(before, False) for before in stage.after)
        )
        if course.proved[name]:
            course.heard[name] = replace(heard, was_proved=True)


def _told(
    given: Given,
    name: str,
    course: _Course,
    standing: Standing,
    told: Mapping[str, StageState],
) -> StageState:
    stage, heard = given.library.stages[name], course.heard[name]
    proof: Proof = "taken back" if heard.was_proved else "not yet"
    if course.proved[name]:
        proof = "proved"
    why, entry = _reason(given, stage, heard, standing, told)
    if heard.said and proof == "proved":
        why, entry = heard.said.words, heard.entry
    since = given.notes[entry].day if entry is not None else None
    if since is None and proof == "proved":
        since = given.job.taken_in
    return StageState(name, stage, proof, since, entry, _sentence(why))


def _reason(
    given: Given,
    stage: Stage,
    heard: _Heard,
    standing: Standing,
    told: Mapping[str, StageState],
) -> tuple[str, int | None]:
    """Return why a stage is not proved, and the entry that decided it."""
    if heard.discounted:
        return heard.discounted, heard.entry
    if heard.said is None:
        return _nothing_said(given, stage, told), None
    if not heard.said.is_proof:
        return heard.said.words, heard.entry
    on = [each for each in stage.not_while if each in standing.state]
    if on:
        since = max(standing.since[each] for each in on)
        when = given.notes[since].day
        return f"{_says(on)}, on since {when}: until that is off, this is not proved", since
    lacking = [name for name in stage.after if name not in told or told[name].proof != "proved"]
    entries = [told[name].entry for name in lacking if name in told]
    decided = max((each for each in entries if each is not None), default=heard.entry)
    titles = titles_of(given, lacking)
    return f"{heard.said.words}, but {titles} must be shown as well before it counts", decided


def _nothing_said(given: Given, stage: Stage, told: Mapping[str, StageState]) -> str:
    lacking = [name for name in stage.after if name not in told or told[name].proof != "proved"]
    if lacking:
        return f"it waits for {titles_of(given, lacking)}"
    known = given.library.procedures
    names = dict.fromkeys((*proving_procedures(stage), *stage.looked_for_in))
    looked = [f"“{known[name].title}”" for name in names if name in known]
    if looked:
        return f"nothing has proved it yet: go through {listed(looked)}"
    return "nothing has proved it yet: when it has been shown, write so in the log"


def _says(conditions: Sequence[str]) -> str:
    return listed([CONDITIONS[each].says for each in conditions])


def _sentence(words: str) -> str:
    return f"{words[:1].upper()}{words[1:]}."
