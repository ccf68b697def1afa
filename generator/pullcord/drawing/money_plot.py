"""Money as a bar against the most it may cost. Plain geometry, told apart without colour."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from pullcord.drawing.plot import (
    LINE_PX,
    TYPE_PX,
    Plot,
    Rect,
    Stroke,
    Written,
    hatch,
    width_of,
    wrapped,
    write,
)

WIDTH_PX = 640.0
BAR_PX = 40.0
HATCH_PX = 10.0
AIR = 1.04
"""Of the longest amount, so that its end is seen."""


@dataclass(frozen=True)
class MoneyWords:
    """What is written on the drawing, and said in its stead."""

    title: str
    summary: str
    most: str
    """Names the limit, with its amount."""
    spent: str
    expected: str
    spread: str
    """Names the line from the low to the high total."""


@dataclass(frozen=True)
class Amounts:
    """What is drawn. All in the shop's own money; totals count what is spent already."""

    most: Decimal
    spent: Decimal
    expected_total: Decimal
    low_total: Decimal
    high_total: Decimal


def plot_money(amounts: Amounts, words: MoneyWords, id_: str) -> Plot:
    """Return the bar: spent in full, what is likely still to come hatched, the limit across it."""
    longest = max(amounts.most, amounts.high_total, amounts.expected_total, Decimal(1))
    px = (WIDTH_PX - 4) / (float(longest) * AIR)
    top = LINE_PX + 8
    spent = Rect("spent", 2, top, float(amounts.spent) * px, BAR_PX)
    to_come = float(amounts.expected_total - amounts.spent) * px
    expected = Rect("expected", 2 + spent.width, top, max(to_come, 0.0), BAR_PX)
    limit = 2 + float(amounts.most) * px
    key = list(_key(amounts, words, top + BAR_PX + 34))
    return Plot(
        id=id_,
        title=words.title,
        summary=words.summary,
        width=WIDTH_PX,
        height=max(text.y for text in key) + TYPE_PX * 0.6,
        rects=(Rect("trough", 2, top, limit - 2, BAR_PX), spent, expected,
               *_swatches(key)),
        strokes=(*hatch(expected, HATCH_PX), *_key_hatch(key), *_spread(amounts, px, top),
                 *_key_spread(key), Stroke("most", limit, top - 7, limit, top + BAR_PX + 7)),
        marks=(),
        texts=(_limit_text(words, limit), *key),
    )  # fmt: skip


def _limit_text(words: MoneyWords, limit: float) -> Written:
    half = width_of(words.most, "bold") / 2
    x = min(max(limit, half), WIDTH_PX - half)
    return write(words.most, x, TYPE_PX, at=0.5, weight="bold", role="unit")


def _spread(amounts: Amounts, px: float, top: float) -> Iterator[Stroke]:
    if amounts.low_total < amounts.high_total:
        left, right = 2 + float(amounts.low_total) * px, 2 + float(amounts.high_total) * px
        yield from _whisker(left, right, top + BAR_PX / 2)


def _whisker(left: float, right: float, y: float) -> Iterator[Stroke]:
    for role in ("halo", "bar"):
        yield Stroke(role, left, y, right, y)
        for x in (left, right):
            yield Stroke(role, x, y - 8, x, y + 8)


def _key(amounts: Amounts, words: MoneyWords, top: float) -> Iterator[Written]:
    said = {"spent": words.spent, "expected": words.expected}
    if amounts.low_total < amounts.high_total:
        said["spread"] = words.spread
    places = wrapped([38 + width_of(each) for each in said.values()], WIDTH_PX, 24)
    for (role, each), (x, row) in zip(said.items(), places, strict=True):
        yield write(each, x + 36, top + row * (LINE_PX + 5), role=f"key-{role}")


def _box(text: Written) -> tuple[float, float]:
    return text.x - 34, text.y - TYPE_PX * 0.9


def _swatches(key: list[Written]) -> Iterator[Rect]:
    for text in key:
        if text.role != "key-spread":
            x, y = _box(text)
            yield Rect(text.role.removeprefix("key-"), x, y, 26, 18)


def _key_hatch(key: list[Written]) -> Iterator[Stroke]:
    for swatch in _swatches(key):
        if swatch.role == "expected":
            yield from hatch(swatch, HATCH_PX)


def _key_spread(key: list[Written]) -> Iterator[Stroke]:
    for text in key:
        if text.role == "key-spread":
            x, y = _box(text)
            yield from _whisker(x, x + 26, y + 9)
