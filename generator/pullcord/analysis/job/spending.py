"""What to prove and to buy next, and what it all comes to."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

from pullcord.analysis.job.chances import amount_of, point_at, sum_of
from pullcord.analysis.job.given import Given
from pullcord.analysis.job.order import Proof, cheapest_order
from pullcord.analysis.job.outlay import Outlay, still_wanted
from pullcord.analysis.job.report import MoneyState, NextProof, Purchase, StageState
from pullcord.analysis.job.stages import all_before
from pullcord.analysis.job.words import CENT, money, titles_of
from pullcord.model.job import Entry, Part, Wanted

LOW, HIGH = 0.1, 0.9
"""Between these shares of all machines lies the range that is told."""


def read_proofs(
    given: Given,
    states: tuple[StageState, ...],
    outlays: tuple[Outlay, ...],
    currency: str = "",
) -> tuple[NextProof, ...]:
    """Return the stages still to be proved, in the order with the least expected spend."""
    means = {outlay.stage: outlay.mean for outlay in outlays if outlay.stage}
    proofs = [
        Proof(
            state.name,
            means[state.name],
            Fraction(str(state.stage.ends_here)) / 100,
            tuple(state.stage.after),
        )
        for state in states
        if state.name in means
    ]
    order = cheapest_order(proofs)
    return tuple(
        NextProof(
            stage=proof.name,
            expected_cost=amount_of(proof.cost),
            ends_here=float(proof.ends_here),
            why=_proof_why(given, proof, place, order, currency),
        )
        for place, proof in enumerate(order)
    )


def read_purchases(
    given: Given, states: tuple[StageState, ...], proofs: tuple[NextProof, ...]
) -> tuple[Purchase, ...]:
    """Return what is still wanted: what may be bought now first, cheap proofs before dear parts."""
    proved = {state.name for state in states if state.proof == "proved"}
    order = {proof.stage: place for place, proof in enumerate(proofs)}
    found = [_purchase(given, name, want, proved) for name, want in still_wanted(given).items()]
    return tuple(
        sorted(
            found,
            key=lambda one: (not one.may_buy, order.get(one.wanted.serves, -1), one.wanted.price),
        )
    )


def read_money(
    given: Given,
    states: tuple[StageState, ...],
    outlays: tuple[Outlay, ...],
    proofs: tuple[NextProof, ...],
    currency: str = "",
) -> MoneyState:
    """Return what has been spent, what is likely to come, and whether that is too much."""
    job = given.job
    spent = job.spent_before + sum((part.price for _, part in _parts(job.log)), Decimal(0))
    chances = sum_of(outlay.chances for outlay in outlays)
    expected = sum((amount_of(outlay.mean) for outlay in outlays), Decimal("0.00"))
    next_cost = proofs[0].expected_cost if proofs else Decimal(0)
    low, high = (amount_of(point_at(chances, share)) for share in (LOW, HIGH))
    state = MoneyState(
        most=job.most.quantize(CENT),
        spent=spent.quantize(CENT),
        hours=job.hours_before + sum(entry.minutes for entry in job.log) / 60,
        expected=expected,
        low=low,
        high=high,
        at_risk=(_unproved_spend(given, states) + next_cost).quantize(CENT),
        is_past_stop=spent + expected > job.most,
        why="",
    )
    return replace(state, why=_money_why(given, state, currency))


def _parts(log: Iterable[Entry]) -> list[tuple[Entry, Part]]:
    return [(entry, part) for entry in log for part in entry.parts]


def _unproved_spend(given: Given, states: tuple[StageState, ...]) -> Decimal:
    """Return what has been paid for stages that are not proved."""
    unproved = {state.name: state for state in states if state.proof != "proved"}
    served = (
        (part.price, _served(given, entry, part, states)) for entry, part in _parts(given.job.log)
    )
    return sum((price for price, stage in served if stage in unproved), Decimal(0))


def _served(given: Given, entry: Entry, part: Part, states: tuple[StageState, ...]) -> str | None:
    """Return the stage a part was bought for: as written, as wanted, or by the procedure."""
    if part.serves is not None:
        return part.serves
    want = given.job.wanted.get(part.wanted) if part.wanted else None
    if want is not None:
        return want.serves
    looked = (state.name for state in states if entry.procedure in state.stage.looked_for_in)
    return next(looked, None) if entry.procedure else None


def _purchase(given: Given, name: str, want: Wanted, proved: set[str]) -> Purchase:
    stages = given.library.stages
    before = stages[want.serves].after if want.serves in stages else (want.serves,)
    needed = all_before(stages, (*before, *want.after))
    waits = tuple(stage for stage in needed if stage not in proved)
    may_buy = not waits and given.job.given_up is None
    return Purchase(name, want, may_buy, waits, _purchase_why(given, want, waits))


def _purchase_why(given: Given, want: Wanted, waits: tuple[str, ...]) -> str:
    stage = titles_of(given, (want.serves,))
    if given.job.given_up is not None:
        return f"Not to be bought: the machine was given up on {given.job.given_up}."
    if not waits:
        return f"May be bought now: all that comes before {stage} has been shown."
    return f"It serves {stage}, so it waits for {titles_of(given, waits)}."


def _proof_why(
    given: Given, proof: Proof, place: int, proofs: Sequence[Proof], currency: str
) -> str:
    names = {each.name for each in proofs}
    lacking = [name for name in proof.after if name in names]
    ready = [each for each in proofs if names.isdisjoint(each.after)]
    cost = amount_of(proof.cost)
    costs = f"it costs about {money(cost, currency)}" if cost else "it costs time alone"
    ends = f", and {float(proof.ends_here * 100):g} of 100 machines end here"
    if lacking:
        words = f"Comes after {titles_of(given, lacking)}: {costs}"
    elif len(ready) == 1:
        words = f"Next, because everything else comes after it: {costs}"
    elif place == 0:
        words = f"Next, because beginning with it costs least in the long run: {costs}"
    else:
        words = f"Can be shown now too: {costs}"
    return f"{words}{ends if proof.ends_here else ''}."


def _money_why(given: Given, state: MoneyState, currency: str) -> str:
    def say(amount: Decimal) -> str:
        return money(amount, currency)

    total, worst = state.spent + state.expected, state.spent + state.high
    if given.job.given_up is not None:
        return f"Given up on {given.job.given_up}, with {say(state.spent)} spent."
    sums = f"{say(state.spent)} spent and about {say(state.expected)} to come make {say(total)}"
    if state.is_past_stop:
        over = say(total - state.most)
        return f"Stop: {sums}, which is {over} more than the {say(state.most)} it may cost."
    if worst > state.most:
        return (
            f"{sums} of the {say(state.most)} it may cost, but one time in ten it comes to "
            f"more than {say(worst)}."
        )
    return f"{sums} of the {say(state.most)} it may cost."
