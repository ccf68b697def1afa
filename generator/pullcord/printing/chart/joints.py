"""How the strips of a chart hang together: drawn arrows within one, lettered connectors between.

Connectors are those of ISO 5807: a circle with a letter where an arrow leaves off, and the same
letter where it goes on, each saying which sheet its partner is on if that is another one.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from pullcord.printing.chart.row_size import LANES
from pullcord.printing.chart.rows import Row
from pullcord.printing.chart.strips import StripSheet

_LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"
"""Without I and O, which look like figures in a greasy hand's writing."""


@dataclass(frozen=True)
class Joints:
    """What joins the rows of a chart. Rows are spoken of by their positions."""

    place: Mapping[str, int]
    """Each row's position, by its node."""
    lanes: Mapping[tuple[int, int], int]
    """Ways drawn as an arrow beside the rows they pass, each with its lane."""
    letters: Mapping[int, str]
    """The letter of each row that a connector leads to."""
    sheets: Sequence[int]
    """Each row's sheet, counted from 1."""
    sources: Mapping[int, tuple[int, ...]]
    """The other sheets from which a connector leads to a row."""


def join(rows: Sequence[Row], sheets: Sequence[StripSheet]) -> Joints:
    """Return how the rows are joined when they stand in these strips."""
    place = {row.node.id: position for position, row in enumerate(rows)}
    ways = [(place[tail], place[head]) for tail, head in _ways(rows, place)]
    strips = [strip for sheet in sheets for strip in sheet.strips]
    strip_of = [number for number, (first, end) in enumerate(strips) for _ in range(first, end)]
    numbers = [n for n, sheet in enumerate(sheets, 1) for _ in range(*sheet.run)]
    below = {(at, at + 1) for at in range(len(rows)) if rows[at].down}
    inside = [way for way in ways if strip_of[way[0]] == strip_of[way[1]] and way not in below]
    lanes = _lanes(inside)
    cut = [
        way
        for way in ways
        if way not in lanes and not (way in below and strip_of[way[0]] == strip_of[way[1]])
    ]
    heads = list(dict.fromkeys(head for _, head in cut))
    return Joints(
        place=place,
        lanes=lanes,
        letters={head: letter(number) for number, head in enumerate(heads)},
        sheets=numbers,
        sources={
            head: tuple(
                sorted({numbers[t] for t, h in cut if h == head and numbers[t] != numbers[head]})
            )
            for head in heads
        },
    )


def letter(number: int) -> str:
    """Return the letter of the connector with a number: A to Z without I and O, then AA, AB."""
    number += 1
    letters = ""
    while number:
        number, rest = divmod(number - 1, len(_LETTERS))
        letters = _LETTERS[rest] + letters
    return letters


def _ways(rows: Sequence[Row], place: Mapping[str, int]) -> Iterator[tuple[str, str]]:
    """Yield every way from row to row, in the order in which they are read."""
    for row in rows:
        if row.down:
            yield row.node.id, row.down.head
        for aside in row.asides:
            if aside.edge.head in place:
                yield row.node.id, aside.edge.head


def _lanes(ways: Sequence[tuple[int, int]]) -> dict[tuple[int, int], int]:
    """Return a lane for each way that finds one; ways to the same row share theirs.

    The shortest choose first and take the innermost lane, so that arrows seldom cross.
    """
    spans = {head: min(tail for tail, h in ways if h == head) for _, head in ways}
    taken: list[list[tuple[int, int]]] = [[] for _ in range(LANES)]
    lane_of: dict[int, int] = {}
    for head, tail in sorted(spans.items(), key=lambda span: (span[0] - span[1], span[0])):
        free = (n for n, held in enumerate(taken) if all(tail >= h or head <= t for t, h in held))
        lane = next(free, None)
        if lane is not None:
            taken[lane].append((tail, head))
            lane_of[head] = lane
    return {way: lane_of[way[1]] for way in ways if way[1] in lane_of}
