"""The errors Pullcord raises on purpose. The faces print them; nobody sees a traceback."""

from __future__ import annotations

from pullcord.finding import Finding


class PullcordError(Exception):
    """Base of all: its text is written for the person at the keyboard."""


class FindingsError(PullcordError):
    """The files cannot be built from; carries every finding, sorted."""

    def __init__(self, findings: tuple[Finding, ...]) -> None:
        """Keep the findings for whoever prints them."""
        super().__init__(f"{len(findings)} finding(s)")
        self.findings = findings


class LayoutError(PullcordError):
    """The layout engine is missing, hung, died or answered nonsense."""


class SiteError(PullcordError):
    """The site could not be built or put in its place; the last good one still stands."""
