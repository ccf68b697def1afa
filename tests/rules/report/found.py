"""Findings for the tests of every form."""

from __future__ import annotations

from pullcord.finding import Finding, Severity
from pullcord.rules.allowance import Allowed
from pullcord.rules.report.made import Report

ERROR = Finding(
    "procedures/no-prime.yaml",
    19,
    7,
    "unknown-target",
    Severity.ERROR,
    "there is no cause called `air-leek`",
    "did you mean `air-leak`?",
)
AGAIN = Finding("procedures/no-prime.yaml", 23, 7, "unknown-target", Severity.ERROR, "nor `x`", "")
WARNING = Finding(
    "/yard/a b,é:1%.yaml", 1, 1, "unused-tool", Severity.WARNING, "two\nlines", "m\x1b"
)
REPORT = Report((WARNING, ERROR, AGAIN), (Allowed(WARNING, "it hangs by the pump"),), "0.1.0")
