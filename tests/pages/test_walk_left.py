"""What the walk says is left at a step."""

from __future__ import annotations

import networkx as nx
import pytest

from pullcord.graph import procedure_graph, start_node
from pullcord.model.procedure import Procedure
from pullcord.pages.times import minutes_to_an_end
from pullcord.pages.walk_left import CauseLeft, read_left
from tests.library.table import read_library
from tests.pages.make import procedure

THREE = """\
procedure: three
title: Three causes
symptom: It is broken.
about: For any.
start: first
causes:
  a: {title: A, remedy: Mend a., odds: 6}
  b: {title: B, remedy: Mend b., odds: 3}
  c: {title: C, remedy: Mend c., odds: 1}
steps:
  first: {title: First, do: Look., minutes: 5, ask: This, answers: {is: cause a, not: step go}}
  go: {title: Go on, do: Go on., minutes: 2, then: step second}
  second: {title: Last, do: Look., minutes: 10, ask: This, answers: {is: cause b, not: cause c}}
"""
LIBRARY = read_library().procedures


def test_minutes_by_hand() -> None:
    """5 min find A in 6 of 10; the other 4 need 12 min more: 5 + 0.4 x 12 = 9.8 on average."""
    left = read_left(procedure(THREE))
    minutes = {
        node: (each.least, pytest.approx(each.likely), each.most) for node, each in left.items()
    }
    assert minutes == {
        "step:first": (5, 9.8, 17),
        "step:go": (12, 12, 12),
        "step:second": (10, 10, 10),
        "cause:a": (0, 0, 0),
        "cause:b": (0, 0, 0),
        "cause:c": (0, 0, 0),
    }


def test_what_this_shop_has_found_counts() -> None:
    """Three outcomes weigh as three jobs: a 3 x 0.6 of 3 + 4 jobs, so 5.2 of 7 need 12 min more."""
    left = read_left(procedure(THREE), {"cause:b": 4})
    assert left["step:first"].likely == pytest.approx(5 + 12 * (1 - 1.8 / 7))
    assert left["step:first"].causes[0] == CauseLeft("b", pytest.approx(4.9 / 7))


def test_causes_by_hand() -> None:
    """At the second check A is out; B is three times as likely as C."""
    left = read_left(procedure(THREE))
    shares = {each.name: pytest.approx(each.share) for each in left["step:second"].causes}
    assert shares == {"b": 0.75, "c": 0.25}
    assert [each.name for each in left["step:first"].causes] == ["a", "b", "c"]
    assert left["cause:c"].causes == (CauseLeft("c", 1.0),)


@pytest.mark.parametrize("name", LIBRARY)
def test_shipped_procedures(name: str) -> None:
    """Causes are those networkx can reach, minutes those of the page's head, and both shrink."""
    given: Procedure = LIBRARY[name]
    left, graph = read_left(given), procedure_graph(given)
    start = left[start_node(given)]
    assert (start.least, start.most) == pytest.approx(minutes_to_an_end(given))
    for node, each in left.items():
        reached = {end for end in nx.descendants(graph, node) | {node} if end.startswith("cause:")}
        assert {f"cause:{cause.name}" for cause in each.causes} == reached
        assert each.least <= each.likely + 1e-9
        assert each.likely <= each.most + 1e-9
        for after in graph.successors(node):
            assert left[after].most <= each.most
            assert {c.name for c in left[after].causes} <= {c.name for c in each.causes}
