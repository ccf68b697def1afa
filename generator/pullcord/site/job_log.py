"""New entries in a job's log: worked out and checked in memory, then written in one go."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from pullcord.errors import FindingsError, PullcordError
from pullcord.finding import Finding, Severity
from pullcord.model.job import Job
from pullcord.model.parse import parse_record
from pullcord.model.taking import places_in, plain
from pullcord.project import Project, load_project
from pullcord.rules.document import locate, read_document
from pullcord.rules.run import check_job
from pullcord.site.find_job import JobPlace
from pullcord.site.meter import read_meter
from pullcord.source.append import NewItem, NoPlaceError, add_items
from pullcord.source.choice import SETTINGS, choose_around
from pullcord.source.item import Data
from pullcord.source.replace import replace_file
from pullcord.source.tree import Tree, read_tree

KEY = "log"

Maker = Callable[[Job], Sequence[Data]]
"""Makes the new entries, given the job as it stands when it is written."""


class EntryError(PullcordError):
    """The log would have errors with the new entries; nothing was written."""

    def __init__(self, findings: tuple[Finding, ...], raw: bytes) -> None:
        """Keep the findings with the bytes whose lines they name."""
        super().__init__("the log would have errors with the new entry")
        self.findings = findings
        self.raw = raw


@dataclass(frozen=True)
class Added:
    """What was written."""

    entries: tuple[Data, ...]
    is_amid: bool
    """Whether some of them stand before older ones that bear a later date."""
    warnings: tuple[Finding, ...]
    """What the new entries brought in that is odd but no error."""
    raw: bytes
    """The whole file, as it is now."""


@dataclass(frozen=True)
class OpenLog:
    """A log that may be added to, with everything it is checked against."""

    place: JobPlace
    project: Project


def open_log(place: JobPlace) -> OpenLog:
    """Read the project around a log. Raises PullcordError when it cannot be read."""
    choice = choose_around(place.project)
    meter = read_meter(choice.meter, choice.settings or place.project / SETTINGS)
    folders = (*choice.folders, place.folder)
    project = load_project(folders, meter=meter, replaces=choice.replaces, base=Path.cwd())
    return OpenLog(place, project)


def add_entries(log: OpenLog, make: Maker) -> Added:
    """Add the entries that `make` makes to a log, each where its date belongs.

    What `make` raises comes through. Raises FindingsError when the log has errors as it is,
    EntryError when it would have some with the new entries, NoPlaceError or WriteError when it
    cannot be written. The file then stays as it was.
    """
    done: list[Added] = []

    def change(old: bytes) -> bytes:
        job = _read_job(log, old)
        entries = tuple(make(job))
        dates = [str(plain(entry["date"])) for entry in entries]
        places = places_in(job.log, dates)
        items = [NewItem(*pair) for pair in zip(places, entries, strict=True)]
        new = add_items(old, KEY, items) if items else old
        said = {(each.rule, each.message) for each in _check(log, old)}
        found = tuple(each for each in _check(log, new) if (each.rule, each.message) not in said)
        if any(each.severity is Severity.ERROR for each in found):
            _raise_old(log, old)
            raise EntryError(found, new)
        if not _is_kept(read_tree(old), read_tree(new), items):
            raise NoPlaceError(
                "this file is written in a way that new entries cannot be put into by machine; "
                "put them in by hand"
            )
        is_amid = any(place < len(job.log) for place in places)
        done.append(Added(entries, is_amid, found, new))
        return new

    replace_file(log.place.path, log.place.folder, change)
    return done[0]


def _read_job(log: OpenLog, raw: bytes) -> Job:
    """Read a log whose list of entries may still be missing: `log:` with nothing behind it."""
    tree = read_tree(raw)
    is_begun = tree.spoilt == {(KEY,)} and len(tree.flaws) == 1
    if not isinstance(tree.data, Mapping) or (tree.flaws and not is_begun):
        _raise_old(log, raw)
    job = parse_record(Job, tree.data)
    if not isinstance(job, Job):
        raise FindingsError(_check(log, raw))
    return job


def _raise_old(log: OpenLog, raw: bytes) -> None:
    """Tell what is wrong with the log as it is, rather than with what would become of it."""
    found = _check(log, raw)
    if any(each.severity is Severity.ERROR for each in found):
        raise FindingsError(found)


def _check(log: OpenLog, raw: bytes) -> tuple[Finding, ...]:
    document = read_document(log.place.path.as_posix(), raw, Job)
    if document.record is None:
        return tuple(sorted(locate(document, ())))
    jobs = {**log.project.library.jobs, document.record.job: document.record}
    library = log.project.library.model_copy(update={"jobs": jobs})
    return tuple(sorted(locate(document, check_job(document.record, library))))


def _is_kept(old: Tree, new: Tree, items: Sequence[NewItem]) -> bool:
    """Whether the new data is the old with the new entries in their places, and nothing else."""
    if not items:
        return old.data == new.data
    if not isinstance(new.data, dict) or not isinstance(old.data, dict):
        return False
    entries = list(_ended(old.data.get(KEY, [])))
    ordered = sorted(items, key=lambda item: item.before)
    for position, item in enumerate(ordered):
        entries.insert(item.before + position, _ended(plain(item.data)))
    return bool(_ended(new.data) == {**_ended(old.data), KEY: entries})


def _ended(data: Any) -> Any:
    """Return data without line ends behind a text: the last line of a file may have had none."""
    if isinstance(data, dict):
        return {key: _ended(value) for key, value in data.items()}
    return [_ended(part) for part in data] if isinstance(data, list) else data.rstrip("\n")
