"""Findings as JSON, in a form of our own: see the guide, "Findings for programs"."""

from __future__ import annotations

import json
from typing import Any

from pullcord.finding import Finding, Severity
from pullcord.rules.report.made import Report, facts_of

FORMAT = 1
"""Counts up when an older reader could no longer read it."""


def json_report(report: Report) -> str:
    """Return the report as indented JSON, pure ASCII."""
    errors = sum(each.severity is Severity.ERROR for each in report.findings)
    return json.dumps(
        {
            "format": FORMAT,
            "errors": errors,
            "warnings": len(report.findings) - errors,
            "findings": [_finding(each) for each in report.findings],
            "allowed": [
                {**_finding(each.finding), "reason": each.reason} for each in report.allowed
            ],
        },
        indent=2,
    )


def _finding(finding: Finding) -> dict[str, Any]:
    facts = facts_of(finding.rule)
    return {
        "file": finding.file,
        "line": finding.line,
        "column": finding.column,
        "severity": finding.severity.value,
        "rule": finding.rule,
        "message": finding.message,
        "mend": finding.mend,
        "why": facts.why,
        "page": facts.page,
    }
