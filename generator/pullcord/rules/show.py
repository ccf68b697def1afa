"""A finding as a person reads it at a terminal: where, what, the line itself, how to mend it."""

from __future__ import annotations

import re

from pullcord.finding import Finding
from pullcord.source.decode import UNSEEN

_WIDTH = 100
_CONTROL = re.compile(f"{UNSEEN.pattern}|[\t\n]")


def show_finding(finding: Finding, raw: bytes = b"") -> str:
    """Return a finding's lines; with the file's bytes, the line it points at and a caret."""
    first, *more = finding.message.splitlines() or [""]
    place = f"{finding.file}:{finding.line}:{finding.column}"
    return "\n".join(
        [
            _safe(f"{place}: {finding.severity}: {first} [{finding.rule}]"),
            *(_safe(f"    {line}") for line in more),
            *_pointed_at(finding, raw),
            *([_safe(f"  mend: {finding.mend}")] if finding.mend else []),
        ]
    )


def count_findings(findings: tuple[Finding, ...]) -> str:
    """Return how many errors and warnings there are in how many files."""
    errors = sum(finding.severity == "error" for finding in findings)
    files = len({finding.file for finding in findings})
    counts = {"error": errors, "warning": len(findings) - errors}
    parts = [_plural(count, kind) for kind, count in counts.items() if count]
    return f"{', '.join(parts)} in {_plural(files, 'file')}"


def _pointed_at(finding: Finding, raw: bytes) -> list[str]:
    text = raw.decode("utf-8", "replace").removeprefix("\ufeff")
    lines = text.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    line = lines[finding.line - 1] if finding.line <= len(lines) else ""
    if not line.strip() or raw.startswith((b"\xff\xfe", b"\xfe\xff")):
        return []
    caret = min(finding.column - 1, len(line))
    start = max(0, caret - _WIDTH * 2 // 3) if len(line) > _WIDTH else 0
    ahead = "…" if start else ""
    behind = "…" if len(line) > start + _WIDTH else ""
    shown = ahead + line[start : start + _WIDTH] + behind
    return [_safe(shown), " " * (caret - start + len(ahead)) + "^"]


def _safe(text: str) -> str:
    """Return text that cannot move a terminal's cursor; every character keeps its width."""
    return _CONTROL.sub(lambda found: " " if found.group() == "\t" else "\ufffd", text)


def _plural(number: int, word: str) -> str:
    return f"{number} {word}" if number == 1 else f"{number} {word}s"
