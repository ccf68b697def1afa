"""A rule's page, and the list of all rules, for a terminal."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from textwrap import fill, indent

from pullcord.rules.catalogue import RuleDoc, documented_rules
from pullcord.rules.report.made import PAGE, rule_anchor
from pullcord.rules.show import Line, Role

WIDTH = 88
KEYS_PAGE = "authors/keys/procedure.html"
"""The first of the pages that list every key, as seen from the site's first page."""
_INDENT = "    "


def rule_names() -> tuple[str, ...]:
    """Return every rule's identifier, sorted."""
    return tuple(doc.id for doc in documented_rules())


def rule_list() -> Iterator[Line]:
    """Yield one line for every rule: its identifier, how grave it is, and what must hold."""
    docs = documented_rules()
    width = max(len(doc.id) for doc in docs)
    for doc in docs:
        grave = f"{doc.severity:<7}"
        yield (
            (Role.RULE, doc.id.ljust(width)),
            (Role(doc.severity.value), f"  {grave}  "),
            (Role.PLAIN, doc.title),
        )


def rule_page(rule: str) -> Iterator[Line]:
    """Yield the page of a rule that is there: what must hold, why, and an example put right."""
    doc = next(each for each in documented_rules() if each.id == rule)
    yield ((Role.RULE, doc.id), (Role(doc.severity.value), f"  {doc.severity}"))
    yield ((Role.LABEL, doc.title),)
    for paragraph in _paragraphs(doc.text):
        yield ()
        yield from _plain(paragraph)
    yield from _example("Wrong", doc.failing)
    yield from _example("Mended", doc.mended)
    yield ()
    yield from _plain(_footer(doc))


def _footer(doc: RuleDoc) -> str:
    rule = f"In the site: {PAGE}#{rule_anchor(doc.id)}"
    return f"{rule}\nEvery key of every file: {KEYS_PAGE}"


def _paragraphs(text: str) -> Iterable[str]:
    return (
        fill(" ".join(part.split()), WIDTH, break_on_hyphens=False, break_long_words=False)
        for part in re.split(r"\n\s*\n", text)
        if part.strip()
    )


def _example(label: str, files: Mapping[str, str]) -> Iterator[Line]:
    for name, text in files.items():
        yield ()
        yield ((Role.LABEL, f"{label}: {name}"),)
        yield from _plain(indent(text, _INDENT))


def _plain(text: str) -> Iterator[Line]:
    return (((Role.PLAIN, line.rstrip()),) for line in text.split("\n"))
