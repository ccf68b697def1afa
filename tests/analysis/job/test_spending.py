"""What to prove and buy next, what it comes to, and when to stop."""

from __future__ import annotations

from decimal import Decimal

import pytest

from pullcord.analysis.job.read import read_job_report
from pullcord.analysis.job.report import JobReport
from tests.analysis.job.making import HEAD, RUNS, SAFE, SPARKS, TIGHT, make_job, make_library

WANTED = """\
wanted:
  chain: {title: Drive chain, price: 32, serves: drives}
  plug: {title: Spark plug, price: 5.50, serves: spark-proved}
  tap-seal: {title: Tap seal, price: 2.25, serves: fuel-proved}
  coil: {title: Source coil, price: 39.90, serves: spark-proved}
"""


def report(*log: str, head: str = HEAD, **changes) -> JobReport:
    """Return the report of a job in the small shed."""
    job = make_job(*log, head=head)
    return read_job_report(job, make_library(job, **changes))


def test_the_expected_total_of_a_hand_worked_job() -> None:
    """Machine safe, plug gap answered `no spark`, petrol not looked at yet, a chain wanted.

    Spark: `no spark` rules the plug out, which leaves unit (odds 1) and coil (odds 2), and beside
    the causes nothing else leads on from there:
        1/3 x 60.00 + 2/3 x 40.00 = 20.00 + 26.666... = 46.67
    Fuel: tap (odds 3), hose (odds 1), and `done`, which nobody gave odds and so has those of an
    average cause, (3 + 1) / 2 = 2; together 6:
        3/6 x 12.00 + 1/6 x 4.00 + 2/6 x 0 = 6.00 + 0.666... = 6.67
    Idle: the jet needs no part: 0. The chain: 32.00.
    Together 46.67 + 6.67 + 0 + 32.00 = 85.34.

    Range: spark 60 or 40 (1/3, 2/3), fuel 12, 4 or 0 (3/6, 1/6, 2/6), the chain 32 for sure:
        72 (2/3 x 2/6 = 4/18)  76 (2/3 x 1/6 = 2/18)  84 (2/3 x 3/6 = 6/18)
        92 (1/3 x 2/6 = 2/18)  96 (1/3 x 1/6 = 1/18)  104 (1/3 x 3/6 = 3/18)
    The first tenth ends within 72 (0.22), nine tenths within 104 (up to 96 it is 15/18 = 0.83).
    Spent: 10 before the log, a lead for 3.40. At risk if the next proof fails: its 6.67 (fuel, the
    cheaper one to begin with: 5 % for 6.67 is worth more than 10 % for 46.67), and the lead, which
    was bought for a spark that has not been proved.
    """
    found = report(
        SAFE,
        "{date: 2026-02-02, procedure: spark, step: gap, answer: no spark, minutes: 30,"
        " parts: [{title: Lead, price: 3.40}]}",
        head=HEAD
        + "spent-before: 10\nhours-before: 2.5\nwanted:\n"
        + "  chain: {title: Chain, price: 32, serves: drives}\n",
    )
    money = found.money
    assert [(each.stage, str(each.expected_cost)) for each in found.proofs] == [
        ("fuel-proved", "6.67"),
        ("spark-proved", "46.67"),
        ("runs", "0.00"),
        ("drives", "32.00"),
    ]
    assert [str(x) for x in (money.expected, money.low, money.high)] == ["85.34", "72.00", "104.00"]
    assert str(money.spent) == "13.40"
    assert str(money.at_risk) == "10.07"
    assert money.hours == 3.0
    assert not money.is_past_stop
    assert money.why == "13.40 spent and about 85.34 to come make 98.74 of the 200.00 it may cost."


def test_every_amount_is_exact() -> None:
    """Ten dimes are a unit: amounts are decimals with two places, never floating figures."""
    parts = "parts: [{title: P, price: 0.10}]"
    money = report(SAFE, *[f"{{date: 2026-02-02, {parts}}}"] * 10).money
    assert str(money.spent) == "1.00"
    for amount in (money.most, money.spent, money.expected, money.low, money.high, money.at_risk):
        assert isinstance(amount, Decimal)
        assert amount == amount.quantize(Decimal("0.01"))


STOPS = {
    "well below": (200, False, "of the 200.00 it may cost."),
    "bad luck passes it": (100, False, "but one time in ten it comes to more than 104.00."),
    "just at the line": ("85.34", False, "make 85.34 of the 85.34"),
    "a cent above": (
        "85.33",
        True,
        "Stop: 0.00 spent and about 85.34 to come make 85.34, which is",
    ),
    "far above": (20, True, "which is 65.34 more than the 20.00 it may cost."),
}


@pytest.mark.parametrize(("most", "is_past", "words"), STOPS.values(), ids=STOPS)
def test_the_stop_line_says_so_in_plain_words(most, is_past, words) -> None:
    """When the likely cost to ready passes what it may cost, the sentence begins with Stop."""
    head = HEAD.replace("most: 200", f"most: {most}") + (
        "wanted:\n  chain: {title: Chain, price: 32, serves: drives}\n"
    )
    money = report(
        SAFE, "{date: 2026-02-02, procedure: spark, step: gap, answer: no spark}", head=head
    ).money
    assert money.is_past_stop is is_past
    assert words in money.why
    assert money.why.startswith("Stop:") is is_past


def test_the_shops_own_money_stands_in_the_sentences() -> None:
    """Whoever prints the report says what the money is called."""
    job = make_job(SAFE)
    found = read_job_report(job, make_library(job), currency="crowns")
    assert "200.00 crowns it may cost" in found.money.why
    assert "about 6.67 crowns" in found.proofs[0].why


COSTS = {
    "before anything is asked": (
        # unit 1, coil 2, plug 5, done as an average cause (8 / 3): 60 + 2 x 40 + 5 x 5 = 165 for
        # a sum of odds of 8 + 8/3 = 32/3, so 15.47.
        [], "", "15.47",
    ),
    "the answers so far count": (
        ["{date: 2026-02-02, procedure: spark, step: gap, answer: no spark}"], "", "46.67",
    ),
    "a reading is an answer": (
        ["{date: 2026-02-02, procedure: spark, step: coil, reading: 250 ohm}"], "", "60.00",
    ),
    "a cause that was found costs its part": (
        ["{date: 2026-02-02, procedure: spark, cause: coil}"], "", "40.00",
    ),
    "unless the owner wrote what is wanted": (
        ["{date: 2026-02-02, procedure: spark, cause: coil}"],
        "wanted:\n  coil: {title: Coil, price: 35, serves: spark-proved}\n", "35.00",
    ),
    "a cause put right costs no more": (
        ["{date: 2026-02-02, procedure: spark, cause: coil, did: New coil.}"], "", "0.00",
    ),
    "what was wanted and is bought": (
        [
            "{date: 2026-02-02, procedure: spark, cause: coil, did: New coil.,"
            " parts: [{title: Coil, price: 33, wanted: coil}]}",
        ],
        "wanted:\n  coil: {title: Coil, price: 35, serves: spark-proved}\n", "0.00",
    ),
    "begun anew after a hand-over": (
        ["{date: 2026-02-02, procedure: idle, step: start-it, answer: never starts}"], "", "15.47",
    ),
    "passed, though a lead is on": (
        [SPARKS, "{date: 2026-02-05, fits: test-lead}"], "", "0.00",
    ),
}  # fmt: skip


@pytest.mark.parametrize(("log", "more", "cost"), COSTS.values(), ids=COSTS)
def test_a_proof_costs_what_its_causes_may_cost(log, more, cost) -> None:
    """What is wanted for sure, and the mean of the causes' parts by what the log has answered."""
    found = report(SAFE, *log, head=HEAD + more)
    assert {each.stage: str(each.expected_cost) for each in found.proofs}["spark-proved"] == cost


def test_other_jobs_of_the_shop_change_the_odds() -> None:
    """Where the shop's own log says that it is always the tap, a tap is what it will cost."""
    tap = "{date: 2026-01-02, procedure: leak, cause: tap, did: New tap.}"
    others = [
        make_job(tap, head=HEAD.replace("old-bike-spring", f"job-{place}")) for place in range(9)
    ]
    job = make_job(SAFE)
    alone = read_job_report(job, make_library(job)).proofs[0]
    among = read_job_report(job, make_library(job, *others)).proofs[0]
    # Three outcomes weigh as three jobs: (3 x 1/2 + 9) / 12 x 12 + (3 x 1/6) / 12 x 4 = 10.67.
    assert (alone.stage, str(alone.expected_cost)) == ("fuel-proved", "6.67")
    assert (among.stage, str(among.expected_cost)) == ("spark-proved", "15.47")
    fuel = read_job_report(job, make_library(job, *others)).proofs[1]
    assert str(fuel.expected_cost) == "10.67"


BUYS = {
    "nothing is proved": ([], [], ["tap-seal", "plug", "coil", "chain"]),
    "safe to work on": ([SAFE], ["tap-seal", "plug", "coil"], ["chain"]),
    "spark proved": ([SAFE, SPARKS], ["plug", "coil", "tap-seal"], ["chain"]),
    "runs, but it may leak": (
        [SAFE, SPARKS, RUNS], ["plug", "coil", "tap-seal"], ["chain"],
    ),
    "runs on its own parts": (
        [SAFE, SPARKS, TIGHT, RUNS], ["tap-seal", "plug", "coil", "chain"], [],
    ),
    "runs, with a bypass on": (
        [SAFE, SPARKS, TIGHT, RUNS, "{date: 2026-02-09, fits: bypass}"],
        ["tap-seal", "plug", "coil"], ["chain"],
    ),
    "ran, and then it leaked": (
        [SAFE, SPARKS, TIGHT, RUNS, "{date: 2026-02-09, procedure: leak, cause: hose}"],
        ["plug", "coil", "tap-seal"], ["chain"],
    ),
}  # fmt: skip


@pytest.mark.parametrize(("log", "now", "later"), BUYS.values(), ids=BUYS)
def test_what_may_be_bought_comes_first_and_the_cheap_before_the_dear(log, now, later) -> None:
    """In each group the next proof's parts come first, the cheaper of them before the dearer."""
    found = report(*log, head=HEAD + WANTED).purchases
    assert [each.name for each in found if each.may_buy] == now
    assert [each.name for each in found if not each.may_buy] == later
    assert [each.name for each in found] == now + later


def test_a_purchase_that_waits_names_what_for() -> None:
    """Everything that must be proved first, in the order of the stages, and a sentence of it."""
    (chain,) = [
        each for each in report(SAFE, SPARKS, head=HEAD + WANTED).purchases if not each.may_buy
    ]
    assert chain.waits_for == ("fuel-proved", "runs")
    assert chain.why == "It serves “Drives”, so it waits for “Fuel proved” and “Runs”."


def test_a_part_may_wait_for_more_than_its_stage_does() -> None:
    """`after` of the part itself, and all that comes before it, must be proved too."""
    more = "wanted:\n  plug: {title: Plug, price: 5, serves: spark-proved, after: fuel-proved}\n"
    (plug,) = report(SAFE, head=HEAD + more).purchases
    assert (plug.may_buy, plug.waits_for) == (False, ("fuel-proved",))
    (plug,) = report(SAFE, TIGHT, head=HEAD + more).purchases
    assert plug.may_buy


def test_nothing_is_bought_for_a_machine_given_up() -> None:
    """It was decided; the report repeats it and sends nobody to buy or to check anything."""
    found = report(SAFE, head=HEAD + "given-up: 2026-03-01\n" + WANTED)
    assert not any(each.may_buy for each in found.purchases)
    assert found.next_checks == ()
    assert found.money.why == "Given up on 2026-03-01, with 0.00 spent."


WHYS = {
    "everything waits for it": (
        [], "safe", "Next, because everything else comes after it: it costs time alone.",
    ),
    "the first of several": (
        [SAFE], "fuel-proved",
        "Next, because beginning with it costs least in the long run: it costs about 6.67, and 5 "
        "of 100 machines end here.",
    ),
    "another that can be shown": (
        [SAFE], "spark-proved",
        "Can be shown now too: it costs about 15.47, and 10 of 100 machines end here.",
    ),
    "one that waits": (
        [SAFE], "runs",
        "Comes after “Spark proved” and “Fuel proved”: it costs time alone, and 20 of 100 machines "
        "end here.",
    ),
}  # fmt: skip


@pytest.mark.parametrize(("log", "stage", "why"), WHYS.values(), ids=WHYS)
def test_the_order_of_proofs_is_explained(log, stage, why) -> None:
    """One sentence an item."""
    assert {each.stage: each.why for each in report(*log).proofs}[stage] == why
