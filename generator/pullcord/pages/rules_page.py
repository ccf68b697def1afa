"""The page of all rules: what is found, why it matters, and how it is mended."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from pullcord.pages.address import RULES
from pullcord.pages.imprint import Imprint, imprint
from pullcord.pages.keys.page import keys_links
from pullcord.pages.kit import Kit, render
from pullcord.pages.page import Heading, Page, PageLink
from pullcord.pages.prose import Piece, paragraphs, pieces
from pullcord.rules.catalogue import RuleDoc, documented_rules
from pullcord.rules.report.made import rule_anchor


@dataclass(frozen=True)
class ExampleView:
    """One file of an example."""

    file: str
    text: str


@dataclass(frozen=True)
class RuleView:
    """One rule, every word of it decided."""

    id: str
    name: str
    severity: str
    title: tuple[Piece, ...]
    text: tuple[tuple[Piece, ...], ...]
    failing: tuple[ExampleView, ...]
    mended: tuple[ExampleView, ...]


@dataclass(frozen=True)
class RulesView:
    """The page, decided."""

    rules: tuple[RuleView, ...]
    keys_title: str
    keys: tuple[PageLink, ...]
    """The pages that list every key of every file."""
    reviews_title: str
    reviews: tuple[PageLink, ...]
    """What each procedure costs, on a page for its author."""
    imprint: Imprint


def rules_page(kit: Kit, reviews: tuple[PageLink, ...] = ()) -> Page:
    """Return the page that lists every rule with a failing and a mended example, then reviews."""
    rules = tuple(_rule_view(kit.words, rule) for rule in documented_rules())
    headings = tuple(Heading(rule.id, rule.name, 2) for rule in rules)
    title = kit.review["index_title"]
    keys = keys_links(kit)
    keys_title = kit.words["keys_title"]
    headings += (Heading("keys", keys_title, 2),)
    if reviews:
        headings += (Heading("reviews", title, 2),)
    html = render(kit, "rules", RulesView(rules, keys_title, keys, title, reviews, imprint(kit)))
    return Page(RULES, kit.words["rules_title"], html, headings)


def _rule_view(words: Mapping[str, str], rule: RuleDoc) -> RuleView:
    return RuleView(
        id=rule_anchor(rule.id),
        name=rule.id,
        severity=words[f"rule_{rule.severity.value}"],
        title=pieces(rule.title),
        text=tuple(pieces(" ".join(part.split())) for part in paragraphs(rule.text)),
        failing=_examples(rule.failing),
        mended=_examples(rule.mended),
    )


def _examples(files: Mapping[str, str]) -> tuple[ExampleView, ...]:
    return tuple(ExampleView(file, text) for file, text in files.items())
