"""The pages of each procedure, made once and kept: general, for each machine, for its author."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from pullcord.analysis.job.counts import count_all_outcomes
from pullcord.drawing.cache import keep_value
from pullcord.model.procedure import Library
from pullcord.pages.chart import chart_views
from pullcord.pages.kit import Kit
from pullcord.pages.need import ReadProcedure, ReadProject
from pullcord.pages.order import reading_order
from pullcord.pages.page import PAGES, Page
from pullcord.pages.procedure_page import procedure_page
from pullcord.pages.review_page import review_page
from pullcord.pages.sight import review_key, seen_from, sight_key
from pullcord.pages.standing import Standing, standings
from pullcord.pages.subject import Subject
from pullcord.pages.walk_data import walk_data, walk_json
from pullcord.pages.walk_left import read_left
from pullcord.pages.way import Signposts
from pullcord.readings import is_fitting
from pullcord.safety.notes import SafetyNotes, safety_notes

Subjects = Mapping[str, Subject]
"""The general page's subject by the empty name, then every machine by its own."""


Counts = Mapping[str, Mapping[str, int]]
"""By procedure, how many finished walks of this shop ended where."""


def count_walks(project: ReadProject) -> Counts:
    """Return what this shop's own jobs have found."""
    return count_all_outcomes(project.library.jobs.values(), project.library)


def procedure_pages(
    kit: Kit, project: ReadProject, subjects: Subjects, counts: Counts
) -> Iterator[Page]:
    """Yield the general page of every procedure, each followed by those for machines it fits.

    Raises LayoutError when a flowchart cannot be laid out.
    """
    notes, places = safety_notes(project.library), standings(project.library)
    for name, read in project.files.items():
        seen = seen_from(read.procedure, project.library)
        fitting = [
            subject
            for subject in subjects.values()
            if subject.machine is None or is_fitting(read.procedure, subject.machine)
        ]
        found = counts.get(name, {})
        key = (
            "pages",
            repr(found),
            repr(places[name]),
            *sight_key(kit, seen, read, notes[name], fitting),
        )
        made = _versions(kit, seen, read, notes[name], fitting, found, places[name])
        yield from _kept(kit, key, read, made)


def review_pages(kit: Kit, project: ReadProject, counts: Counts) -> Iterator[Page]:
    """Yield the page for the author of every procedure."""
    for name, read in project.files.items():
        seen, found = seen_from(read.procedure, project.library), counts.get(name, {})
        key = ("review", repr(found), *review_key(kit, seen, read))
        yield from _kept(kit, key, read, _review(kit, seen, read, found))


def _kept(
    kit: Kit, key: Sequence[str], read: ReadProcedure, made: Iterator[Page]
) -> Iterator[Page]:
    """Yield what was kept for the key, else what is made; wherever the file lies now."""
    folder = kit.settings.cache_folder
    pages = keep_value(folder, key, PAGES, lambda: tuple(_nowhere(page) for page in made))
    return (replace(page, source=read.path) for page in pages)


def _nowhere(page: Page) -> Page:
    return replace(page, source=None, html=str(page.html))


def _review(
    kit: Kit, seen: Library, read: ReadProcedure, found: Mapping[str, int]
) -> Iterator[Page]:
    yield review_page(kit, seen, read, found)


def _versions(
    kit: Kit, seen: Library, read: ReadProcedure, notes: SafetyNotes, subjects: Sequence[Subject],
    found: Mapping[str, int], standing: Standing,
) -> Iterator[Page]:  # fmt: skip
    procedure, order = read.procedure, reading_order(read.procedure)
    posts = [Signposts(procedure, seen, order, kit.words, subject) for subject in subjects]
    charts = chart_views(kit, posts, notes.boxes)
    left = read_left(procedure, found)
    for each, chart in zip(posts, charts, strict=True):
        walk = walk_json(walk_data(kit, each, read.digest, left))
        yield procedure_page(kit, read, each, notes, chart, walk, standing)
