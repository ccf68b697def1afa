"""The order of proofs with the least expected spend.

Every proof costs something and may be where the machine is given up, after which nothing more is
spent. Proofs are independent, so an order costs on average the sum of c_i times the product of the
shares that got through all earlier ones: least-cost testing in sequence, with `after` as
precedence. It is solved exactly, by a dynamic programme over the sets of proofs still to come;
without precedence the best order has the greatest share given up per cost first (L. G. Mitten,
An analytic solution to the least cost testing sequence problem, Journal of Industrial Engineering
11, 1960; from memory).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

MOST_EXACT = 14
"""Of more proofs than this, those with the greatest ratio are put first until so many are left."""


@dataclass(frozen=True)
class Proof:
    """One proof still to come."""

    name: str
    cost: Fraction
    """In cents."""
    ends_here: Fraction
    """The share of machines given up at it, 0 to 1."""
    after: tuple[str, ...] = ()
    """Proofs that must come before it; those that are not among the given ones are done."""


def expected_spend(proofs: Sequence[Proof]) -> Fraction:
    """Return what proofs in this order cost on average, in cents."""
    total, left = Fraction(0), Fraction(1)
    for proof in proofs:
        total += left * proof.cost
        left *= 1 - proof.ends_here
    return total


def cheapest_order(proofs: Sequence[Proof]) -> tuple[Proof, ...]:
    """Return the proofs in the permitted order that costs least; of equals, as they were given.

    Proofs that come after one another in a circle come last, as they were given.
    """
    first: list[Proof] = []
    waiting = list(proofs)
    while len(waiting) > MOST_EXACT:
        ready = _ready(waiting)
        if not ready:
            break
        best = max(ready, key=_ratio)
        first.append(best)
        waiting.remove(best)
    return (*first, *_exact(waiting))


def _ready(waiting: Sequence[Proof]) -> list[Proof]:
    names = {proof.name for proof in waiting}
    return [proof for proof in waiting if names.isdisjoint(proof.after)]


def _ratio(proof: Proof) -> tuple[bool, Fraction]:
    return (not proof.cost, proof.ends_here / proof.cost if proof.cost else proof.ends_here)


def _exact(proofs: Sequence[Proof]) -> tuple[Proof, ...]:
    best: dict[frozenset[str], tuple[Fraction, Proof | None]] = {}
    by_name = {proof.name: proof for proof in proofs}
    _solve(frozenset(by_name), by_name, best)
    order: list[Proof] = []
    waiting = frozenset(by_name)
    while waiting:
        proof = best[waiting][1]
        if proof is None:
            break
        order.append(proof)
        waiting -= {proof.name}
    return (*order, *(proof for proof in proofs if proof.name in waiting))


def _solve(
    waiting: frozenset[str],
    proofs: Mapping[str, Proof],
    best: dict[frozenset[str], tuple[Fraction, Proof | None]],
) -> Fraction:
    """Fill in the least expected spend on the proofs that wait, and the one to begin with."""
    if waiting in best:
        return best[waiting][0]
    found: tuple[Fraction, Proof | None] = (Fraction(0), None)
    for proof in _ready([each for name, each in proofs.items() if name in waiting]):
        rest = _solve(waiting - {proof.name}, proofs, best)
        cost = proof.cost + (1 - proof.ends_here) * rest
        if found[1] is None or cost < found[0]:
            found = (cost, proof)
    best[waiting] = found
    return found[0]
