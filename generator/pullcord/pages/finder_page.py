"""The page that leads from what one sees, hears, smells or feels to the procedures.

Without scripts it is a list: every sign with the procedures that have it. A script makes buttons of
the signs; everything it reckons with stands in the list.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from pullcord.analysis.finder import SENSES, Index, Sign, index_signs
from pullcord.model.procedure import Library
from pullcord.pages.address import FINDER, PROCEDURES, link, procedure_uri
from pullcord.pages.groups import Groups, in_order
from pullcord.pages.imprint import Imprint, imprint
from pullcord.pages.kit import Kit, render
from pullcord.pages.need import ReadProject
from pullcord.pages.page import Heading, Page, PageLink
from pullcord.safety.urgent import is_urgent


@dataclass(frozen=True)
class SignView:
    """One sign with where it leads."""

    id: str
    words: str
    weight: int
    names: str
    """The procedures that have it, parted by spaces: what a script reckons with."""
    ways: tuple[PageLink, ...]


@dataclass(frozen=True)
class SenseView:
    """All signs of one sense."""

    id: str
    title: str
    signs: tuple[SignView, ...]


@dataclass(frozen=True)
class FoundView:
    """A procedure as one that may be found."""

    name: str
    title: str
    symptom: str
    href: str
    is_urgent: bool


@dataclass(frozen=True)
class FinderView:
    """The page, decided."""

    senses: tuple[SenseView, ...]
    procedures: tuple[FoundView, ...]
    """In the order in which those that fit equally well stand; the urgent ones first."""
    list_link: str
    imprint: Imprint


def has_finder(library: Library) -> bool:
    """Say whether any procedure has a sign."""
    return bool(index_signs(library.procedures.values()).signs)


def finder_page(kit: Kit, project: ReadProject, groups: Groups) -> Page:
    """Return the page of all signs."""
    library = project.library
    index = index_signs(library.procedures[name] for name in in_order(groups))
    view = FinderView(
        senses=tuple(_senses(kit, library, index)),
        procedures=tuple(_found(library, name) for name in index.procedures),
        list_link=link(FINDER, PROCEDURES),
        imprint=imprint(kit),
    )
    headings = tuple(Heading(sense.id, sense.title, 2) for sense in view.senses)
    html = render(kit, "finder", view)
    return Page(FINDER, kit.words["finder_title"], html, headings, in_nav=True)


def sign_ids(signs: Iterable[Sign]) -> Iterator[str]:
    """Yield an address for each sign: its sense and its words, told apart where they are alike."""
    met: dict[str, int] = {}
    for sign in signs:
        id_ = "-".join([sign.sense, *re.findall(r"[a-z0-9]+", sign.words.casefold())])
        met[id_] = met.get(id_, 0) + 1
        yield id_ if met[id_] == 1 else f"{id_}-{met[id_]}"


def _senses(kit: Kit, library: Library, index: Index) -> Iterator[SenseView]:
    ids = dict(zip(index.signs, sign_ids(index.signs), strict=True))
    for sense in SENSES:
        signs = tuple(
            _sign(library, sign, ids[sign]) for sign in index.signs if sign.sense == sense
        )
        if signs:
            yield SenseView(f"by-{sense}", kit.words[f"finder_{sense}"], signs)


def _sign(library: Library, sign: Sign, id_: str) -> SignView:
    return SignView(
        id=id_,
        words=sign.words,
        weight=sign.weight,
        names=" ".join(sign.procedures),
        ways=tuple(
            PageLink(library.procedures[name].title, "", link(FINDER, procedure_uri(name)))
            for name in sign.procedures
        ),
    )


def _found(library: Library, name: str) -> FoundView:
    procedure = library.procedures[name]
    return FoundView(
        name=name,
        title=procedure.title,
        symptom=procedure.symptom,
        href=link(FINDER, procedure_uri(name)),
        is_urgent=is_urgent(procedure),
    )
