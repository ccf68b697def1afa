"""Findings as lines of text: file, line, column, what is wrong, which rule, how to mend it."""

from __future__ import annotations

from collections.abc import Iterable

from pullcord.finding import Finding, Severity


def render_finding(finding: Finding) -> str:
    """Return `file:line:column: message [rule]`, further lines and the mend indented below it."""
    first, *more = finding.message.splitlines()
    place = f"{finding.file}:{finding.line}:{finding.column}"
    mend = [f"mend: {finding.mend}"] if finding.mend else []
    lines = [f"{place}: {first} [{finding.rule}]", *(f"    {line}" for line in (*more, *mend))]
    return "\n".join(lines)


def render_findings(findings: Iterable[Finding]) -> str:
    """Return all of them under one heading that counts them."""
    rendered = [render_finding(finding) for finding in findings]
    count = "1 error" if len(rendered) == 1 else f"{len(rendered)} errors"
    return "\n".join([f"{count} in the procedures; the site stays as it was.", *rendered])


def of_severity(findings: Iterable[Finding], severity: Severity) -> tuple[Finding, ...]:
    """Return the findings of one severity, in their order."""
    return tuple(finding for finding in findings if finding.severity is severity)
