"""Findings in the forms a person or a program reads: one form a file, each a pure function.

Every form says the same: place, severity, rule, what is wrong, why it matters, how to mend it.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

from pullcord.rules.report.github import github_report
from pullcord.rules.report.json_ import json_report
from pullcord.rules.report.made import Report
from pullcord.rules.report.sarif import sarif_report

FORMATS: Mapping[str, Callable[[Report], str]] = {
    "json": json_report,
    "sarif": sarif_report,
    "github": github_report,
}
"""What a program reads, by name; what a person reads is in `text.py`."""
