"""What a report is made from, and what every form of it says of a rule."""

from __future__ import annotations

import re
from dataclasses import dataclass

from pullcord.finding import Finding
from pullcord.rules.allowance import Allowed
from pullcord.rules.catalogue import rules

PAGE = "rules.html"
"""The page of all rules, as seen from the site's first page."""


@dataclass(frozen=True)
class Report:
    """Findings to be told, in order."""

    findings: tuple[Finding, ...]
    allowed: tuple[Allowed, ...] = ()
    """What the files themselves allow, each with its reason."""
    version: str = ""
    """Pullcord's own."""


@dataclass(frozen=True)
class RuleFacts:
    """A rule in two sentences."""

    title: str
    """What must hold."""
    why: str
    """The first sentence of why it matters."""
    page: str
    """Where its page is, as seen from the site's first page."""


def rule_anchor(rule: str) -> str:
    """Return the id of a rule's section on the page of all rules."""
    return f"rule-{rule}"


def facts_of(rule: str) -> RuleFacts:
    """Return what is said of a rule in short."""
    page = next((each.page for each in rules() if each.id == rule), "")
    title, _, text = page.partition("\n")
    return RuleFacts(title, first_sentence(text), f"{PAGE}#{rule_anchor(rule)}")


def first_sentence(text: str) -> str:
    """Return a text's first sentence on one line."""
    words = " ".join(text.split())
    found = re.match(r"(?:[^`]|`[^`]*`)*?[.!?](?=\s|$)", words)
    return found.group() if found else words


def whole_message(finding: Finding) -> str:
    """Return what is wrong and how to mend it, as lines."""
    mend = f"\nmend: {finding.mend}" if finding.mend else ""
    return f"{finding.message}{mend}"
