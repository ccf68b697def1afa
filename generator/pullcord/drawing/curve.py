"""Where the time goes: the share of faults settled by each minute, as written and at best.

Drawn with ziaplot: pure Python, 1.2 MB with nothing it depends on, about 0.1 s to import, text kept
as text, no font or script fetched, the same bytes every time. Told apart by thickness and dashes,
so that it can be read in black and white.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from html import escape

import ziaplot as zp

WIDTH, HEIGHT = 640, 380
STYLE = "* {font: sans-serif;} Graph {color: white;}"
PERCENT_TICKS = (0, 25, 50, 75, 100)
WRITTEN_WIDTH, BEST_WIDTH = 3.5, 2

Points = Sequence[tuple[float, float]]
"""Minutes, and the share (0 to 1) settled by then, in rising order."""


@dataclass(frozen=True)
class CurveWords:
    """What is written on the picture."""

    title: str
    """Read aloud in the picture's stead."""
    minutes: str
    """Along the bottom."""
    settled: str
    """Along the side, in percent."""
    written: str
    """Names the curve of the procedure as written."""
    best: str
    """Names the curve of the quickest order."""


def render_curve(written: Points, best: Points, words: CurveWords, prefix: str) -> str:
    """Return the picture as an SVG element.

    The curve of the best order is left out when it has no points. `prefix` begins the ids, so that
    two pictures can stand on one page.
    """
    last = max((minutes for minutes, _ in (*written, *best)), default=0.0) or 1.0
    graph = zp.Graph().axesnames(words.minutes, words.settled)
    graph.size(WIDTH, HEIGHT).xrange(0, last).yrange(0, 100)
    graph.yticks(PERCENT_TICKS).css(STYLE)
    graph += _line(written, last).strokewidth(WRITTEN_WIDTH).name(words.written)
    if best:
        graph += _line(best, last).strokewidth(BEST_WIDTH).stroke("dashed").name(words.best)
    graph.legend("bottomright")
    return _named(graph.tosvg(), words.title, prefix)


def _line(points: Points, last: float) -> zp.PolyLine:
    """Return a staircase: the share stays as it is until more is settled."""
    minutes, percent = [0.0], [0.0]
    for at, share in points:
        minutes += [at, at]
        percent += [percent[-1], 100 * share]
    return zp.PolyLine([*minutes, last], [*percent, percent[-1]]).color("black")


def _named(svg: str, title: str, prefix: str) -> str:
    svg = re.sub(r'(id="|url\(#)(zclip)', rf"\1{prefix}-\2", svg)
    head, _, rest = svg.partition(">")
    label = f'role="img" aria-label="{escape(title)}"'
    return f"{head} {label}><title>{escape(title)}</title>{rest}"
