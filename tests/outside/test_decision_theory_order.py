"""The ratio rule for runs of independent checks, against every order there is."""

from __future__ import annotations

from itertools import permutations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pullcord.analysis.cost import expected_cost
from pullcord.analysis.order import NoRuleError, RunCheck, expected_minutes, ratio_order

# p = (.5, .3, .2), c = (4, 1, 2): all six orders of the formula of Heckerman, Breese and Rommelse
# (CACM 38(3), 1995, from memory), worked out by hand.
SMALL_CASE = {"012": 4.9, "021": 5.3, "102": 4.2, "120": 4.4, "201": 5.5, "210": 4.8}
SMALL_CHECKS = [RunCheck("0", 0.5, 4), RunCheck("1", 0.3, 1), RunCheck("2", 0.2, 2)]


@pytest.mark.parametrize(("order", "minutes"), SMALL_CASE.items(), ids=SMALL_CASE)
def test_expected_minutes_of_the_small_case(order: str, minutes: float) -> None:
    """Each order costs the sum of c_i times the probability that no earlier check helped."""
    checks = [SMALL_CHECKS[int(place)] for place in order]
    assert expected_minutes(checks) == pytest.approx(minutes)
    shares, costs = [c.share for c in checks], [c.minutes for c in checks]
    assert expected_cost(shares, costs) == pytest.approx(minutes)


def test_best_order_of_the_small_case() -> None:
    """Ratios .125, .3, .1: the second check goes first, though the first is the likeliest."""
    assert ratio_order(SMALL_CHECKS) == ("1", "0", "2")


def runs(most: int = 5) -> st.SearchStrategy[list[RunCheck]]:
    """Draw runs of independent checks whose probabilities sum to 1 at most."""
    pairs = st.tuples(st.integers(1, 20), st.integers(0, 20))
    return st.lists(pairs, min_size=1, max_size=most).map(
        lambda drawn: [
            RunCheck(str(place), odds / sum(odds for odds, _ in drawn), minutes)
            for place, (odds, minutes) in enumerate(drawn)
        ]
    )


@given(runs())
@settings(max_examples=100, deadline=None, print_blob=True)
def test_no_order_beats_the_ratio_rule(checks: list[RunCheck]) -> None:
    """The theorem: most odds per minute first has the fewest expected minutes of all orders."""
    named = {check.name: check for check in checks}
    found = expected_minutes([named[name] for name in ratio_order(checks)])
    assert found == pytest.approx(min(map(expected_minutes, permutations(checks))))


@given(runs(), st.data())
@settings(max_examples=100, deadline=None, print_blob=True)
def test_no_order_beats_horns_rule(checks: list[RunCheck], data: st.DataObject) -> None:
    """With each check after at most one other, it is the best of all orders that respect this."""
    after = {
        check.name: (data.draw(st.sampled_from([c.name for c in checks[:place]])),)
        for place, check in enumerate(checks)
        if place and data.draw(st.booleans())
    }
    checks = [RunCheck(c.name, c.share, c.minutes, after.get(c.name, ())) for c in checks]
    named = {check.name: check for check in checks}

    def is_respectful(order: tuple[RunCheck, ...]) -> bool:
        names = [check.name for check in order]
        return all(names.index(a) < names.index(c.name) for c in order for a in c.after)

    order = tuple(named[name] for name in ratio_order(checks))
    assert is_respectful(order)
    best = min(map(expected_minutes, filter(is_respectful, permutations(checks))))
    assert expected_minutes(order) == pytest.approx(best)


def test_the_rule_fails_with_a_shared_opening_cost() -> None:
    """Two checks behind one cover: ratios mislead, so the run is refused, not ordered.

    "Cost clusters" (abstract of arXiv 1203.3502): probability over cost is not optimal once actions
    share an opening cost.
    """
    cover = {"cover": 10.0}
    run = [
        RunCheck("behind-a", 0.3, 1, openings=cover),
        RunCheck("behind-b", 0.3, 1, openings=cover),
        RunCheck("outside", 0.4, 12),
    ]
    by_ratio = [run[2], run[0], run[1]]
    assert [c.share / (c.minutes + sum((c.openings or {}).values())) for c in by_ratio] == [
        pytest.approx(0.4 / 12),
        pytest.approx(0.3 / 11),
        pytest.approx(0.3 / 11),
    ]
    best = min(permutations(run), key=expected_minutes)
    assert expected_minutes(list(best)) < expected_minutes(by_ratio) - 1
    with pytest.raises(NoRuleError, match="share the cost of `cover`"):
        ratio_order(run)


def test_an_opening_of_one_check_alone_is_its_own_cost() -> None:
    """A cover that only one check needs is paid with that check, and the rule holds."""
    run = [RunCheck("behind", 0.6, 1, openings={"cover": 20.0}), RunCheck("outside", 0.4, 5)]
    assert ratio_order(run) == ("outside", "behind")


def test_a_check_after_several_others_is_refused() -> None:
    """Needs that join again are beyond the rule."""
    run = [*SMALL_CHECKS, RunCheck("3", 0.0, 1, after=("0", "1"))]
    with pytest.raises(NoRuleError, match="after several"):
        ratio_order(run)


def test_needs_in_a_circle_are_refused() -> None:
    """Two checks that each come after the other have no order."""
    run = [RunCheck("a", 0.5, 1, after=("b",)), RunCheck("b", 0.5, 1, after=("a",))]
    with pytest.raises(NoRuleError):
        ratio_order(run)
