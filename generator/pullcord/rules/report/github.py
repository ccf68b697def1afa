"""Findings as workflow commands, which GitHub Actions shows beside the line they speak of.

The form is that of "Workflow commands for GitHub Actions" (its section on setting an error
message); the escapes are those of GitHub's own toolkit: `%`, carriage return and line feed
everywhere, `:` and `,` in properties too.
"""

from __future__ import annotations

from collections.abc import Mapping

from pullcord.finding import Finding
from pullcord.rules.report.made import Report, whole_message
from pullcord.rules.show import safe

_IN_DATA = {"%": "%25", "\r": "%0D", "\n": "%0A"}
_IN_PROPERTY = {**_IN_DATA, ":": "%3A", ",": "%2C"}


def github_report(report: Report) -> str:
    """Return one command a line; what a file allows is not shown."""
    return "\n".join(map(_command, report.findings))


def _command(finding: Finding) -> str:
    properties = {
        "file": finding.file,
        "line": str(finding.line),
        "col": str(finding.column),
        "title": finding.rule,
    }
    said = ",".join(f"{key}={_escaped(text, _IN_PROPERTY)}" for key, text in properties.items())
    return f"::{finding.severity} {said}::{_escaped(whole_message(finding), _IN_DATA)}"


def _escaped(text: str, escapes: Mapping[str, str]) -> str:
    lines = (safe(line) for line in text.split("\n"))
    return "".join(escapes.get(character, character) for character in "\n".join(lines))
