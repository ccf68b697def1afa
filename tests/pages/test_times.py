"""How long it takes, from the steps' own minutes."""

from __future__ import annotations

import networkx as nx
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pullcord.graph import procedure_graph, start_node
from pullcord.model.procedure import Procedure
from pullcord.pages.before import say_time
from pullcord.pages.times import minutes_to_an_end, say_minutes
from tests.pages.make import KIT, NO_SPARK, procedure
from tests.safety.random_procedures import procedures


@given(procedures(), st.data())
@settings(max_examples=60, deadline=None, print_blob=True)
def test_least_and_most_agree_with_walking_every_path(base: Procedure, data: st.DataObject) -> None:
    """networkx lists every simple path; the sums along them bound the answer exactly."""
    minutes = {name: data.draw(st.integers(0, 90)) for name in base.steps}
    steps = {
        name: step.model_copy(update={"minutes": float(minutes[name])})
        for name, step in base.steps.items()
    }
    example = base.model_copy(update={"steps": steps})
    graph = procedure_graph(example)
    ends = [node for node in graph if graph.out_degree(node) == 0]
    paths = [path for end in ends for path in nx.all_simple_paths(graph, start_node(example), end)]
    sums = [sum(minutes.get(node.removeprefix("step:"), 0) for node in path) for path in paths]
    assert minutes_to_an_end(example) == (min(sums), max(sums))


SAID = {
    0: "under a minute",
    0.5: "under a minute",
    1: "1 min",
    59: "59 min",
    60: "1 h",
    61: "1 h 1 min",
    125: "2 h 5 min",
    2880: "48 h",
}


@pytest.mark.parametrize(("minutes", "expected"), SAID.items())
def test_a_time_is_said_as_people_say_it(minutes: float, expected: str) -> None:
    """Minutes up to the hour, then hours and minutes."""
    assert say_minutes(KIT.words, minutes) == expected


def test_least_and_most_are_said_once_when_they_agree() -> None:
    """One time, or from one to another."""
    assert say_time(KIT.words, procedure(NO_SPARK)) == "from 5 min to 20 min"
    short = NO_SPARK.replace("nothing: step look", "nothing: cause coil")
    short = short[: short.index("  look:")].replace("petrol drips: cause dripping", "no: done")
    assert say_time(KIT.words, procedure(short)) == "about 5 min"
