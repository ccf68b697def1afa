"""Reading the engine's answer."""

from __future__ import annotations

import json

import pytest

from pullcord.drawing.plan import Plan, PlanEdge, Request, RequestEdge, RequestNode, parse_plans
from pullcord.errors import LayoutError

REQUEST = Request(
    nodes=(RequestNode("process", 10, 10), RequestNode("process", 10, 10)),
    edges=(RequestEdge(1, 0, False, (4, 4)),),
    below=(),
    rows=(),
    beside_px=1,
    below_px=1,
)
ANSWER = {
    "bb": "10,20,110,220",
    "objects": [
        {"name": "%3", "nodes": [0, 1]},
        {"name": "n1", "pos": "60,200"},
        {"name": "n0", "pos": "60,40"},
    ],
    "edges": [
        {"tail": 1, "head": 2, "pos": "e,60,45 60,195 60,150 60,100 60,55"},
        {"id": "e0", "lp": "80,120", "pos": "e,60,45 60,195 60,150 60,100 60,55"},
    ],
}


def test_turns_the_picture_upside_down() -> None:
    """The engine counts upward from the bottom; we count downward from 0."""
    (plan,) = parse_plans(json.dumps(ANSWER), [REQUEST], "dot")
    curve = ((50, 25), (50, 70), (50, 120), (50, 165))
    assert plan == Plan(
        width_px=100,
        height_px=200,
        nodes=((50, 180), (50, 20)),
        edges=(PlanEdge(curve=curve, tip=(50, 175), label=(70, 100)),),
    )


@pytest.mark.parametrize(
    "spoil",
    [
        {"bb": "0,0,1"},
        {"bb": "0,0,inf,1"},
        {"objects": ANSWER["objects"][:2]},
        {"edges": []},
        {"edges": [{"id": "e0", "lp": "1,1", "pos": "60,195 60,150 60,100 60,55"}]},
        {"edges": [{"id": "e0", "lp": "1,1", "pos": "e,1,1 60,195 60,150"}]},
        {"edges": [{"id": "e0", "pos": "e,60,45 60,195 60,150 60,100 60,55"}]},
        {"edges": [{"id": "e0", "lp": "1,1"}]},
        {"objects": {"n0": "1,1"}},
        {"edges": None},
    ],
    ids=[
        "box", "endless", "node lost", "arrow lost", "no tip", "half a curve", "label lost",
        "no way", "no list", "null",
    ],
)  # fmt: skip
def test_an_answer_that_does_not_fit_is_refused(spoil: dict[str, object]) -> None:
    """Nothing is drawn from half an answer."""
    with pytest.raises(LayoutError, match="`dot` answered something that is not this chart"):
        parse_plans(json.dumps(ANSWER | spoil), [REQUEST], "dot")


@pytest.mark.parametrize("count", [0, 2], ids=["too few", "too many"])
def test_one_answer_a_question(count: int) -> None:
    """As many charts come back as were sent."""
    with pytest.raises(LayoutError):
        parse_plans(json.dumps(ANSWER) * count, [REQUEST], "dot")
