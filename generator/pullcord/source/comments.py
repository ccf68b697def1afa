"""Text that YAML would silently take for a comment.

`do: Fit fuse #3 again` reads as `Fit fuse`. A comment behind a value must therefore look like one:
two spaces before the `#`, one behind it.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterator, Sequence
from itertools import islice

from pullcord.source.compose import Span
from pullcord.source.flaw import MOST_FLAWS, TextFlaw, mark_at

_HASH = re.compile(r"(?:^|[ \t])(#)(?P<lost>[^\n]*)", re.MULTILINE)
_MARGIN = re.compile("- *$")
_KEY = re.compile("[^ -].*$")


def lost_texts(text: str, spans: Sequence[Span]) -> tuple[TextFlaw, ...]:
    """Return a flaw for every comment that is likely to be meant as text.

    `spans` are the text's scalars, in order.
    """
    return tuple(islice(_lost(text, spans), MOST_FLAWS)) if "#" in text else ()


def comments_in(text: str, spans: Sequence[Span]) -> Iterator[tuple[int, str, Span]]:
    """Yield what YAML takes for a comment: where its `#` stands, what is behind it, and the
    scalar before it. `spans` are the text's scalars, in order.
    """
    position = 0
    while found := _HASH.search(text, position):
        index = found.start(1)
        nearest = bisect_right(spans, (index, len(text))) - 1
        span = spans[nearest] if nearest >= 0 else (0, 0)
        if _holds(text, span, index):
            position = index + 1
            continue
        position = found.end()
        yield index, found["lost"].strip(), span


def _lost(text: str, spans: Sequence[Span]) -> Iterator[TextFlaw]:
    for index, lost, span in comments_in(text, spans):
        if not _looks_like_comment(text, index, span):
            yield TextFlaw(
                mark_at(text, index),
                "lost-text",
                f"`#{lost[:60]}` would be taken for a comment and get lost",
                "put the whole value in double quotes; before a comment write two spaces and `# `",
            )


def _holds(text: str, span: Span, index: int) -> bool:
    """Whether the character belongs to the scalar; a block's text begins on its second line."""
    start, end = span
    if text[start : start + 1] in ("|", ">"):
        start = text.find("\n", start)
    return start <= index < end


def _is_plain(text: str, span: Span) -> bool:
    return span[0] < span[1] and text[span[0]] not in "|>'\""


def _looks_like_comment(text: str, index: int, span: Span) -> bool:
    spaced_after = text[index + 1 : index + 2] in ("", " ", "\n", "#")
    line_start = text.rfind("\n", 0, index) + 1
    before = text[line_start:index]
    if not before.strip():
        return spaced_after or not _goes_on(text, line_start, len(before), span)
    ends_plain = _is_plain(text, span) and span[1] == line_start + len(before.rstrip())
    return spaced_after and (before.endswith(("  ", "\t")) or not ends_plain)


def _goes_on(text: str, line_start: int, indent: int, span: Span) -> bool:
    """Whether a line of its own stands where one more line of the text above would stand."""
    start, end = span
    if not _is_plain(text, span) or text[end:line_start].strip():
        return False
    first_line = text.rfind("\n", 0, start) + 1
    margin = text[first_line:start]
    is_list_item = not margin.strip(" -")
    return indent > len(_MARGIN.sub("", margin) if is_list_item else _KEY.sub("", margin))
