"""The order of proofs with the least expected spend, against every permitted order."""

from __future__ import annotations

from fractions import Fraction
from itertools import permutations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pullcord.analysis.job.order import MOST_EXACT, Proof, cheapest_order, expected_spend


def proof(name: str, cost: int, percent: int, *after: str) -> Proof:
    """Return a proof that costs some cents and ends so many machines in a hundred."""
    return Proof(name, Fraction(cost), Fraction(percent, 100), after)


def names(proofs: tuple[Proof, ...]) -> str:
    """Return the names in their order, as one word."""
    return "".join(each.name for each in proofs)


def test_expected_spend_of_a_hand_worked_order() -> None:
    """Two tests that half and a fifth of all machines do not get past.

    10.00 for everyone, 4.00 for the half that is left, 20.00 for the half of four fifths:
    10.00 + 0.5 x 4.00 + 0.5 x 0.8 x 20.00 = 10.00 + 2.00 + 8.00 = 20.00.
    """
    order = [proof("a", 1000, 50), proof("b", 400, 20), proof("c", 2000, 0)]
    assert expected_spend(order) == 2000


ORDERS = {
    "the greatest share given up per cost first": (
        [proof("a", 1000, 10), proof("b", 1000, 30), proof("c", 100, 20)], "cba",
    ),
    "a dear proof that nobody fails comes last": (
        [proof("a", 9000, 0), proof("b", 100, 1)], "ba",
    ),
    "what costs nothing comes first": ([proof("a", 500, 90), proof("b", 0, 1)], "ba"),
    "of equals, as they were given": ([proof("a", 0, 0), proof("b", 0, 0)], "ab"),
    "what must come before": ([proof("a", 100, 90, "b"), proof("b", 500, 1)], "ba"),
    "a dull proof opens a telling one": (
        # b alone has the worst ratio, but b and a together end half for 110, c a tenth for 50.
        [proof("c", 50, 10), proof("a", 10, 50, "b"), proof("b", 100, 0)], "bac",
    ),
    "what is done already is not waited for": ([proof("a", 10, 1, "long-done")], "a"),
    "a circle comes last, as it was given": (
        [proof("a", 1, 1, "b"), proof("b", 1, 1, "a"), proof("c", 1, 1)], "cab",
    ),
    "nothing to prove": ([], ""),
}  # fmt: skip


@pytest.mark.parametrize(("proofs", "best"), ORDERS.values(), ids=ORDERS)
def test_an_order_that_can_be_worked_out_by_hand(proofs, best) -> None:
    """Small cases whose answer is plain."""
    assert names(cheapest_order(proofs)) == best


@st.composite
def proof_lists(draw: st.DrawFn) -> list[Proof]:
    """Draw up to six proofs, each after some of those before it, given in any order."""
    size = draw(st.integers(1, 6))
    proofs = []
    for place in range(size):
        after = draw(st.lists(st.sampled_from(range(size)), max_size=2, unique=True))
        earlier = [f"p{other}" for other in after if other < place]
        cost, percent = draw(st.integers(0, 20)), draw(st.integers(0, 100))
        proofs.append(proof(f"p{place}", cost, percent, *earlier))
    return draw(st.permutations(proofs))


def is_permitted(proofs: tuple[Proof, ...]) -> bool:
    """Say whether every proof comes behind those it must come after."""
    place = {each.name: at for at, each in enumerate(proofs)}
    return all(place[before] < place[each.name] for each in proofs for before in each.after)


@settings(max_examples=100, deadline=None, print_blob=True)
@given(proof_lists())
def test_no_permitted_order_costs_less(proofs: list[Proof]) -> None:
    """Brute force over all orders finds none that is cheaper, and ours is permitted."""
    found = cheapest_order(proofs)
    assert sorted(each.name for each in found) == sorted(each.name for each in proofs)
    assert is_permitted(found)
    allowed = filter(is_permitted, permutations(proofs))
    assert expected_spend(found) == min(map(expected_spend, allowed))


def test_a_long_list_is_put_in_order_too() -> None:
    """More proofs than can be solved exactly still come out once each, in a permitted order."""
    chain = [proof(f"p{n}", 10 * n, 5, *([f"p{n - 1}"] if n % 3 else [])) for n in range(40)]
    found = cheapest_order(list(reversed(chain)))
    assert len(found) == 40 > MOST_EXACT
    assert is_permitted(found)
    assert len({each.name for each in found}) == 40
