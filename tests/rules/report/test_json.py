"""Findings for programs, in our own form."""

from __future__ import annotations

import json

from pullcord.rules.report.json_ import json_report
from pullcord.rules.report.made import Report
from tests.rules.report.found import REPORT


def test_everything_is_in_it() -> None:
    """Counts, every finding with its parts, and what was allowed with its reason."""
    read = json.loads(json_report(REPORT))
    assert (read["format"], read["errors"], read["warnings"]) == (1, 2, 1)
    assert read["findings"][1] == {
        "file": "procedures/no-prime.yaml",
        "line": 19,
        "column": 7,
        "severity": "error",
        "rule": "unknown-target",
        "message": "there is no cause called `air-leek`",
        "mend": "did you mean `air-leak`?",
        "why": "An answer that points to a name nobody defined is mostly a slip of the finger; on "
        "the page it would be a link to nowhere.",
        "page": "rules.html#rule-unknown-target",
    }
    assert [each["reason"] for each in read["allowed"]] == ["it hangs by the pump"]
    assert json_report(REPORT).isascii()


def test_nothing_found_is_said_too() -> None:
    """A program can tell a clean check from none."""
    read = json.loads(json_report(Report(())))
    assert read == {"format": 1, "errors": 0, "warnings": 0, "findings": [], "allowed": []}
