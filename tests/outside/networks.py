"""Published Bayesian networks, and a general library to ask about them.

The figures are those of the .bif files shipped in the package pgmpy 1.1.2 (not installed here: it
brings some 500 MB). asia: Lauritzen and Spiegelhalter, Local computations with probabilities on
graphical structures, J. R. Stat. Soc. B 50(2), 1988. cancer: Korb and Nicholson, Bayesian
Artificial Intelligence. alarm: Beinlich, Suermondt, Chavez and Cooper, The ALARM monitoring system,
1989; of its 37 nodes only the six that bear on the causes and findings asked about.
"""

from __future__ import annotations

from collections.abc import Mapping
from itertools import product

from pybbn.graph.dag import Bbn
from pybbn.graph.edge import Edge, EdgeType
from pybbn.graph.jointree import EvidenceBuilder
from pybbn.graph.node import BbnNode
from pybbn.graph.variable import Variable
from pybbn.pptc.inferencecontroller import InferenceController

Row = tuple[float, ...]
Node = tuple[tuple[str, ...], tuple[str, ...], Mapping[tuple[str, ...], Row]]
"""States, parents, and a row of probabilities for each combination of the parents' states."""

Network = Mapping[str, Node]
"""Nodes by name, parents first."""

YES_NO = ("yes", "no")
TRUE_FALSE = ("true", "false")
LEVELS = ("low", "normal", "high")

ASIA: Network = {
    "asia": (YES_NO, (), {(): (0.01, 0.99)}),
    "tub": (YES_NO, ("asia",), {("yes",): (0.05, 0.95), ("no",): (0.01, 0.99)}),
    "smoke": (YES_NO, (), {(): (0.5, 0.5)}),
    "lung": (YES_NO, ("smoke",), {("yes",): (0.1, 0.9), ("no",): (0.01, 0.99)}),
    "bronc": (YES_NO, ("smoke",), {("yes",): (0.6, 0.4), ("no",): (0.3, 0.7)}),
    "either": (
        YES_NO,
        ("lung", "tub"),
        {
            ("yes", "yes"): (1.0, 0.0),
            ("no", "yes"): (1.0, 0.0),
            ("yes", "no"): (1.0, 0.0),
            ("no", "no"): (0.0, 1.0),
        },
    ),
    "xray": (YES_NO, ("either",), {("yes",): (0.98, 0.02), ("no",): (0.05, 0.95)}),
    "dysp": (
        YES_NO,
        ("bronc", "either"),
        {
            ("yes", "yes"): (0.9, 0.1),
            ("no", "yes"): (0.7, 0.3),
            ("yes", "no"): (0.8, 0.2),
            ("no", "no"): (0.1, 0.9),
        },
    ),
}

CANCER: Network = {
    "pollution": (("low", "high"), (), {(): (0.9, 0.1)}),
    "smoker": (TRUE_FALSE, (), {(): (0.3, 0.7)}),
    "cancer": (
        TRUE_FALSE,
        ("pollution", "smoker"),
        {
            ("low", "true"): (0.03, 0.97),
            ("high", "true"): (0.05, 0.95),
            ("low", "false"): (0.001, 0.999),
            ("high", "false"): (0.02, 0.98),
        },
    ),
    "xray": (
        ("positive", "negative"),
        ("cancer",),
        {("true",): (0.9, 0.1), ("false",): (0.2, 0.8)},
    ),
    "dyspnoea": (TRUE_FALSE, ("cancer",), {("true",): (0.65, 0.35), ("false",): (0.3, 0.7)}),
}

ALARM_PART: Network = {
    "hypovolemia": (TRUE_FALSE, (), {(): (0.2, 0.8)}),
    "lvfailure": (TRUE_FALSE, (), {(): (0.05, 0.95)}),
    "lvedvolume": (
        LEVELS,
        ("hypovolemia", "lvfailure"),
        {
            ("true", "true"): (0.95, 0.04, 0.01),
            ("false", "true"): (0.98, 0.01, 0.01),
            ("true", "false"): (0.01, 0.09, 0.90),
            ("false", "false"): (0.05, 0.90, 0.05),
        },
    ),
    "history": (TRUE_FALSE, ("lvfailure",), {("true",): (0.9, 0.1), ("false",): (0.01, 0.99)}),
    "cvp": (
        LEVELS,
        ("lvedvolume",),
        {
            ("low",): (0.95, 0.04, 0.01),
            ("normal",): (0.04, 0.95, 0.01),
            ("high",): (0.01, 0.29, 0.70),
        },
    ),
    "pcwp": (
        LEVELS,
        ("lvedvolume",),
        {
            ("low",): (0.95, 0.04, 0.01),
            ("normal",): (0.04, 0.95, 0.01),
            ("high",): (0.01, 0.04, 0.95),
        },
    ),
}


def posterior(network: Network, name: str, seen: Mapping[str, str]) -> dict[str, float]:
    """Return the probability of each state of a node, as the library's join tree gives it."""
    graph, nodes = Bbn(), {}
    for place, (node, (states, parents, rows)) in enumerate(network.items()):
        order = product(*(network[parent][0] for parent in parents))
        table = [chance for states_of_parents in order for chance in rows[states_of_parents]]
        nodes[node] = BbnNode(Variable(place, node, list(states)), table)
        graph.add_node(nodes[node])
        for parent in parents:
            graph.add_edge(Edge(nodes[parent], nodes[node], EdgeType.DIRECTED))
    tree = InferenceController.apply(graph)
    for node, state in seen.items():
        evidence = EvidenceBuilder().with_node(tree.get_bbn_node_by_name(node))
        tree.set_observation(evidence.with_evidence(state, 1.0).build())
    return {state: float(chance) for state, chance in tree.get_posteriors()[name].items()}


def chance(network: Network, name: str, state: str, parents: Mapping[str, str]) -> float:
    """Return one printed figure: the probability of a state, given all of the node's parents."""
    states, above, rows = network[name]
    return rows[tuple(parents[parent] for parent in above)][states.index(state)]
