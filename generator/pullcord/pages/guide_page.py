"""The short guide: how to read the other pages. Its tables come from what the pages use."""

from __future__ import annotations

from dataclasses import dataclass

from pullcord.pages.address import GUIDE
from pullcord.pages.caution import BoxView, SignView, box_views, sign_views
from pullcord.pages.imprint import Imprint, imprint
from pullcord.pages.kit import Kit, render
from pullcord.pages.odds import LEVELS, say_percent
from pullcord.pages.page import Heading, Page
from pullcord.safety.box import Box, SignalWord


@dataclass(frozen=True)
class SignalView:
    """A signal word with what it means."""

    box: BoxView
    meaning: str


@dataclass(frozen=True)
class OddsView:
    """A word for how likely a cause is, with the shares it stands for."""

    word: str
    shares: str


@dataclass(frozen=True)
class SectionView:
    """One section of the guide; at most one of its tables is filled."""

    id: str
    title: str
    text: tuple[str, ...]
    signals: tuple[SignalView, ...]
    signs: tuple[SignView, ...]
    odds: tuple[OddsView, ...]


@dataclass(frozen=True)
class GuideView:
    """The guide page, decided."""

    sections: tuple[SectionView, ...]
    signs: tuple[SignView, ...]
    imprint: Imprint


def guide_page(kit: Kit) -> Page:
    """Return the page that says how to read the others."""
    sections = tuple(_section(kit, id_) for id_ in kit.guide)
    headings = tuple(Heading(section.id, section.title, 2) for section in sections)
    html = render(kit, "guide", GuideView(sections, sign_views(kit, kit.signs), imprint(kit)))
    return Page(GUIDE, kit.words["guide_title"], html, headings, in_nav=True)


def _section(kit: Kit, id_: str) -> SectionView:
    section = kit.guide[id_]
    return SectionView(
        id=id_,
        title=section.title,
        text=section.text,
        signals=_signals(kit) if section.shows == "signal-words" else (),
        signs=sign_views(kit, kit.signs) if section.shows == "signs" else (),
        odds=_odds(kit) if section.shows == "odds" else (),
    )


def _signals(kit: Kit) -> tuple[SignalView, ...]:
    boxes = tuple(Box(signal, ()) for signal in SignalWord)
    return tuple(
        SignalView(view, kit.words[f"signal_{view.level}_means"]) for view in box_views(kit, boxes)
    )


def _odds(kit: Kit) -> tuple[OddsView, ...]:
    uppers = (1.0, *(least for least, _ in LEVELS))
    return tuple(
        OddsView(
            kit.words[key],
            kit.words["odds_between"].format(least=say_percent(least), most=say_percent(upper)),
        )
        for (least, key), upper in zip(LEVELS, uppers, strict=False)
    )
