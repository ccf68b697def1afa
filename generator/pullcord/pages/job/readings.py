"""Every reading of a job over time: a drawing, and the same in words."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal

from pullcord.analysis.job.report import Point, Series
from pullcord.drawing.plot import Plot
from pullcord.drawing.reading_key import KeyWords
from pullcord.drawing.reading_plot import ReadingWords, plot_readings
from pullcord.pages.kit import Kit
from pullcord.readings.amount import number_text
from pullcord.readings.interval import ABSOLUTE_ZERO, interval_words

VERDICT_KEYS = {
    "within": "within",
    "outside": "outside",
    "too close": "close",
    "not judged": "not_judged",
}
"""The key of each verdict in the texts."""


@dataclass(frozen=True)
class PointView:
    """One reading in words."""

    day: str
    text: str
    key: str
    """The verdict's key in the texts."""
    mark: str
    """The sign it has on the drawing."""
    verdict: str


@dataclass(frozen=True)
class SeriesView:
    """The readings of one value."""

    id: str
    title: str
    limits: str
    drift: str
    """One sentence; empty when nothing drifts."""
    plot: Plot
    points: tuple[PointView, ...]


def series_views(kit: Kit, series: tuple[Series, ...]) -> tuple[SeriesView, ...]:
    """Return every series, those that drift first."""
    return tuple(_series(kit.job, each) for each in sorted(series, key=lambda one: not one.drift))


def _series(words: Mapping[str, str], series: Series) -> SeriesView:
    id_ = f"reading-{series.name.replace('.', '-')}"
    limits = _limits(words, series)
    points = tuple(_point(words, point) for point in series.points)
    said = ReadingWords(
        title=series.title,
        summary=" ".join((_summary(words, series, limits, points), series.drift)).strip(),
        over_range=words["over_range"],
        key=KeyWords(
            limits=words["key_limits"],
            doubt=words["key_doubt"],
            verdicts={verdict: words[f"verdict_{key}"] for verdict, key in VERDICT_KEYS.items()},
        ),
    )
    return SeriesView(
        id=id_,
        title=series.title,
        limits=limits,
        drift=series.drift,
        plot=plot_readings(series, said, f"{id_}-chart"),
        points=points,
    )


def _limits(words: Mapping[str, str], series: Series) -> str:
    if series.limits is None:
        return words["reading_no_limits"]
    floor = ABSOLUTE_ZERO if series.unit.quantity == "temperature" else Decimal(0)
    said = interval_words(
        series.limits, floor, lambda number: f"{number_text(number)} {series.unit.symbol}".strip()
    )
    return words["reading_limits"].format(limits=said)


def _point(words: Mapping[str, str], point: Point) -> PointView:
    key = VERDICT_KEYS[point.verdict]
    return PointView(point.date, point.text, key, words[f"mark_{key}"], words[f"verdict_{key}"])


def _summary(
    words: Mapping[str, str], series: Series, limits: str, points: tuple[PointView, ...]
) -> str:
    lines = (
        words["reading_line"].format(day=each.day, text=each.text, verdict=each.verdict)
        for each in points
    )
    key = "reading_summary" if len(points) > 1 else "reading_summary_one"
    return words[key].format(
        count=words["reading_count"].format(count=len(points)),
        first=series.points[0].date[:10] if points else "",
        last=series.points[-1].date[:10] if points else "",
        limits=limits,
        readings="; ".join(lines),
    )
