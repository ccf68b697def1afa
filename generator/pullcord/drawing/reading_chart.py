"""The readings of one value over time, and money against its limit, as SVG elements."""

from __future__ import annotations

from pathlib import Path

from pullcord.analysis.job.report import Series
from pullcord.drawing.money_plot import Amounts, MoneyWords, plot_money
from pullcord.drawing.plot_svg import render_plot
from pullcord.drawing.reading_plot import ReadingWords, plot_readings


def render_readings(
    series: Series, words: ReadingWords, id_: str, template_dirs: tuple[Path, ...] = ()
) -> str:
    """Return the chart of a series. Raises PullcordError for a template that cannot be used."""
    return render_plot(plot_readings(series, words, id_), template_dirs)


def render_money(
    amounts: Amounts, words: MoneyWords, id_: str, template_dirs: tuple[Path, ...] = ()
) -> str:
    """Return the bar of a job's money. Raises PullcordError as above."""
    return render_plot(plot_money(amounts, words, id_), template_dirs)
