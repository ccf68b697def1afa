"""Ask the layout engine where things go. The only file of Pullcord that starts a process.

The engine is told sizes and connections, never a word of text: there is nothing to escape from.
It is asked in points of 1/72 inch and one point is read as one px, so no length is ever converted.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from collections.abc import Iterator, Mapping, Sequence
from functools import cache
from itertools import pairwise
from pathlib import Path
from typing import Literal

import graphviz

from pullcord.drawing.plan import Plan, Request, parse_plans
from pullcord.errors import LayoutError

Engine = Literal["built-in", "dot"]
PROGRAMS: dict[Engine, str] = {"built-in": "graphviz-pure", "dot": "dot"}
TIMEOUT_SECONDS = 60.0

_Arrow = tuple[int, int, dict[str, str]]

_POINTS_PER_INCH = 72
_HEAVY = "40"
_SHAPES = {"decision": "diamond"}
_MENDS: dict[Engine, str] = {
    "built-in": "Install Pullcord again: its layout engine comes with it.",
    "dot": (
        "Install Graphviz, or take `layout_engine: dot` out of the settings to use the one that "
        "comes with Pullcord."
    ),
}

_MEND_SLOW = (
    "A chart with very many steps takes it too long: split the procedure into several that hand "
    "over to one another."
)


def lay_out(
    requests: Sequence[Request], engine: Engine, timeout_seconds: float = TIMEOUT_SECONDS
) -> tuple[Plan, ...]:
    """Return a plan for each request, all from one run of the engine.

    Raises LayoutError when the engine is missing, hangs, dies or answers nonsense.
    """
    if not requests:
        return ()
    source = "".join(_dot_source(request) for request in requests)
    program = find_engine(engine)
    answer = _run(engine, program, ["-Kdot", "-Tjson0"], source, timeout_seconds)
    return parse_plans(answer, requests, PROGRAMS[engine])


def engine_version(engine: Engine) -> str:
    """Return what the engine calls itself. Raises LayoutError when it does not answer."""
    return _version(engine, find_engine(engine))


def find_engine(engine: Engine) -> Path:
    """Return the program: beside the running Python first, then where the system looks.

    Raises LayoutError when there is none.
    """
    name = PROGRAMS[engine]
    beside = str(Path(sys.executable).parent)
    found = (shutil.which(name, path=beside) if engine == "built-in" else None) or shutil.which(
        name
    )
    if found is None:
        raise LayoutError(f"The layout engine `{name}` is not there. {_MENDS[engine]}")
    return Path(found)


@cache
def _version(engine: Engine, program: Path) -> str:
    return _run(engine, program, ["-V"], "", TIMEOUT_SECONDS)


def _run(
    engine: Engine, program: Path, arguments: list[str], source: str, timeout_seconds: float
) -> str:
    try:
        done = subprocess.run(  # noqa: S603 - a program we looked up, fixed arguments, no shell
            [str(program), *arguments],
            input=source.encode("ascii"),
            capture_output=True,
            timeout=timeout_seconds,
            check=False,
            env={**os.environ, "LC_ALL": "C"},
        )
    except subprocess.TimeoutExpired:
        message = f"The layout engine `{program.name}` gave no answer in {timeout_seconds:g} s."
        raise LayoutError(f"{message} {_MEND_SLOW}") from None
    except OSError as error:
        message = f"The layout engine `{program.name}` cannot be started: {error.strerror}."
        raise LayoutError(f"{message} {_MENDS[engine]}") from error
    if done.returncode != 0:
        said = done.stderr.decode("utf-8", "replace").strip().splitlines()
        message = f"The layout engine `{program.name}` stopped with code {done.returncode}"
        raise LayoutError(f"{message}: {said[0] if said else 'it said nothing'}. {_MENDS[engine]}")
    # `-V` answers on the error channel.
    return (done.stdout or done.stderr).decode("utf-8", "replace")


def _dot_source(request: Request) -> str:
    graph = graphviz.Digraph(
        graph_attr=_escaped(
            nodesep=_inches(request.beside_px), ranksep=_inches(request.below_px), margin="0"
        ),
        node_attr=_escaped(label="", fixedsize="true", margin="0"),
        edge_attr=_escaped(arrowsize="0.8"),
    )
    leading = _leading(request)
    for number, node in enumerate(request.nodes):
        size = {"width": _inches(node.width_px), "height": _inches(node.height_px)}
        shape = _SHAPES.get(node.symbol, "box")
        order = {"ordering": "out"} if number in leading else {}
        graph.node(f"n{number}", **_escaped(shape=shape, **size, **order))
    for tail, head, attributes in sorted(_arrows(request), key=lambda arrow: _turn(arrow, leading)):
        graph.edge(f"n{tail}", f"n{head}", **attributes)
    for row in request.rows:
        with graph.subgraph(graph_attr={"rank": "same"}) as same:
            for left, right in pairwise(row):
                same.edge(f"n{left}", f"n{right}", **_escaped(style="invis"))
    return str(graph.source)


def _arrows(request: Request) -> Iterator[_Arrow]:
    for number, edge in enumerate(request.edges):
        weight = _HEAVY if edge.is_straight else "1"
        label = {} if edge.label_px is None else {"label": _spacer(*edge.label_px)}
        port = _escaped(headport="nw") if edge.is_to_corner else {}
        yield edge.tail, edge.head, {**_escaped(id=f"e{number}", weight=weight), **label, **port}
    for above, below in request.below:
        yield above, below, _escaped(style="invis", weight=_HEAVY)


def _leading(request: Request) -> dict[int, tuple[int, ...]]:
    """Return, by its node, each row that all of a node's arrows lead to.

    The engine does not always keep the order of a row; it does keep that of a node's arrows.
    """
    heads: dict[int, set[int]] = {}
    for tail, head, _ in _arrows(request):
        heads.setdefault(tail, set()).add(head)
    rows = {frozenset(row): row for row in request.rows}
    return {tail: rows[frozenset(to)] for tail, to in heads.items() if frozenset(to) in rows}


def _turn(arrow: _Arrow, leading: Mapping[int, tuple[int, ...]]) -> tuple[int, int]:
    tail, head, _ = arrow
    return tail, leading[tail].index(head) if tail in leading else 0


def _escaped(**attributes: str) -> dict[str, str]:
    return {key: graphviz.nohtml(graphviz.escape(value)) for key, value in attributes.items()}


def _spacer(width_px: float, height_px: float) -> str:
    size = f'FIXEDSIZE="TRUE" WIDTH="{width_px:.0f}" HEIGHT="{height_px:.0f}"'
    bare = 'BORDER="0" CELLBORDER="0" CELLPADDING="0" CELLSPACING="0"'
    return f"<<TABLE {bare} {size}><TR><TD></TD></TR></TABLE>>"


def _inches(length_px: float) -> str:
    return f"{length_px / _POINTS_PER_INCH:.5f}"
