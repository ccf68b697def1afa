"""The map of the library: which procedure may lead to which, and what they share."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import networkx as nx
from markupsafe import Markup

from pullcord.analysis.pieces import UsedPiece, used_pieces
from pullcord.drawing.draw import ChartSettings
from pullcord.drawing.map import MapBox, MapWords, draw_map, map_chart
from pullcord.graph import library_graph
from pullcord.model.procedure import Library
from pullcord.pages.address import MAP, anchor, link, procedure_uri
from pullcord.pages.groups import URGENT, Groups, NameGroup
from pullcord.pages.imprint import Imprint, imprint
from pullcord.pages.kit import Kit, render
from pullcord.pages.need import ReadProject
from pullcord.pages.page import Heading, Page, PageLink
from pullcord.safety.urgent import word_at_sight


@dataclass(frozen=True)
class Spot:
    """One procedure of the list below the drawing."""

    title: str
    href: str
    leads_to: tuple[PageLink, ...]
    """All it may hand over to, also what has no arrow of its own in the drawing."""


@dataclass(frozen=True)
class SpotGroup:
    """Procedures that stand together."""

    id: str
    title: str
    spots: tuple[Spot, ...]


@dataclass(frozen=True)
class PieceView:
    """A shared step or cause with where it is used."""

    title: str
    uses: tuple[PageLink, ...]


@dataclass(frozen=True)
class PieceGroup:
    """Shared things of a kind."""

    id: str
    title: str
    pieces: tuple[PieceView, ...]


@dataclass(frozen=True)
class MapView:
    """The page, decided."""

    count: str
    svg: Markup
    groups: tuple[SpotGroup, ...]
    pieces: tuple[PieceGroup, ...]
    imprint: Imprint


def map_page(kit: Kit, project: ReadProject, groups: Groups) -> Page:
    """Return the page of the map. Raises LayoutError when it cannot be laid out."""
    library = project.library
    graph = library_graph(library)
    view = MapView(
        count=kit.words["map_count"].format(
            procedures=len(library.procedures), hand_overs=graph.number_of_edges()
        ),
        svg=_drawn(kit, library, groups, graph),
        groups=tuple(_spots(library, group, graph) for group in groups),
        pieces=tuple(_pieces(kit, library)),
        imprint=imprint(kit),
    )
    return Page(MAP, kit.words["map_title"], render(kit, "map", view), tuple(_headings(kit, view)))


def _drawn(kit: Kit, library: Library, groups: Groups, graph: nx.DiGraph) -> Markup:
    boxes = {name: _box(library, name, group) for group in groups for name in group.names}
    words = MapWords(kit.words["map_title"], kit.words["map_summary"])
    settings = ChartSettings(
        engine=kit.settings.layout_engine,
        cache_folder=kit.settings.cache_folder,
        template_dirs=kit.settings.template_dirs,
    )
    svg, _ = draw_map(map_chart(boxes, graph, words), settings)
    return Markup(svg)  # noqa: S704 (escaped by the drawing's own template)


def _box(library: Library, name: str, group: NameGroup) -> MapBox:
    procedure = library.procedures[name]
    is_urgent = group.id == URGENT
    return MapBox(
        title=procedure.title,
        purpose=group.stage,
        href=link(MAP, procedure_uri(name)),
        signal=word_at_sight(procedure) if is_urgent else None,
    )


def _spots(library: Library, group: NameGroup, graph: nx.DiGraph) -> SpotGroup:
    return SpotGroup(
        id=group.id,
        title=group.title,
        spots=tuple(
            Spot(
                title=library.procedures[name].title,
                href=link(MAP, procedure_uri(name)),
                leads_to=tuple(_links(library, graph.successors(name))),
            )
            for name in group.names
        ),
    )


def _links(library: Library, names: Iterator[str]) -> Iterator[PageLink]:
    for name in names:
        if name in library.procedures:
            title = library.procedures[name].title
            yield PageLink(title, "", link(MAP, procedure_uri(name)))


def _pieces(kit: Kit, library: Library) -> Iterator[PieceGroup]:
    used = used_pieces(library.procedures.values())
    for kind in ("step", "cause"):
        pieces = tuple(_piece(library, piece) for piece in used if piece.kind == kind)
        if pieces:
            yield PieceGroup(f"shared-{kind}s", kit.words[f"map_shared_{kind}s"], pieces)


def _piece(library: Library, piece: UsedPiece) -> PieceView:
    return PieceView(
        title=piece.title,
        uses=tuple(
            PageLink(
                library.procedures[name].title,
                "",
                link(MAP, procedure_uri(name), anchor(f"{piece.kind}:{own}")),
            )
            for name, own in piece.uses
        ),
    )


def _headings(kit: Kit, view: MapView) -> Iterator[Heading]:
    yield Heading("drawing", kit.words["map_drawing"], 2)
    below = tuple(Heading(group.id, group.title, 3) for group in view.groups)
    yield Heading("hand-overs", kit.words["map_list"], 2, below)
    yield from (Heading(group.id, group.title, 2) for group in view.pieces)
