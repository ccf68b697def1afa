"""The page that tells a procedure's author what it costs; no mechanic's page leads there."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from markupsafe import Markup

from pullcord.analysis.review import Review, review
from pullcord.drawing.curve import CurveWords, Points, render_curve
from pullcord.model.procedure import Library, Procedure
from pullcord.pages.address import RULES, link, review_uri
from pullcord.pages.imprint import Imprint, imprint
from pullcord.pages.kit import Kit, render
from pullcord.pages.need import ReadProcedure, ReadProject
from pullcord.pages.page import Heading, Page, PageLink
from pullcord.pages.review import ReviewSection, review_sections
from pullcord.pages.review_guard import read_guard
from pullcord.pages.review_words import Namer, say_number, say_share

LOOKS = 500
"""How long a build searches for a quicker order; the command searches longer."""
TOLD = (0.25, 0.5, 0.75, 1.0)
"""The shares whose minutes are told beside the picture."""
NEARLY = 1e-9


@dataclass(frozen=True)
class ReviewView:
    """The page, decided."""

    title: str
    intro: str
    sections: tuple[ReviewSection, ...]
    curve_title: str
    curve: Markup
    curve_lines: tuple[str, ...]
    """What the picture shows, in words."""
    imprint: Imprint


def review_page(kit: Kit, library: Library, read: ReadProcedure, counts: Mapping[str, int]) -> Page:
    """Return the page of one procedure without error findings.

    `counts` are finished walks of this shop, by outcome.
    """
    words, procedure = kit.review, read.procedure
    found = review(procedure, counts, guard=read_guard(procedure), looks=LOOKS)
    sections = review_sections(Namer(procedure, library, words), found, kit.settings.currency)
    title = review_title(kit, procedure)
    best = _best(found)
    view = ReviewView(
        title=title,
        intro=words["intro"],
        sections=sections,
        curve_title=words["curve_title"],
        curve=_curve(words, found.cost.curve, best),
        curve_lines=tuple(_told(words, found.cost.curve, best)),
        imprint=imprint(kit),
    )
    headings = tuple(Heading(each.id, each.title, 2) for each in sections)
    headings += (Heading("curve", words["curve_title"], 2),)
    html = render(kit, "review", view)
    uri = review_uri(procedure.procedure)
    return Page(uri, title, html, headings, source=read.path, in_search=False)


def review_title(kit: Kit, procedure: Procedure) -> str:
    """Return the title of the page for a procedure's author."""
    return kit.review["title"].format(title=procedure.title)


def review_links(kit: Kit, project: ReadProject) -> tuple[PageLink, ...]:
    """Return a link to every review, for the page of the rules."""
    return tuple(
        PageLink(read.procedure.title, f"{name}.yaml", link(RULES, review_uri(name)))
        for name, read in project.files.items()
    )


def _best(found: Review) -> Points:
    """Return the curve of the quickest order, where it does the same job as the procedure."""
    return found.sure.curve if found.is_comparable else ()


def _curve(words: Mapping[str, str], written: Points, best: Points) -> Markup:
    said = CurveWords(
        title=" ".join(_told(words, written, best)),
        minutes=words["curve_minutes"],
        settled=words["curve_settled"],
        written=words["curve_written"],
        best=words["curve_quickest"],
    )
    return Markup(render_curve(written, best, said, "pc-curve"))  # noqa: S704 (escapes its words)


def _told(words: Mapping[str, str], written: Points, best: Points) -> list[str]:
    told = [words["curve_says"].format(written=_points(words, written))]
    return [*told, words["curve_best"].format(best=_points(words, best))] if best else told


def _points(words: Mapping[str, str], curve: Points) -> str:
    """Return after how many minutes a curve comes to each of a few shares."""
    told = []
    for share in TOLD:
        minutes = next((at for at, settled in curve if settled >= share - NEARLY), None)
        if minutes is not None:
            point = words["curve_point"]
            told.append(point.format(share=say_share(share), minutes=say_number(minutes)))
    return ", ".join(told)
