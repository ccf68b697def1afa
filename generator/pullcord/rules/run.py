"""All rules over all files: every finding once, sorted, at its line."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from functools import lru_cache
from itertools import islice
from typing import Any

from pullcord.finding import Finding, Flaw
from pullcord.graph import procedure_graph
from pullcord.model.base import Record
from pullcord.model.job import Job
from pullcord.model.machine import Machine
from pullcord.model.procedure import Library, Procedure
from pullcord.model.shared import Shared
from pullcord.model.stage import StageList
from pullcord.rules.allowance import Settled, settle
from pullcord.rules.catalogue import Rule, rules
from pullcord.rules.document import Document, locate
from pullcord.safety.flow import Same

MOST_OF_A_RULE = 50
"""In one file: nobody reads on, and a hostile file must not keep the checks busy."""

_NOT_OF_ONE_PROCEDURE = frozenset({"text", "allow", "machine", "library", "files", "job", "stages"})
"""Folders of rules; what is in any other is about one procedure."""

Named = tuple[str, Flaw]
"""A file, or the name of a procedure, and what is wrong with it."""


def check_library(
    procedures: Sequence[Document[Procedure]],
    library: Library,
    machines: Sequence[Document[Machine]] = (),
    stages: Sequence[Document[StageList]] = (),
    jobs: Sequence[Document[Job]] = (),
    shared: Sequence[Document[Shared]] = (),
) -> tuple[Finding, ...]:
    """Return every finding about these files that they do not allow: see `settle_library`."""
    return settle_library(procedures, library, machines, stages, jobs, shared).findings


def settle_library(
    procedures: Sequence[Document[Procedure]],
    library: Library,
    machines: Sequence[Document[Machine]] = (),
    stages: Sequence[Document[StageList]] = (),
    jobs: Sequence[Document[Job]] = (),
    shared: Sequence[Document[Shared]] = (),
) -> Settled:
    """Return every finding about these files and what they allow, by file, line and column.

    `library` is what could be read from them: see `document.build_library`.
    """
    flaws: dict[str, list[Flaw]] = defaultdict(list)
    documents: tuple[Document[Any], ...] = (
        *procedures,
        *machines,
        *stages,
        *jobs,
        *shared,
    )
    for file, flaw in _all_flaws(documents, library):
        flaws[file].append(flaw)
    settled = [settle(each, locate(each, flaws[each.file])) for each in documents]
    return Settled(
        tuple(sorted({finding for each in settled for finding in each.findings})),
        tuple(sorted({allowed for each in settled for allowed in each.allowed})),
    )


def check_procedure(procedure: Procedure, library: Library) -> Iterator[Flaw]:
    """Yield what every rule about one procedure finds, each flaw with its rule."""
    yield from _own_flaws(Same((procedure,)), _around(Same((library,))))
    for rule in _of_group("safety"):
        yield from _stamped(rule, _check(rule, procedure, library))


class _Around:
    """A library as rules see it that look at one procedure and follow no hand-over.

    Two are the same that hold the same machines, jobs and stages, the same meter, and procedures of
    the same names.
    """

    def __init__(self, library: Library) -> None:
        self.library = library
        self._held = Same(
            (*library.machines.values(), *library.jobs.values(), *library.stages.values())
        )
        self._told = (tuple(library.procedures), library.unread, repr(library.meter))
        self._hash = hash((self._held, self._told))

    def __hash__(self) -> int:
        return self._hash

    def __eq__(self, other: object) -> bool:
        return (
            isinstance(other, _Around) and self._held == other._held and self._told == other._told
        )


@lru_cache(maxsize=4)
def _around(key: Same) -> _Around:
    return _Around(*key.parts)


@lru_cache(maxsize=1024)  # A preview checks every file again after each change to one.
def _own_flaws(key: Same, around: _Around) -> tuple[Flaw, ...]:
    (procedure,) = key.parts
    given = {"graph": procedure_graph(procedure)}
    return tuple(
        flaw
        for rule in rules()
        if rule.group not in _NOT_OF_ONE_PROCEDURE and rule.group != "safety"
        for flaw in _stamped(rule, _check(rule, procedure, given.get(rule.group, around.library)))
    )


def check_machine(machine: Machine, library: Library) -> Iterator[Flaw]:
    """Yield what every rule about one machine sheet finds, each flaw with its rule."""
    for rule in _of_group("machine"):
        yield from _stamped(rule, _check(rule, machine, library))


def check_job(job: Job, library: Library) -> Iterator[Flaw]:
    """Yield what every rule about one job finds, each flaw with its rule."""
    for rule in _of_group("job"):
        yield from _stamped(rule, _check(rule, job, library))


def check_stages(stages: StageList, library: Library) -> Iterator[Flaw]:
    """Yield what every rule about a list of stages finds, each flaw with its rule."""
    for rule in _of_group("stages"):
        yield from _stamped(rule, _check(rule, stages, library))


_CHECKS: Mapping[type[Record], Callable[[Any, Library], Iterator[Flaw]]] = {
    Procedure: check_procedure,
    Machine: check_machine,
    Job: check_job,
    StageList: check_stages,
}


def _all_flaws(documents: Sequence[Document[Any]], library: Library) -> Iterator[Named]:
    records = {each.file: each.record for each in documents if each.record}
    for file, record in records.items():
        check = _CHECKS.get(type(record))
        yield from ((file, flaw) for flaw in (check(record, library) if check else ()))
    yield from _between_procedures(records, library)
    for rule in _of_group("files"):
        yield from _named(rule, records)


def _between_procedures(records: Mapping[str, Record], library: Library) -> Iterator[Named]:
    file_of = {
        record.procedure: file
        for file, record in reversed(list(records.items()))
        if isinstance(record, Procedure)
    }
    for rule in _of_group("library"):
        yield from ((file_of[name], flaw) for name, flaw in _named(rule, library))


def _of_group(group: str) -> Iterator[Rule]:
    return (rule for rule in rules() if rule.group == group)


def _check(rule: Rule, *given: Any) -> Iterable[Any]:
    return rule.check(*given) if rule.check else ()


def _stamped(rule: Rule, flaws: Iterable[Flaw]) -> Iterator[Flaw]:
    return (replace(flaw, rule=rule.id) for flaw in islice(flaws, MOST_OF_A_RULE))


def _named(rule: Rule, given: Library | Mapping[str, Record]) -> Iterator[Named]:
    counts: dict[str, int] = defaultdict(int)
    for name, flaw in _check(rule, given):
        counts[name] += 1
        if counts[name] <= MOST_OF_A_RULE:
            yield name, replace(flaw, rule=rule.id)
