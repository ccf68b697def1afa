"""Beliefs, against a general Bayesian-network library and published networks."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pullcord.analysis.belief import read_beliefs, update
from pullcord.analysis.tree import paths_to
from pullcord.model.procedure import Procedure
from tests.analysis.making import procedures, read_all, sorting_trees
from tests.outside.networks import ALARM_PART, ASIA, CANCER, Network, chance, posterior


def combinations(network: Network, names: tuple[str, ...]) -> Iterator[dict[str, str]]:
    """Yield every combination of states of some nodes."""
    for states in product(*(network[name][0] for name in names)):
        yield dict(zip(names, states, strict=True))


def prior(network: Network, names: tuple[str, ...]) -> dict[str, float]:
    """Return the probability of each combination of some nodes, the rest summed out by hand."""
    upstream = tuple(list(network)[: max(list(network).index(name) for name in names) + 1])
    shares: dict[str, float] = {}
    for states in combinations(network, upstream):
        share = 1.0
        for node in upstream:
            share *= chance(network, node, states[node], states)
        key = " ".join(states[name] for name in names)
        shares[key] = shares.get(key, 0.0) + share
    return shares


def believed(
    network: Network, names: tuple[str, ...], asked: str, seen: Mapping[str, str]
) -> dict[str, float]:
    """Return what `update` believes of one node, after seeing findings one by one."""
    causes = {" ".join(states.values()): states for states in combinations(network, names)}
    shares = prior(network, names)
    for finding, state in seen.items():
        likelihood = {
            key: sum(
                chance(network, finding, state, {**states, **between})
                * between_chance(network, finding, states, between)
                for between in hidden(network, finding, states)
            )
            for key, states in causes.items()
        }
        shares = update(shares, likelihood)
    own = dict.fromkeys(network[asked][0], 0.0)
    for key, share in shares.items():
        own[causes[key][asked]] += share
    return own


def hidden(network: Network, finding: str, states: Mapping[str, str]) -> Iterator[dict[str, str]]:
    """Yield every combination of the finding's parents that are no causes."""
    yield from combinations(network, tuple(p for p in network[finding][1] if p not in states))


def between_chance(
    network: Network, finding: str, states: Mapping[str, str], between: Mapping[str, str]
) -> float:
    """Return how likely such a combination is, given the causes."""
    product_of_all = 1.0
    for node, state in between.items():
        product_of_all *= chance(network, node, state, states)
    return product_of_all


QUESTIONS: dict[str, tuple[Network, tuple[str, ...], str, tuple[str, ...]]] = {
    "asia, lung": (ASIA, ("lung", "tub", "bronc"), "lung", ("xray", "dysp")),
    "asia, tub": (ASIA, ("lung", "tub", "bronc"), "tub", ("xray", "dysp")),
    "asia, bronc": (ASIA, ("lung", "tub", "bronc"), "bronc", ("dysp", "xray")),
    "cancer": (CANCER, ("cancer",), "cancer", ("xray", "dyspnoea")),
    "alarm, hypovolemia": (
        ALARM_PART,
        ("hypovolemia", "lvfailure", "lvedvolume"),
        "hypovolemia",
        ("cvp", "pcwp", "history"),
    ),
    "alarm, lvfailure": (
        ALARM_PART,
        ("hypovolemia", "lvfailure", "lvedvolume"),
        "lvfailure",
        ("history", "cvp", "pcwp"),
    ),
}


@pytest.mark.parametrize(
    ("network", "causes", "asked", "findings"), QUESTIONS.values(), ids=QUESTIONS
)
def test_updates_are_the_librarys(
    network: Network, causes: tuple[str, ...], asked: str, findings: tuple[str, ...]
) -> None:
    """For every combination of findings, seen one by one, the library believes the same."""
    for count in range(len(findings) + 1):
        for seen in combinations(network, findings[:count]):
            ours = believed(network, causes, asked, seen)
            assert ours == pytest.approx(posterior(network, asked, seen), abs=1e-9)


FIGURES = {
    "lung after an x-ray": (ASIA, "lung", {"xray": "yes"}, 0.488711),
    "lung after dyspnoea": (ASIA, "lung", {"dysp": "yes"}, 0.102759),
    "lung after both": (ASIA, "lung", {"xray": "yes", "dysp": "yes"}, 0.621253),
    "cancer after an x-ray": (CANCER, "cancer", {"xray": "positive"}, 0.0502880),
}


@pytest.mark.parametrize(("network", "asked", "seen", "figure"), FIGURES.values(), ids=FIGURES)
def test_the_library_is_asked_rightly(
    network: Network, asked: str, seen: dict[str, str], figure: float
) -> None:
    """Figures worked out by plain enumeration from the printed tables guard the comparison."""
    causes = ("lung", "tub", "bronc") if network is ASIA else ("cancer",)
    first = network[asked][0][0]
    assert posterior(network, asked, seen)[first] == pytest.approx(figure, abs=5e-7)
    assert believed(network, causes, asked, seen)[first] == pytest.approx(figure, abs=5e-7)


def as_network(procedure: Procedure) -> Network:
    """Return a procedure as a network: what is wrong, and a child of it for each check."""
    tree, table, odds = read_all(procedure)
    outcomes = tree.outcomes
    checks = {
        check: (
            tuple(way.answer for way in tree.ways[check]),
            ("wrong",),
            {
                (name,): tuple(table[check][name].likelihood(w.answer) for w in tree.ways[check])
                for name in outcomes
            },
        )
        for check in tree.checks
    }
    return {"wrong": (outcomes, (), {(): tuple(odds.shares[name] for name in outcomes)}), **checks}


@given(sorting_trees())
@settings(max_examples=30, deadline=None, print_blob=True)
def test_beliefs_at_every_step_of_a_tree(procedure: Procedure) -> None:
    """What is believed after each answer is what the library believes after all answers so far."""
    tree, table, odds = read_all(procedure)
    beliefs = read_beliefs(tree, table, odds)
    network = as_network(procedure)
    for outcome in tree.outcomes:
        (path,) = paths_to(tree, outcome)
        seen: dict[str, str] = {}
        for step, answer in path:
            before = {name: beliefs[step].shares.get(name, 0.0) for name in tree.outcomes}
            assert before == pytest.approx(posterior(network, "wrong", seen), abs=1e-9)
            if not answer:
                continue
            seen[step] = answer
            after = next(a.shares for a in beliefs[step].answers if a.answer == answer)
            shares = {name: after.get(name, 0.0) for name in tree.outcomes}
            assert shares == pytest.approx(posterior(network, "wrong", seen), abs=1e-9)


@given(procedures(extras=False), st.data())
@settings(max_examples=30, deadline=None, print_blob=True)
def test_updates_along_any_way(procedure: Procedure, data: st.DataObject) -> None:
    """Where ways join again, updating along one of them is what the library believes."""
    tree, table, odds = read_all(procedure)
    outcome = data.draw(st.sampled_from(tree.outcomes))
    path = data.draw(st.sampled_from(paths_to(tree, outcome)))
    shares, seen = dict(odds.shares), {}
    for step, answer in path:
        if answer:
            seen[step] = answer
            row = table[step]
            shares = update(shares, {name: cell.likelihood(answer) for name, cell in row.items()})
    every = {name: shares.get(name, 0.0) for name in tree.outcomes}
    assert every == pytest.approx(posterior(as_network(procedure), "wrong", seen), abs=1e-9)
