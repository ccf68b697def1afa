"""A finding as a person reads it at a terminal: where, what, the line itself, how to mend it."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from enum import StrEnum

from pullcord.finding import Finding
from pullcord.source.decode import UNSEEN

_WIDTH = 100
_CONTROL = re.compile(f"{UNSEEN.pattern}|[\t\n\r]")


class Role(StrEnum):
    """What a piece of a line is, for whoever gives each its colour."""

    PLACE = "place"
    ERROR = "error"
    WARNING = "warning"
    RULE = "rule"
    CARET = "caret"
    LABEL = "label"
    PLAIN = "plain"


Line = tuple[tuple[Role, str], ...]
"""Pieces of one line, in order; put together they are what is read."""


def show_finding(finding: Finding, raw: bytes = b"") -> str:
    """Return a finding's lines; with the file's bytes, the line it points at and a caret."""
    return "\n".join("".join(text for _, text in line) for line in finding_lines(finding, raw))


def finding_lines(finding: Finding, raw: bytes = b"") -> Iterator[Line]:
    """Yield the lines of a finding, in which nothing can move a terminal's cursor."""
    first, *more = finding.message.splitlines() or [""]
    place = f"{finding.file}:{finding.line}:{finding.column}"
    yield (
        (Role.PLACE, f"{safe(place)}: "),
        (Role(finding.severity.value), f"{finding.severity}: "),
        (Role.PLAIN, f"{safe(first)} "),
        (Role.RULE, f"[{safe(finding.rule)}]"),
    )
    yield from (((Role.PLAIN, safe(f"    {line}")),) for line in more)
    yield from _pointed_at(finding, raw)
    if finding.mend:
        yield labelled("mend", finding.mend)


def labelled(label: str, text: str) -> Line:
    """Return an indented line that begins with what it is."""
    return (Role.LABEL, f"  {label}: "), (Role.PLAIN, safe(text))


def count_findings(findings: Iterable[Finding]) -> str:
    """Return how many errors and warnings there are in how many files."""
    found = tuple(findings)
    errors = sum(finding.severity == "error" for finding in found)
    files = len({finding.file for finding in found})
    counts = {"error": errors, "warning": len(found) - errors}
    parts = [_plural(count, kind) for kind, count in counts.items() if count]
    return f"{', '.join(parts)} in {_plural(files, 'file')}"


def safe(text: str) -> str:
    """Return text that cannot move a terminal's cursor; every character keeps its width."""
    return _CONTROL.sub(lambda found: " " if found.group() == "\t" else "\ufffd", text)


def _pointed_at(finding: Finding, raw: bytes) -> Iterator[Line]:
    text = raw.decode("utf-8", "replace").removeprefix("\ufeff")
    lines = text.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    line = lines[finding.line - 1] if finding.line <= len(lines) else ""
    if not line.strip() or raw.startswith((b"\xff\xfe", b"\xfe\xff")):
        return
    caret = min(finding.column - 1, len(line))
    start = max(0, caret - _WIDTH * 2 // 3) if len(line) > _WIDTH else 0
    ahead = "…" if start else ""
    behind = "…" if len(line) > start + _WIDTH else ""
    yield ((Role.PLAIN, safe(ahead + line[start : start + _WIDTH] + behind)),)
    yield ((Role.CARET, " " * (caret - start + len(ahead)) + "^"),)


def _plural(number: int, word: str) -> str:
    return f"{number} {word}" if number == 1 else f"{number} {word}s"
