"""A comparison as JSON, in a form of our own: see the guide, "Reviewing a change"."""

from __future__ import annotations

import json
from collections.abc import Iterable

from pullcord.analysis.diff import Change, Difference

FORMAT = 1
"""Counts up when an older reader could no longer read it."""


def diff_json(differences: Iterable[Difference]) -> str:
    """Return the comparison as indented JSON, pure ASCII."""
    told = [
        {
            "kind": each.kind,
            "name": each.name,
            "old-name": each.old_name or each.name,
            "title": each.title,
            "state": each.state,
            "changes": [_change(change) for change in each.changes],
        }
        for each in differences
    ]
    return json.dumps({"format": FORMAT, "differences": told}, indent=2)


def _change(change: Change) -> dict[str, str]:
    return {
        "part": change.part.value,
        "at": change.at,
        "what": change.what,
        "detail": change.detail,
        "old": change.old,
        "new": change.new,
    }
