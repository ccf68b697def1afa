"""Rows stacked into strips, and strips side by side on sheets.

Rows stay in their order. A sheet holds a run of them in at most a given number of strips, none
higher than the sheet has room for. Of all such divisions the one with the fewest sheets is taken,
then the one whose sheets are joined by the fewest connectors, and within each sheet the fewest
strips, then the fewest connectors.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import accumulate, pairwise

from pullcord.printing.chart.row_size import SizedRow, above_px, bottom_px, top_px
from pullcord.printing.chart.split import Order, Run, split_order

Room = Callable[[Run], float]
"""How high a strip may be, in px, on the sheet that holds a run of rows."""


@dataclass(frozen=True)
class Stack:
    """Rows one below the other, with all that is needed to measure any run of them."""

    rows: tuple[SizedRow, ...]
    order: Order
    ends_px: tuple[float, ...]
    """How far down each row ends when all stand in one strip, from the first row's top."""

    def height_px(self, run: Run) -> float:
        """Return the height of a strip that holds the run, with its connectors."""
        first, end = run
        head = top_px(self.rows[first]) + self.rows[first].height_px
        return head + self.ends_px[end - 1] - self.ends_px[first] + bottom_px(self.rows[end - 1])


@dataclass(frozen=True)
class StripSheet:
    """The strips of one sheet, from the left."""

    strips: tuple[Run, ...]

    @property
    def run(self) -> Run:
        """All rows of the sheet."""
        return self.strips[0][0], self.strips[-1][1]


def stack_rows(rows: Sequence[SizedRow], order: Order) -> Stack:
    """Return the rows as a stack."""
    steps = [rows[0].height_px] if rows else []
    steps += [above_px(above, row) + row.height_px for above, row in pairwise(rows)]
    return Stack(tuple(rows), order, tuple(accumulate(steps)))


def divide(stack: Stack, strips: int, room: Room) -> tuple[StripSheet, ...]:
    """Return the sheets. Raises NoRoomError when a row alone is higher than its sheet's room.

    The room must not shrink when rows are taken off a run.
    """
    place = {node: position for position, node in enumerate(stack.order.nodes)}

    def fits(nodes: tuple[str, ...]) -> bool:
        run = place[nodes[0]], place[nodes[-1]] + 1
        return _reach(stack, run, strips, room(run)) == run[1]

    sheets = split_order(stack.order, fits)
    runs = [(place[nodes[0]], place[nodes[-1]] + 1) for nodes in sheets]
    return tuple(StripSheet(tuple(_strips(stack, run, room(run)))) for run in runs)


def _reach(stack: Stack, run: Run, strips: int, height_px: float) -> int:
    """Return how far the run gets when each strip takes all it can."""
    at, end = run
    for _ in range(strips):
        first = at
        while at < end and stack.height_px((first, at + 1)) <= height_px:
            at += 1
    return at


def _strips(stack: Stack, run: Run, height_px: float) -> Iterator[Run]:
    first, end = run
    order = Order(
        stack.order.nodes[first:end],
        tuple(tail - first for tail in stack.order.earliest_tail[first:end]),
    )

    def fits(nodes: tuple[str, ...]) -> bool:
        at = order.nodes.index(nodes[0])
        part = first + at, first + at + len(nodes)
        return _reach(stack, part, 1, height_px) == part[1]

    for nodes in split_order(order, fits):
        yield first, first + len(nodes)
        first += len(nodes)
