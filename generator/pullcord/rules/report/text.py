"""Findings for a person at a terminal: what a rule is for is said once, at its first finding."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator

from pullcord.finding import Finding
from pullcord.rules.report.made import facts_of
from pullcord.rules.show import Line, Role, finding_lines, labelled

Paint = Callable[[Role, str], str]
"""Gives a piece of a line its colour."""


def text_report(findings: Iterable[tuple[Finding, bytes]], paint: Paint) -> Iterator[str]:
    """Yield every finding's lines, given with the bytes of its file."""
    said: set[str] = set()
    for finding, raw in findings:
        why = () if finding.rule in said else _why(finding.rule)
        said.add(finding.rule)
        for line in (*finding_lines(finding, raw), *why):
            yield "".join(paint(role, text) for role, text in line)


def _why(rule: str) -> Iterator[Line]:
    facts = facts_of(rule)
    if facts.why:
        yield labelled("why", facts.why)
    yield labelled("more", f"`pullcord explain {rule}`, or {facts.page} in the site")
