"""A file's bytes as a record of the model, with all that is wrong with it."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import PurePath
from typing import Any, Generic, TypeVar

from pullcord.finding import Finding, Flaw, Place
from pullcord.model.base import Record, name_of
from pullcord.model.job import Job
from pullcord.model.machine import Machine
from pullcord.model.meter import MeterSheet
from pullcord.model.parse import parse_record
from pullcord.model.procedure import Library, Procedure
from pullcord.model.shared import Filled, Pieces, Shared, fill_in, gather_pieces
from pullcord.model.stage import StageList
from pullcord.rules.severity import severity_of
from pullcord.source.flaw import Mark, TextFlaw
from pullcord.source.tree import find_mark, read_data, read_tree

Model = TypeVar("Model", bound=Record)
_NAMING_KEYS: Mapping[str, type[Record]] = {
    "job": Job,
    "stages": StageList,
    "shared": Shared,
    "machine": Machine,
}
"""A job names its machine too: the first key of these that a file has decides."""
_LINE = rb"(?:\A(?:\xef\xbb\xbf)?|[\r\n])%b:"
"""How a key of the first level begins: a byte order mark may stand before the first line."""

NOTHING_SHARED = Pieces()


@dataclass(frozen=True)
class Document(Generic[Model]):
    """One file as far as it could be read."""

    file: str
    """The path as the author would type it."""
    raw: bytes
    record: Model | None
    """None when something is wrong that keeps it from being understood."""
    text_flaws: tuple[TextFlaw, ...]
    flaws: tuple[Flaw, ...]
    """Found while parsing; each names its rule."""
    data: Mapping[str, Any] | None = None
    """Of a shared file: its plain data, which procedures are filled in from."""
    shares: str = ""
    """Of a procedure: the text of everything it was filled in from."""


def model_of(raw: bytes) -> type[Record]:
    """Return what a file holds, told by the key that names it; a procedure when it has none."""
    return next((model for key, model in _NAMING_KEYS.items() if _begins(raw, key)), Procedure)


def read_document(
    file: str, raw: bytes, model: type[Model], pieces: Pieces = NOTHING_SHARED
) -> Document[Model]:
    """Read one file. Never raises: whatever is wrong is in the document."""
    tree = read_data(raw)
    if not isinstance(tree.data, Mapping):
        return Document(file, raw, None, tree.flaws, ())
    filled = fill_in(tree.data, pieces) if model is Procedure else Filled(tree.data, (), ())
    record = parse_record(model, filled.data)
    if isinstance(record, tuple) or filled.flaws:
        flaws = record if isinstance(record, tuple) else ()
        spoilt = {*tree.spoilt, *(flaw.at[:-1] for flaw in filled.flaws)}
        news = (flaw for flaw in flaws if not _is_known(flaw, spoilt))
        return Document(file, raw, None, tree.flaws, (*filled.flaws, *news))
    return Document(
        file,
        raw,
        None if tree.spoilt else record,
        tree.flaws,
        (),
        tree.data if model is Shared else None,
        "".join(repr(pieces.of(kind)[name]) for kind, name in filled.used),
    )


def _begins(raw: bytes, key: str) -> bool:
    """Whether a line begins with a key; the search for a line's beginning is the slow part."""
    name = key.encode()
    return b"%b:" % name in raw and re.search(_LINE % name, raw) is not None


def read_pieces(shared: Iterable[Document[Shared]]) -> Pieces:
    """Return what procedures may be filled in from: the shared files that could be read."""
    return gather_pieces(each.data for each in shared if each.record and each.data)


def build_library(
    procedures: Sequence[Document[Procedure]],
    machines: Sequence[Document[Machine]] = (),
    meter: MeterSheet | None = None,
    stages: Sequence[Document[StageList]] = (),
    jobs: Sequence[Document[Job]] = (),
) -> Library:
    """Return what could be read as one library; of two with the same name, the first.

    Of several lists of stages the last one counts: a project's own takes the place of the shipped.
    """
    return Library(
        procedures=dict(sorted(_named(procedures).items())),
        unread=tuple(sorted(PurePath(each.file).stem for each in procedures if not each.record)),
        machines=dict(sorted(_named(machines).items())),
        meter=meter or MeterSheet(),
        stages=next((each.record.stage for each in reversed(stages) if each.record), {}),
        jobs=dict(sorted(_named(jobs).items())),
    )


def locate(document: Document[Any], flaws: Iterable[Flaw]) -> tuple[Finding, ...]:
    """Return everything wrong with a document as findings: its own flaws and those given.

    Places are looked up by reading the file once more: most files have nothing wrong with them,
    and remembering where everything stands costs more memory than the procedures themselves.
    """
    found = [_finding(document, flaw.mark, flaw) for flaw in document.text_flaws]
    in_tree = (*document.flaws, *flaws)
    tree = read_tree(document.raw) if in_tree else None
    found += [_finding(document, find_mark(tree, flaw), flaw) for flaw in in_tree if tree]
    return tuple(found)


def _named(documents: Sequence[Document[Model]]) -> dict[str, Model]:
    records = [each.record for each in reversed(documents) if each.record]
    return {name_of(record)[1]: record for record in records}


def _finding(document: Document[Any], mark: Mark, flaw: TextFlaw | Flaw) -> Finding:
    return Finding(
        file=document.file,
        line=mark.line,
        column=mark.column,
        rule=flaw.rule,
        severity=severity_of(flaw.rule),
        message=flaw.message,
        mend=flaw.mend,
    )


def _is_known(flaw: Flaw, spoilt: Iterable[Place]) -> bool:
    """Whether a flaw only says that something is missing which reading has left out."""
    return any(
        flaw.at[: len(place)] == place or (flaw.rule == "missing-key" and flaw.at == place[:-1])
        for place in spoilt
    )
