"""Findings as SARIF 2.1.0, the OASIS standard for results of checking files."""

from __future__ import annotations

import json
from typing import Any
from urllib.parse import quote

from pullcord.finding import Finding
from pullcord.rules.report.made import Report, facts_of, whole_message
from pullcord.rules.severity import severity_of

VERSION = "2.1.0"


def sarif_report(report: Report) -> str:
    """Return the report as one run of a SARIF log, as indented JSON, pure ASCII."""
    told: list[tuple[Finding, str | None]] = [(each, None) for each in report.findings]
    told += [(each.finding, each.reason) for each in report.allowed]
    named = sorted({finding.rule for finding, _ in told})
    driver: dict[str, Any] = {"name": "Pullcord", "rules": [_rule(rule) for rule in named]}
    if report.version:
        driver["version"] = report.version
    run = {
        "tool": {"driver": driver},
        # Section 3.14.17: what a column counts; ours are characters, as Python counts them.
        "columnKind": "unicodeCodePoints",
        "results": [_result(finding, reason, named) for finding, reason in told],
    }
    return json.dumps({"version": VERSION, "runs": [run]}, indent=2)


def _rule(rule: str) -> dict[str, Any]:
    facts = facts_of(rule)
    return {
        "id": rule,
        "shortDescription": {"text": facts.title},
        "help": {"text": f"{facts.why} `pullcord explain {rule}` says more."},
        "defaultConfiguration": {"level": severity_of(rule).value},
    }


def _result(finding: Finding, reason: str | None, named: list[str]) -> dict[str, Any]:
    result: dict[str, Any] = {
        "ruleId": finding.rule,
        "ruleIndex": named.index(finding.rule),
        "level": finding.severity.value,
        "message": {"text": whole_message(finding)},
        "locations": [
            {
                "physicalLocation": {
                    "artifactLocation": {"uri": _uri(finding.file)},
                    "region": {"startLine": finding.line, "startColumn": finding.column},
                }
            }
        ],
    }
    if reason is not None:
        result["suppressions"] = [{"kind": "inSource", "justification": reason}]
    return result


def _uri(file: str) -> str:
    """Return a path as a URI reference (RFC 3986)."""
    return f"file://{quote(file)}" if file.startswith("/") else quote(file)
