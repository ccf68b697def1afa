"""A small complete file to begin with: a procedure, a machine sheet, a job log."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path
from typing import Any

from jinja2 import Environment, FileSystemLoader, StrictUndefined

from pullcord.errors import PullcordError
from pullcord.finding import Finding, Flaw
from pullcord.model.base import NAME_PATTERN, Record, name_of
from pullcord.model.job import Job
from pullcord.model.machine import Machine
from pullcord.model.procedure import Library, Procedure
from pullcord.rules.document import locate, read_document
from pullcord.rules.run import check_job, check_machine, check_procedure
from pullcord.source.places import site_templates
from pullcord.source.scalar import write_value

_LONGEST = 48
_DEVICE = re.compile(r"(con|prn|aux|nul|com\d|lpt\d)")

_CHECKS: Mapping[type[Record], Callable[[Any, Library], Iterator[Flaw]]] = {
    Procedure: check_procedure,
    Machine: check_machine,
    Job: check_job,
}


class BeginError(PullcordError):
    """A file cannot be begun; nothing was written."""


class DraftError(BeginError):
    """What was answered does not make a sound file; carries what is wrong with it."""

    def __init__(self, findings: tuple[Finding, ...], raw: bytes) -> None:
        """Keep the findings with the bytes whose lines they name."""
        super().__init__("this would not make a sound file")
        self.findings = findings
        self.raw = raw


def check_name(name: str) -> None:
    """Raise BeginError when a file cannot bear this name, with the nearest one that it can."""
    if _DEVICE.fullmatch(name):
        raise BeginError(f"`{name}` is the name of a device on some computers: choose another")
    if not re.fullmatch(NAME_PATTERN, name) or len(name) > _LONGEST:
        near = as_name(name)
        raise BeginError(
            f"`{name[:60]}` cannot be a name: use small letters, digits and single hyphens, "
            f"{_LONGEST} at most"
            + (f", such as `{near}`" if near and not _DEVICE.fullmatch(near) else "")
        )


def as_name(words: str) -> str:
    """Return words as a name: `Water pump` is `water-pump`. Empty when they hold no letter."""
    bare = re.sub("[^a-z0-9]+", "-", words.lower()).lstrip("-0123456789")[:_LONGEST]
    return bare.strip("-")


def render_start(template: str, answers: Mapping[str, Any]) -> str:
    """Return one of the templates for beginning, filled in; text is written as YAML."""
    # Nothing here is HTML: `keyed` writes a text so that YAML reads it back as it was.
    environment = Environment(  # noqa: S701
        loader=FileSystemLoader(site_templates() / "begin"),
        undefined=StrictUndefined,
        keep_trailing_newline=True,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    environment.filters["keyed"] = _keyed
    return environment.get_template(f"{template}.j2").render(answers)


def check_draft(path: Path, raw: bytes, model: type[Record], library: Library) -> None:
    """Raise DraftError when a file would have findings, warnings included."""
    document = read_document(path.as_posix(), raw, model)
    record = document.record
    flaws = () if record is None else tuple(_CHECKS[model](record, _with(library, record)))
    found = tuple(sorted(locate(document, flaws)))
    if found:
        raise DraftError(found, raw)


def _with(library: Library, record: Record) -> Library:
    kind, name = name_of(record)
    known = getattr(library, f"{kind}s")
    return library.model_copy(update={f"{kind}s": {**known, name: record}})


def _keyed(text: str, key: str) -> str:
    first, *more = write_value(text.strip(), 0, len(key) + 2)
    return "\n".join([f"{key}: {first}", *more])
