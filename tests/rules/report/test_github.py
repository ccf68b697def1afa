"""Findings as workflow commands.

The form and its escapes are those of "Workflow commands for GitHub Actions" and of the functions
`escapeData` and `escapeProperty` of GitHub's toolkit (`%25`, `%0D`, `%0A`; in properties `%3A` and
`%2C` as well).
"""

from __future__ import annotations

from pullcord.finding import Finding, Severity
from pullcord.rules.report.github import github_report
from pullcord.rules.report.made import Report
from tests.rules.report.found import ERROR, WARNING


def test_one_command_a_finding() -> None:
    """Place, rule and message, with what would mend it on a second line."""
    assert github_report(Report((ERROR,))) == (
        "::error file=procedures/no-prime.yaml,line=19,col=7,title=unknown-target::"
        "there is no cause called `air-leek`%0Amend: did you mean `air-leak`?"
    )


def test_nothing_breaks_out_of_its_place() -> None:
    """Percent, colon, comma and line breaks are escaped; a cursor is never moved."""
    assert github_report(Report((WARNING,))) == (
        "::warning file=/yard/a b%2Cé%3A1%25.yaml,line=1,col=1,title=unused-tool::"
        "two%0Alines%0Amend: m\ufffd"
    )
    hostile = Finding("a.yaml", 1, 1, "cycle", Severity.ERROR, "x\r\n::stop-commands::y 100%")
    (line,) = github_report(Report((hostile,))).splitlines()
    assert line.endswith("::x\ufffd%0A::stop-commands::y 100%25")


def test_nothing_found() -> None:
    """No command at all."""
    assert github_report(Report(())) == ""
