"""Findings a file allows, each with its reason: `# pullcord: allow RULE because REASON`.

Only a warning can be allowed, and none about safety: an error stops the build, and what may hurt
somebody is mended or the step is not written. A comment that allows nothing is a finding itself.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from typing import Any

from pullcord.finding import Finding, Severity
from pullcord.model.nearest import did_you_mean
from pullcord.rules.catalogue import Rule, rules
from pullcord.rules.document import Document
from pullcord.rules.severity import severity_of
from pullcord.source.flaw import MOST_FLAWS
from pullcord.source.remarks import Remark, read_remarks

FORM = "# pullcord: allow RULE because REASON"
_WRITE = f"write `{FORM}`, one rule a comment"
_ALLOW = re.compile(r"allow\s+(?P<rule>[^\s,]+)(?:\s+(?P<rest>.*))?", re.DOTALL)
_REASON = re.compile(r"because\b[\s:]*(?P<reason>.*)", re.DOTALL)


@dataclass(frozen=True, order=True)
class Allowed:
    """A finding that its file allows."""

    finding: Finding
    reason: str


@dataclass(frozen=True)
class Settled:
    """What is left of a file's findings, and what was allowed."""

    findings: tuple[Finding, ...]
    allowed: tuple[Allowed, ...] = ()


@dataclass(frozen=True)
class _Allow:
    remark: Remark
    rule: str
    reason: str


def settle(document: Document[Any], findings: Iterable[Finding]) -> Settled:
    """Return a file's findings without those it allows, and with those about its allowing."""
    found = tuple(findings)
    remarks = read_remarks(document.raw)[:MOST_FLAWS]
    if not remarks:
        return Settled(found)
    read = [_read(remark) for remark in remarks]
    allows = [each for each in read if isinstance(each, _Allow)]
    reasons = {finding: _reason(finding, allows) for finding in found}
    faults = [each for each in read if isinstance(each, _Fault)]
    if document.record is not None:
        faults += _unused(allows, found)
    return Settled(
        (
            *(finding for finding, reason in reasons.items() if reason is None),
            *(fault.at(document.file) for fault in faults),
            *(fault.at(document.file) for each in allows for fault in _without_reason(each)),
        ),
        tuple(
            Allowed(finding, reason) for finding, reason in reasons.items() if reason is not None
        ),
    )


@dataclass(frozen=True)
class _Fault:
    remark: Remark
    rule: str
    message: str
    mend: str

    def at(self, file: str) -> Finding:
        """Return it as a finding about the comment."""
        mark = self.remark.mark
        severity = severity_of(self.rule)
        return Finding(file, mark.line, mark.column, self.rule, severity, self.message, self.mend)


def _read(remark: Remark) -> _Allow | _Fault:
    """Return what a comment allows, or what is wrong with it."""
    found = _ALLOW.fullmatch(remark.text)
    if found is None:
        message = f"`{_short(remark.text)}` does not say what is allowed here"
        return _Fault(remark, "unreadable-allow", message, _WRITE)
    rule, rest = found["rule"].strip("`"), found["rest"] or ""
    known = {each.id: each for each in rules()}
    if rule not in known:
        message = f"there is no rule called `{_short(rule)}`"
        mend = did_you_mean(rule, known, "`pullcord explain` lists every rule")
        return _Fault(remark, "unknown-rule", message, mend)
    refusal = next((words for is_so, words in _REFUSALS if is_so(known[rule])), None)
    if refusal:
        message = f"`{rule}` {refusal} and cannot be allowed"
        mend = "mend what it finds, and delete this comment"
        return _Fault(remark, "refused-allow", message, mend)
    reason = _REASON.fullmatch(rest)
    return _Allow(remark, rule, reason["reason"].strip() if reason else "")


_REFUSALS: tuple[tuple[Callable[[Rule], bool], str], ...] = (
    (lambda rule: rule.is_safety, "is about safety"),
    (lambda rule: rule.group == "allow", "is about comments such as this one"),
    (lambda rule: severity_of(rule.id) is Severity.ERROR, "is an error"),
)


def _reason(finding: Finding, allows: Iterable[_Allow]) -> str | None:
    return next((each.reason for each in allows if _covers(each, finding)), None)


def _covers(allow: _Allow, finding: Finding) -> bool:
    return finding.rule == allow.rule and allow.remark.speaks_of(finding.line)


def _without_reason(allow: _Allow) -> Iterator[_Fault]:
    # It allows all the same: one slip, one finding, and this one is an error.
    if not allow.reason:
        message = f"this allows `{allow.rule}` without saying why"
        yield _Fault(allow.remark, "allow-without-reason", message, "add `because` and the reason")


def _unused(allows: Iterable[_Allow], found: tuple[Finding, ...]) -> Iterator[_Fault]:
    seen: set[Finding] = set()
    for each in allows:
        covered = {finding for finding in found if _covers(each, finding)} - seen
        seen |= covered
        if not covered and each.reason:
            message = f"`{each.rule}` finds nothing here, so there is nothing to allow"
            mend = "delete this comment, or put it on the line it is about or right above that"
            yield _Fault(each.remark, "unused-allow", message, mend)


def _short(text: str) -> str:
    return text if len(text) <= 60 else f"{text[:59]}…"
