"""The words of a comparison."""

from __future__ import annotations

from collections.abc import Mapping

from pullcord.pages.texts import Words, read_texts
from pullcord.source.places import site_templates


def read_diff_words() -> Mapping[str, str]:
    """Return the texts of `texts/diff.yaml`. Raises PullcordError when they do not fit."""
    words: Mapping[str, str] = read_texts((site_templates(),), "diff", Words)
    return words
