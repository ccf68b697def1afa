"""What can be found."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True)
class Entry:
    """One place a search leads to: a page, a step or a cause."""

    href: str
    """From the site's root, such as `procedures/no-spark.html#step-plug`."""
    title: str
    """The page's, step's or cause's own title."""
    under: str
    """The page it stands on; empty for the page itself."""
    text: str
    """What else is searched; the hit shows its beginning."""
    words: Mapping[str, int] | None = None
    """How much each of its words counts, where that is known already."""
