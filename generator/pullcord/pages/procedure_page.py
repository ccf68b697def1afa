"""The page of one procedure: everything before the first step, every step, every remedy."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from markupsafe import Markup

from pullcord.model.procedure import Procedure
from pullcord.model.target import Target
from pullcord.pages.address import GUIDE, anchor, link, machine_uri, procedure_uri
from pullcord.pages.before import (
    ToolView,
    hazards_met,
    say_fits,
    say_time,
    things_ready,
    things_worn,
    tool_views,
)
from pullcord.pages.caution import BoxView, SignView, sign_views
from pullcord.pages.chart import ChartView
from pullcord.pages.files import file_links
from pullcord.pages.imprint import Imprint, imprint
from pullcord.pages.kit import Kit, render
from pullcord.pages.need import ReadProcedure
from pullcord.pages.odds import other_share, say_share, shares
from pullcord.pages.page import Heading, Page, PageLink
from pullcord.pages.prose import paragraphs
from pullcord.pages.standing import Standing
from pullcord.pages.step import render_cause, render_step
from pullcord.pages.way import Signposts, Way, reached_from
from pullcord.safety.notes import SafetyNotes


@dataclass(frozen=True)
class CauseLine:
    """A cause in the list of what it may turn out to be."""

    way: Way
    odds: str
    odds_from: str


@dataclass(frozen=True)
class ProcedureView:
    """The whole page, decided."""

    title: str
    machine: str
    """What the shed calls the machine the page is for; empty on the general page."""
    versions: tuple[PageLink, ...]
    """The same procedure for each machine; on a machine's page its sheet and the general page."""
    versions_title: str
    files: tuple[PageLink, ...]
    """The same on paper, and in one file."""
    symptom: tuple[str, ...]
    also_said: tuple[str, ...]
    known_by: tuple[str, ...]
    """Its signs, a line for each sense."""
    alike: tuple[PageLink, ...]
    """What it is easily taken for, each with the signs they share."""
    about: tuple[str, ...]
    fits: tuple[str, ...]
    time: str
    standing_before: tuple[str, ...]
    before: tuple[tuple[str, ...], ...]
    hazards: tuple[BoxView, ...]
    ready: tuple[str, ...]
    wear: tuple[str, ...]
    tools: tuple[ToolView, ...]
    first: Way
    proves: str
    stages: tuple[str, ...]
    """The stages that a pass proves."""
    mistakes: tuple[tuple[str, ...], ...]
    causes: tuple[CauseLine, ...]
    other_odds: str
    """How often it is none of them; empty when nobody says."""
    odds_note: str
    chart: ChartView
    steps: tuple[Markup, ...]
    remedies: tuple[Markup, ...]
    done_from: tuple[Way, ...]
    walk_away: tuple[str, ...]
    home_link: str
    guide_link: str
    signs: tuple[SignView, ...]
    """The drawings its boxes show, put into the page once."""
    walk: Markup
    """What the scripts of the guided walk are told, as JSON."""
    imprint: Imprint


def procedure_page(
    kit: Kit, read: ReadProcedure, posts: Signposts, notes: SafetyNotes, chart: ChartView,
    walk: Markup, standing: Standing,
) -> Page:  # fmt: skip
    """Return the page of a procedure without error findings, with its cautions and its chart.

    `posts` say whether it is the general page or a machine's; `walk` is its `walk_json`; `standing`
    is its place in the library.
    """
    procedure, machine = posts.procedure, posts.subject.title
    return Page(
        src_uri=posts.uri,
        title=version_title(kit, procedure, machine),
        html=render(kit, "procedure", _view(kit, read.digest, posts, notes, chart, walk, standing)),
        headings=_headings(posts),
        source=read.path,
        in_search=not machine,
    )


def version_title(kit: Kit, procedure: Procedure, machine: str = "") -> str:
    """Return the title of a procedure's page: the general one, or that of a machine's title."""
    if not machine:
        return procedure.title
    return kit.words["machine_title"].format(title=procedure.title, machine=machine)


def _view(
    kit: Kit, digest: str, posts: Signposts, notes: SafetyNotes, chart: ChartView, walk: Markup,
    standing: Standing,
) -> ProcedureView:  # fmt: skip
    procedure, words = posts.procedure, kit.words
    return ProcedureView(
        title=procedure.title,
        machine=posts.subject.title,
        versions=_versions(posts),
        versions_title=kit.words["machine_more" if posts.subject.machine else "machine_choose"],
        files=tuple(file_links(posts)),
        symptom=paragraphs(procedure.symptom),
        also_said=procedure.also_said,
        known_by=tuple(
            words[f"signs_{sense}"].format(signs=" · ".join(signs))
            for sense, signs in standing.signs
        ),
        alike=tuple(_alike(posts, standing)),
        about=paragraphs(procedure.about),
        fits=say_fits(kit.words, procedure.fits),
        time=say_time(kit.words, procedure),
        standing_before=kit.standing.before,
        before=tuple(paragraphs(text) for text in procedure.before),
        hazards=hazards_met(kit, notes.before_start.hazards),
        ready=things_ready(kit, notes.before_start.ready),
        wear=things_worn(kit, notes.before_start.wear),
        tools=tool_views(procedure),
        first=posts.way(kit.words["start"], Target("step", procedure.start)),
        proves=procedure.proves or "",
        stages=tuple(words["proves_stage"].format(title=title) for title in standing.stages),
        mistakes=tuple(paragraphs(text) for text in procedure.mistakes),
        causes=_cause_lines(posts),
        other_odds=_other_odds(kit.words, procedure),
        odds_note=_odds_note(kit.words, procedure),
        chart=chart,
        steps=tuple(render_step(kit, posts, name, notes) for name in posts.order.steps),
        remedies=tuple(render_cause(kit, posts, name, notes) for name in posts.order.causes),
        done_from=reached_from(posts, "done"),
        walk_away=kit.standing.walk_away,
        home_link=link(posts.uri, kit.settings.home_uri),
        guide_link=link(posts.uri, GUIDE),
        signs=sign_views(kit, kit.signs),
        walk=walk,
        imprint=imprint(kit, digest, posts.subject.digest),
    )


def _versions(posts: Signposts) -> tuple[PageLink, ...]:
    own, name = posts.subject.machine, posts.procedure.procedure
    if own is None:
        return tuple(
            PageLink(each.title, "", link(posts.uri, procedure_uri(name, each.machine)))
            for each in posts.fitting
        )
    sheet = posts.words["machine_sheet"].format(machine=own.title)
    return (
        PageLink(sheet, "", link(posts.uri, machine_uri(own.machine))),
        PageLink(posts.words["machine_general"], "", link(posts.uri, procedure_uri(name))),
    )


def _alike(posts: Signposts, standing: Standing) -> Iterator[PageLink]:
    for other in standing.alike:
        href = link(posts.uri, procedure_uri(other.name))
        yield PageLink(other.title, " · ".join(other.shares), href)


def _cause_lines(posts: Signposts) -> tuple[CauseLine, ...]:
    share = shares(posts.procedure)
    return tuple(
        CauseLine(
            way=posts.way("", Target("cause", name)),
            odds=say_share(posts.words, share[name]) if name in share else "",
            odds_from=posts.procedure.causes[name].odds_from or "",
        )
        for name in posts.order.causes
    )


def _other_odds(words: Mapping[str, str], procedure: Procedure) -> str:
    share = other_share(procedure)
    return say_share(words, share) if share else ""


def _odds_note(words: Mapping[str, str], procedure: Procedure) -> str:
    given = len(shares(procedure))
    if given == 0:
        return words["odds_none"]
    return words["odds_some"] if given < len(procedure.causes) else words["odds_all"]


def _headings(posts: Signposts) -> tuple[Heading, ...]:
    steps = tuple(Target("step", name) for name in posts.order.steps)
    causes = tuple(Target("cause", name) for name in posts.order.causes)
    below = {"steps": steps, "remedies": causes}
    return tuple(
        Heading(
            id=id_,
            title=posts.words[f"{id_}_title"],
            level=2,
            children=tuple(_section_heading(posts, target) for target in below.get(id_, ())),
        )
        for id_ in ("before", "causes", "flowchart", "steps", "remedies", "done")
    )


def _section_heading(posts: Signposts, target: Target) -> Heading:
    title = f"{posts.number(target)} {posts.title(target)}"
    return Heading(anchor(target.node), title, level=3)
