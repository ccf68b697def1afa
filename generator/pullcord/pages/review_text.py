"""A review laid out for a terminal: plain lines, and tables whose columns stand in line."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from textwrap import TextWrapper

from pullcord.pages.review import ReviewSection
from pullcord.readings.tables import Table

WIDTH = 96
INDENT = "  "
MOST_IN_COLUMN = 44


def review_text(title: str, sections: Iterable[ReviewSection]) -> str:
    """Return the whole review as text."""
    lines = [title]
    for section in sections:
        lines += ["", section.title]
        if section.table is not None:
            lines += _table_lines(section.table)
        for line in section.lines:
            lines += _wrapped(line, 1)
    return "\n".join(lines)


def _table_lines(table: Table) -> Iterator[str]:
    """Yield the rows; a last column of many words stands below its row."""
    rows = (table.columns, *table.rows)
    has_long = any(len(row[-1]) > MOST_IN_COLUMN for row in rows)
    kept = [row[:-1] if has_long else row for row in rows]
    widths = [max(map(len, column)) for column in zip(*kept, strict=True)]
    for row, shown in zip(rows, kept, strict=True):
        cells = [cell.ljust(width) for cell, width in zip(shown, widths, strict=True)]
        yield (INDENT + INDENT.join(cells)).rstrip()
        if has_long:
            yield from _wrapped(row[-1], 3)


def _wrapped(text: str, depth: int) -> list[str]:
    return TextWrapper(
        WIDTH,
        initial_indent=INDENT * depth,
        subsequent_indent=INDENT * (depth + 1),
        break_on_hyphens=False,
        break_long_words=False,
    ).wrap(text)
