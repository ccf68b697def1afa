"""What the layout engine is asked and what it answers, as plain data.

Its answer comes in its own JSON (`json0`): centres of nodes, Bezier points of edges, centres of
edge labels, with y growing upward from the bottom of the chart.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import isfinite
from typing import Any

from pullcord.drawing.geometry import Symbol
from pullcord.drawing.plane import Point
from pullcord.errors import LayoutError


@dataclass(frozen=True)
class RequestNode:
    """A symbol and its fixed size."""

    symbol: Symbol
    width_px: float
    height_px: float


@dataclass(frozen=True)
class RequestEdge:
    """An arrow between nodes, by their numbers."""

    tail: int
    head: int
    is_straight: bool
    """Whether it is to be as short and straight as can be."""
    label_px: tuple[float, float] | None
    """Width and height of the answers along it."""
    is_to_corner: bool = False
    """Whether it comes in at the top left corner."""


@dataclass(frozen=True)
class Request:
    """One chart to be laid out. Nodes are spoken of by their numbers."""

    nodes: tuple[RequestNode, ...]
    edges: tuple[RequestEdge, ...]
    below: tuple[tuple[int, int], ...]
    """Pairs whose second stands straight below the first though no arrow joins them."""
    rows: tuple[tuple[int, ...], ...]
    """Nodes that share a row, from the left."""
    beside_px: float
    """The gap between neighbours in a row."""
    below_px: float
    """The gap between rows."""


@dataclass(frozen=True)
class PlanEdge:
    """Where an arrow runs."""

    curve: tuple[Point, ...]
    """Bezier points, without the arrow head."""
    tip: Point
    label: Point | None
    """Centre of the answers."""


@dataclass(frozen=True)
class Plan:
    """Where everything of one request is; y grows downward from 0."""

    width_px: float
    height_px: float
    nodes: tuple[Point, ...]
    """Centres, in the order of the request."""
    edges: tuple[PlanEdge, ...]
    """In the order of the request."""


def parse_plans(answer: str, requests: Sequence[Request], program: str) -> tuple[Plan, ...]:
    """Return the plans in an engine's answer. Raises LayoutError when it does not answer them."""
    try:
        plans = tuple(_plan(data) for data in _documents(answer))
        for plan, request in zip(plans, requests, strict=True):
            _check(plan, request)
    except (ValueError, TypeError, KeyError, IndexError, AttributeError, RecursionError):
        message = f"The layout engine `{program}` answered something that is not this chart."
        raise LayoutError(f"{message} Is it really Graphviz?") from None
    return plans


def _documents(answer: str) -> Iterator[Mapping[str, Any]]:
    decoder = json.JSONDecoder()
    rest = answer.strip()
    while rest:
        document, end = decoder.raw_decode(rest)
        yield document
        rest = rest[end:].strip()


def _plan(data: Mapping[str, Any]) -> Plan:
    left, bottom, right, top = _numbers(data["bb"])

    def at(place: str) -> Point:
        x, y = _numbers(place)
        return x - left, top - y

    # Rows that were asked for come back as objects without a place, hints as nameless arrows.
    nodes = {item["name"]: at(item["pos"]) for item in data.get("objects", ()) if "pos" in item}
    edges = {item["id"]: _edge(item, at) for item in data.get("edges", ()) if "id" in item}
    return Plan(
        width_px=right - left,
        height_px=top - bottom,
        nodes=tuple(nodes[f"n{i}"] for i in range(len(nodes))),
        edges=tuple(edges[f"e{i}"] for i in range(len(edges))),
    )


def _edge(item: Mapping[str, Any], at: Callable[[str], Point]) -> PlanEdge:
    parts = item["pos"].split(" ")
    if not parts[0].startswith("e,"):
        raise ValueError("an arrow without a tip")
    curve = tuple(at(part) for part in parts[1:])
    if len(curve) % 3 != 1:
        raise ValueError("not a chain of cubic curves")
    label = at(item["lp"]) if "lp" in item else None
    return PlanEdge(curve=curve, tip=at(parts[0][2:]), label=label)


def _numbers(text: str) -> list[float]:
    numbers = [float(part) for part in text.split(",")]
    if not all(isfinite(number) for number in numbers):
        raise ValueError("not a place")
    return numbers


def _check(plan: Plan, request: Request) -> None:
    if len(plan.nodes) != len(request.nodes) or len(plan.edges) != len(request.edges):
        raise ValueError("not every part is there")
    for edge, asked in zip(plan.edges, request.edges, strict=True):
        if (edge.label is None) != (asked.label_px is None):
            raise ValueError("labels do not match")
