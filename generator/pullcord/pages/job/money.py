"""What a job has cost, will cost and may cost."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from pullcord.analysis.job.report import JobReport
from pullcord.drawing.money_plot import Amounts, MoneyWords, plot_money
from pullcord.drawing.plot import Plot
from pullcord.pages.job.words import say_money
from pullcord.pages.kit import Kit


@dataclass(frozen=True)
class MoneyView:
    """The money of a job, decided."""

    plot: Plot
    """The bar."""
    is_past_stop: bool
    why: str
    facts: tuple[tuple[str, str, str], ...]
    """Label, amount, and what else is to be said of it; the last may be empty."""


def money_view(kit: Kit, report: JobReport) -> MoneyView:
    """Return the money of a job: spent, likely still to come with its range, and the most."""
    words, money = kit.job, report.money

    def say(amount: Decimal) -> str:
        return say_money(amount, kit.settings.currency)

    low, high = money.spent + money.low, money.spent + money.high
    total = money.spent + money.expected
    between = words["money_range"].format(low=say(money.low), high=say(money.high))
    if money.low == money.high:
        between = ""
    return MoneyView(
        plot=plot_money(
            Amounts(money.most, money.spent, total, low, high),
            MoneyWords(
                title=words["money_bar"],
                summary=words["money_bar_says"].format(
                    spent=say(money.spent), expected=say(money.expected), total=say(total),
                    low=say(low), high=say(high), most=say(money.most),
                ),
                most=words["bar_most"].format(most=say(money.most)),
                spent=words["bar_spent"].format(spent=say(money.spent)),
                expected=words["bar_expected"].format(expected=say(money.expected)),
                spread=words["bar_spread"].format(low=say(low), high=say(high)),
            ),
            "money-bar",
        ),
        is_past_stop=money.is_past_stop,
        why=money.why,
        facts=(
            (words["money_spent"], say(money.spent), ""),
            (words["money_expected"], say(money.expected), between),
            (words["money_total"], say(total), ""),
            (words["money_most"], say(money.most), ""),
            (words["money_risk"], say(money.at_risk), ""),
        ),
    )  # fmt: skip
