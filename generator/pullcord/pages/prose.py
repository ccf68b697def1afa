"""Text from a file, cut into paragraphs. It is data: nothing in it is ever read as markup."""

from __future__ import annotations

import re


def paragraphs(text: str | None) -> tuple[str, ...]:
    """Return the paragraphs of a text, which blank lines part; none for no text."""
    return tuple(part.strip() for part in re.split(r"\n\s*\n", text or "") if part.strip())


def plain(name: str) -> str:
    """Return a name as words: `capacitor-discharge` is `capacitor discharge`."""
    return name.replace("-", " ")
