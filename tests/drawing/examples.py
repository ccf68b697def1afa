"""Procedures to draw, and an independent way to ask whether a drawing is sound."""

from __future__ import annotations

from math import hypot
from pathlib import Path
from typing import Any

import yaml

from pullcord.drawing.font import read_face
from pullcord.drawing.geometry import Geometry, Label, Shape, TextLine
from pullcord.model.procedure import Procedure
from pullcord.safety.box import Box, SignalWord

HERE = Path(__file__).parent
Corners = tuple[tuple[float, float], ...]

ORCHARD_BOXES = {
    "step:make-safe": (Box(SignalWord.NOTICE, ("wear",)),),
    "step:smell": (Box(SignalWord.WARNING, ("fumes",)), Box(SignalWord.DANGER, ("fire",))),
    "step:known-plug": (Box(SignalWord.WARNING, ("shock",)),),
    "step:last-try": (Box(SignalWord.CAUTION, ("moving",)),),
    "cause:fuel-left": (Box(SignalWord.DANGER, ("fire",)),),
}


def orchard() -> Procedure:
    """Return a made-up procedure of twenty steps."""
    text = (HERE / "orchard.yaml").read_text(encoding="utf-8")
    return Procedure.model_validate(yaml.load(text, yaml.BaseLoader))  # noqa: S506 (text only)


def small(**changes: Any) -> Procedure:
    """Return a made-up procedure of one step, one check, two causes and three kinds of end."""
    data: dict[str, Any] = {
        "procedure": "small",
        "title": "Will not pump",
        "symptom": "No water comes.",
        "about": "Made up.",
        "start": "prime",
        "causes": {
            "valve": {"title": "Foot valve stuck", "remedy": "Free it."},
            "hose": {"title": "Hose sucks air", "remedy": "Renew it."},
        },
        "steps": {
            "prime": {"title": "Fill the pump", "do": "Fill it.", "then": "step run"},
            "run": {
                "title": "Run it",
                "do": "Start it.",
                "ask": "What comes out?",
                "answers": {
                    "nothing": "cause valve",
                    "water and air": "cause hose",
                    "spits": "cause hose",
                    "it will not start": "procedure no-spark",
                    "water": "done",
                },
            },
        },
    }
    return Procedure.model_validate({**data, **changes})


def ugly() -> Procedure:
    """Return a procedure whose texts try to break out of their boxes, the page and the engine."""
    nasty = [
        "Ω – ± µ ° ½ → ✓ ☐ between 4–12 kΩ ±5 %",
        "Pneumatikventilschaftabdichtungsringhalterungsschraubensatz " + "x" * 60,
        '"><script>alert(1)</script><a href="javascript:alert(1)">',
        "]]> & &amp; < > ' \" \\N \\l {|} [label=x]; } digraph {",
        "שלום עולם مرحبا بالعالم 世界 😀🔥 ⚠ é à",
        "\u202eright to left override \x00\x07\ufdfd tab\tand\vnew line\u2028x",
        "W" * 120,
        "i",
    ]
    steps = {
        f"s{i}": {
            "title": text,
            "do": "Do.",
            "ask": nasty[-1 - i],
            "answers": {
                text: f"cause c{i}",
                nasty[-1 - i][:110] + "?": f"step s{i + 1}",
                "no": "done",
            },
        }
        for i, text in enumerate(nasty[:-1])
    }
    steps[f"s{len(nasty) - 1}"] = {"title": nasty[-1], "do": "Do.", "then": "procedure other"}
    return Procedure.model_validate(
        {
            "procedure": "ugly",
            "title": nasty[2],
            "symptom": "s",
            "about": "a",
            "proves": nasty[3],
            "start": "s0",
            "causes": {f"c{i}": {"title": t, "remedy": "r"} for i, t in enumerate(nasty)},
            "steps": steps,
        }
    )


def text_corners(line: TextLine) -> Corners:
    """Return the corners of a line's box: its measured width, the typeface's ascent and descent."""
    face = read_face(line.weight)
    left, right = line.x - line.width / 2, line.x + line.width / 2
    top, bottom = line.y - face.ascent_em * line.size, line.y + face.descent_em * line.size
    return (left, top), (right, top), (right, bottom), (left, bottom)


def is_inside(shape: Shape, point: tuple[float, float]) -> bool:
    """Return whether a point is in a symbol, by the symbol's own equation."""
    x, y = abs(point[0] - shape.x), abs(point[1] - shape.y)
    half_width, half_height = shape.width / 2, shape.height / 2
    if shape.symbol == "decision":
        return x / half_width + y / half_height <= 1
    if shape.symbol == "terminator":
        straight = half_width - half_height
        return y <= half_height if x <= straight else hypot(x - straight, y) <= half_height
    return x <= half_width and y <= half_height


def texts_outside(geometry: Geometry) -> list[str]:
    """Return every line of a node that is not wholly inside its symbol."""
    return [
        line.text
        for node in geometry.nodes
        for line in node.shape.lines
        if not all(is_inside(node.shape, corner) for corner in text_corners(line))
    ]


def labels_on_nodes(geometry: Geometry) -> list[tuple[str, str]]:
    """Return every answer that touches a symbol, by a grid of points over its lines."""
    return [
        (line.text, node.id)
        for edge in geometry.edges
        if edge.label
        for line in edge.label.lines
        for node in geometry.nodes
        if any(is_inside(node.shape, point) for point in _grid(text_corners(line)))
    ]


def labels_on_labels(geometry: Geometry) -> list[tuple[str, str]]:
    """Return every pair of arrows whose answers overlap."""
    labelled = [(edge, edge.label) for edge in geometry.edges if edge.label]
    return [
        (one.head, other.head)
        for number, (one, label) in enumerate(labelled)
        for other, second in labelled[number + 1 :]
        if _share_room(label, second)
    ]


def _share_room(one: Label, other: Label) -> bool:
    return (
        abs(one.x - other.x) < (one.width + other.width) / 2
        and abs(one.y - other.y) < (one.height + other.height) / 2
    )


def _grid(corners: Corners) -> list[tuple[float, float]]:
    (left, top), _, (right, bottom), _ = corners
    return [
        (left + (right - left) * i / 8, top + (bottom - top) * j / 4)
        for i in range(9)
        for j in range(5)
    ]
