"""How grave each rule is. An error stops the build; what is named here does not."""

from __future__ import annotations

from pullcord.finding import Severity

WARNINGS = frozenset(
    {
        "answer-against-reading",
        "bought-twice",
        "entry-says-nothing",
        "figure-without-source",
        "log-after-given-up",
        "log-before-taken-in",
        "log-out-of-order",
        "meter-cannot-tell",
        "never-begun",
        "no-signs",
        "not-on-sheet",
        "odds-without-source",
        "procedure-not-for-machine",
        "sheet-without-source",
        "sign-in-two-senses",
        "step-too-long",
        "unknown-probe",
        "unused-allow",
        "unused-piece",
        "unused-tool",
    }
)


def severity_of(rule: str) -> Severity:
    """Return the severity of a rule's findings."""
    return Severity.WARNING if rule in WARNINGS else Severity.ERROR
