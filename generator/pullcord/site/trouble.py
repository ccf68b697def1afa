"""What is wrong, as a plain box on top of a previewed page."""

from __future__ import annotations

import re
from collections.abc import Iterator
from html import escape
from pathlib import Path

from pullcord.errors import FindingsError, PullcordError
from pullcord.finding import Finding
from pullcord.rules.show import count_findings, safe, show_finding
from pullcord.source.files import read_file

_BOX = (
    "margin:0 0 1.5rem;padding:1rem;border:4px solid #b00020;background:#fff;color:#000;"
    "font:16px/1.5 sans-serif;color-scheme:light"
)
_LINES = "margin:0.5rem 0 0;overflow-x:auto;white-space:pre;font:15px/1.4 monospace;color:#000"
_BELOW = (
    "What stands below is the site as it last was. Mend the file and save it: this page follows "
    "by itself."
)
_PLACES = (re.compile(rb"<article\b[^>]*>"), re.compile(rb"<body\b[^>]*>"))
"""Where the box goes: on top of the text, else on top of the page."""


def trouble_box(error: PullcordError) -> str:
    """Return finished HTML that says what is wrong and where, with a caret below the word."""
    title, text = _told(error)
    return (
        f'<div role="alert" data-search-exclude style="{_BOX}"><strong>{escape(title)}</strong> '
        f'{escape(_BELOW)}<pre style="{_LINES}">{escape(text)}</pre></div>'
    )


def put_on_top(html: bytes, box: str) -> bytes:
    """Return a page with the box on top of what it says."""
    for place in _PLACES:
        if found := place.search(html):
            return html[: found.end()] + box.encode() + html[found.end() :]
    return box.encode() + html


def _told(error: PullcordError) -> tuple[str, str]:
    if not isinstance(error, FindingsError):
        return "The site cannot be built.", "\n".join(map(safe, str(error).splitlines()))
    count = count_findings(error.findings)
    return f"The site cannot be built: {count}.", "\n\n".join(_lines(error.findings))


def _lines(findings: tuple[Finding, ...]) -> Iterator[str]:
    for finding in findings:
        path = Path(finding.file)
        raw = read_file(path, path.parent)
        yield show_finding(finding, raw if isinstance(raw, bytes) else b"")
