"""Why two builds do not go together, in words."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from pullcord.site.shards.stamp import TEXTS, Stamp, differences

STAMP = Stamp(
    {"pullcord": "1.0"}, "2026-03-01", "abc", {"procedures": "1", "docs": "2", TEXTS: "3"}
)


def test_the_same_goes_together() -> None:
    """Nothing is said."""
    assert list(differences(STAMP, replace(STAMP))) == []


@pytest.mark.parametrize(
    ("change", "said"),
    [
        ({"versions": {"pullcord": "1.1"}}, "pullcord 1.0 and 1.1: install the same one"),
        ({"versions": {}}, "pullcord 1.0 and unknown: install the same one"),
        ({"day": "2026-03-02"}, "the days 2026-03-01 and 2026-03-02"),
        ({"revision": ""}, "the revisions abc and none: check out the same one"),
        ({"sources": {**STAMP.sources, "docs": "9"}}, "files that differ in `docs`"),
        ({"sources": {**STAMP.sources, "jobs": "9"}}, "files that differ in `jobs`"),
        ({"sources": {**STAMP.sources, TEXTS: "9"}}, "files that differ in `templates and texts`"),
    ],
    ids=["version", "package", "day", "revision", "file", "folder", "texts"],
)
def test_what_differs_is_named(change: dict[str, Any], said: str) -> None:
    """One line each, with how to mend it."""
    (line,) = differences(STAMP, replace(STAMP, **change))
    assert line.startswith(said)
