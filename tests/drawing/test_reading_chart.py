"""Readings over time are drawn to scale, and nothing on the drawing hangs on a colour."""

from __future__ import annotations

from decimal import Decimal
from itertools import pairwise
from typing import Any
from xml.etree import ElementTree

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pullcord.analysis.job.report import Point, Series
from pullcord.drawing.money_plot import Amounts, MoneyWords, plot_money
from pullcord.drawing.plot import Plot, Rect, hatch
from pullcord.drawing.plot_scale import (
    BETWEEN_PX,
    day_places,
    days_with_room,
    round_ticks,
    scale_for,
)
from pullcord.drawing.reading_chart import render_money, render_readings
from pullcord.drawing.reading_key import KeyWords
from pullcord.drawing.reading_plot import WIDTH_PX, ReadingWords, plot_readings
from pullcord.readings.interval import ONLY_OPEN, OPEN, Cut, Interval, closed
from pullcord.readings.unit import UNITS

SVG = "{http://www.w3.org/2000/svg}"
WORDS = ReadingWords(
    title="Source coil",
    summary="Three readings.",
    over_range="OL",
    key=KeyWords(
        limits="what a good one reads",
        doubt="in doubt",
        verdicts={
            "within": "within",
            "outside": "outside",
            "too close": "too close to call",
            "not judged": "not judged",
        },
    ),
)
MONEY_WORDS = MoneyWords("Money", "In words.", "at most", "spent", "to come", "range")


def point(day: str, amount: float | None, half: float = 5.0, verdict: Any = "within") -> Point:
    """Make a reading."""
    return Point(day, 0, amount, "", half, verdict)


def series(*points: Point, limits: Interval | None = None, unit: str = "ohm") -> Series:
    """Make a series."""
    return Series("coil", "Source coil", UNITS[unit], limits, points, "")


THREE = series(
    point("2026-03-01", 210.0),
    point("2026-03-11", 250.0),
    point("2026-03-31", 301.0, verdict="outside"),
    limits=closed(Decimal(200), Decimal(300)),
)


def centres(plot: Plot) -> list[tuple[float, float]]:
    """Return the middle of every reading's mark, without those of the key."""
    middles = []
    for mark in plot.marks:
        xs, ys = zip(*mark.points, strict=True)
        middles.append(((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2))
    axis = max(
        stroke.y1 for stroke in plot.strokes if stroke.role == "axis" and stroke.y1 == stroke.y2
    )
    return [middle for middle in middles if middle[1] <= axis]


def words_on(plot: Plot) -> list[str]:
    """Return every text on a drawing."""
    return [text.text for text in plot.texts]


def test_days_are_to_scale() -> None:
    """Twenty days are drawn twice as long as ten."""
    (first, _), (second, _), (third, _) = centres(plot_readings(THREE, WORDS, "p"))
    assert third - second == pytest.approx(2 * (second - first))


def test_amounts_are_to_scale_and_rise_upward() -> None:
    """40 ohm and 51 ohm stand as 40 to 51, and more is higher."""
    (_, first), (_, second), (_, third) = centres(plot_readings(THREE, WORDS, "p"))
    assert first > second > third
    assert (first - second) / (second - third) == pytest.approx(40 / 51)


def test_the_band_lies_between_the_limits() -> None:
    """A reading halfway between the limits stands in the middle of the band."""
    plot = plot_readings(THREE, WORDS, "p")
    band = next(rect for rect in plot.rects if rect.role == "band")
    assert centres(plot)[1][1] == pytest.approx(band.y + band.height / 2)
    edges = [stroke.y1 for stroke in plot.strokes if stroke.role == "limit"][:2]
    assert sorted(edges) == pytest.approx([band.y, band.y + band.height])


def test_a_bar_is_as_long_as_the_meter_leaves_in_doubt() -> None:
    """±40 ohm around 250 ohm reaches from 210 to 290; a bar hidden by its mark is left out."""
    wide = series(point("2026-03-01", 210.0, 0.1), point("2026-03-11", 250.0, 40.0))
    plot = plot_readings(wide, WORDS, "p")
    (bar,) = [s for s in plot.strokes if s.role == "bar" and s.x1 == s.x2][:1]
    low, middle = (y for _, y in centres(plot))
    assert bar.y1 == pytest.approx(low)
    assert middle - bar.y2 == pytest.approx(bar.y1 - middle)
    assert "in doubt" in words_on(plot)


def test_no_bar_is_explained_where_none_is_drawn() -> None:
    """The key names what is on the drawing and nothing else."""
    sharp = series(point("2026-03-01", 210.0, 0.1), point("2026-03-11", 290.0, 0.1))
    plot = plot_readings(sharp, WORDS, "p")
    assert [stroke for stroke in plot.strokes if stroke.role == "bar"] == []
    assert words_on(plot)[-1:] == ["within"]
    assert not {"in doubt", "what a good one reads", "OL"} & set(words_on(plot))


@pytest.mark.parametrize(
    ("limits", "is_inside"),
    [
        pytest.param(Interval(Cut(Decimal(1), 1), Cut(OPEN, 1)), True, id="over 1"),
        pytest.param(ONLY_OPEN, True, id="open only"),
        pytest.param(closed(Decimal(1), Decimal(5)), False, id="1 to 5"),
    ],
)
def test_over_range_has_a_row_above_the_scale(limits: Interval, is_inside: bool) -> None:
    """Named at the side; inside the band only where open is good."""
    plot = plot_readings(
        series(point("2026-03-01", 2.0), point("2026-03-11", None), limits=limits), WORDS, "p"
    )
    (_, number), (x, over) = centres(plot)
    assert over < number
    bands = [rect for rect in plot.rects if rect.role == "band"]
    held = [b for b in bands if b.y <= over <= b.y + b.height and b.x <= x <= b.x + b.width]
    assert bool(held) == is_inside
    assert "OL" in words_on(plot)


def test_no_line_leads_to_over_range() -> None:
    """Nobody knows how far it is to open."""
    gap = series(point("2026-03-01", 2.0), point("2026-03-11", None), point("2026-03-21", 3.0))
    assert [s for s in plot_readings(gap, WORDS, "p").strokes if s.role == "trail"] == []
    trail = [s for s in plot_readings(THREE, WORDS, "p").strokes if s.role == "trail"]
    assert len(trail) == 2


def test_every_verdict_has_a_shape_of_its_own() -> None:
    """Told apart by outline and filling alone, and named in the key."""
    verdicts = ("within", "outside", "too close", "not judged")
    points = [point(f"2026-03-{n:02}", 10.0 + n, verdict=v) for n, v in enumerate(verdicts, 1)]
    plot = plot_readings(series(*points), WORDS, "p")
    roles = [mark.role for mark in plot.marks[:4]]
    corners = [len(mark.points) for mark in plot.marks[:4]]
    assert len(set(zip(roles, corners, strict=True))) == 4
    assert corners == [24, 12, 4, 24]
    assert [mark.role for mark in plot.marks[4:]] == roles
    assert set(WORDS.key.verdicts.values()) <= set(words_on(plot))


@pytest.mark.parametrize(
    "held",
    [
        pytest.param(series(), id="empty"),
        pytest.param(series(point("2026-03-01", 0.0, 0.0)), id="nothing at all"),
        pytest.param(series(point("2026-03-01", None)), id="over-range alone"),
        pytest.param(
            series(point("2026-03-01", 1e9, 1.0), point("2026-03-02", 1e-6, 0.0)), id="far"
        ),
        pytest.param(
            series(*(point(f"2026-03-01 {h:02}:00", 5.0) for h in range(24))), id="one evening"
        ),
        pytest.param(series(point("2026-03-01", -10.0), unit="°C"), id="below zero"),
        pytest.param(series(point("0001-01-01", 1.0), point("9999-12-31", 2.0)), id="ages"),
    ],
)
def test_everything_stays_on_the_drawing(held: Series) -> None:
    """Marks, lines and words lie within it, and every reading has its mark."""
    plot = plot_readings(held, WORDS, "p")
    assert len(centres(plot)) == len(held.points)
    xs = [x for mark in plot.marks for x, _ in mark.points]
    xs += [x for text in plot.texts for x in (text.x, text.x + text.width)]
    ys = [y for mark in plot.marks for _, y in mark.points] + [text.y for text in plot.texts]
    assert all(-0.01 <= x <= WIDTH_PX + 0.01 for x in xs)
    assert all(0 <= y <= plot.height for y in ys)


DAYS = st.lists(st.dates(), min_size=1, max_size=60).map(
    lambda days: [d.isoformat() for d in sorted(days)]
)


@given(DAYS)
@settings(max_examples=100, deadline=None, print_blob=True)
def test_readings_stand_in_their_order_and_apart(days: list[str]) -> None:
    """However many fall together, none hides another and none leaves the scale."""
    places = day_places(days, 10, 600)
    apart = min(BETWEEN_PX, 590 / max(1, len(days) - 1))
    assert all(10 - 1e-6 <= place <= 600 + 1e-6 for place in places)
    assert all(two - one >= apart - 1e-6 for one, two in pairwise(places))


@given(DAYS)
@settings(max_examples=100, deadline=None, print_blob=True)
def test_days_are_named_without_touching(days: list[str]) -> None:
    """The last day is always named; two names never overlap, and no day is named twice."""
    places = day_places(days, 10, 600)
    named = days_with_room(places, days, 80, 10)
    assert days[named[-1]] == days[-1]
    assert all(places[two] - places[one] >= 90 for one, two in pairwise(named))
    assert len({days[number] for number in named}) == len(named)


FIGURES = st.floats(-1e6, 1e6, allow_nan=False, allow_subnormal=False)


@given(st.lists(FIGURES, min_size=1, max_size=20))
@settings(max_examples=100, deadline=None, print_blob=True)
def test_a_scale_has_a_few_round_figures(values: list[float]) -> None:
    """Two to seven of them, evenly apart: one, two or five steps of a power of ten."""
    scale = scale_for(values, -1e7, 100, 0)
    assert all(0 <= scale.at(value) <= 100 for value in values)
    ticks = round_ticks(scale)
    assert 2 <= len(ticks) <= 7
    step = ticks[1] - ticks[0]
    leading = float(f"{step:.3e}".split("e")[0])
    assert min(abs(leading - each) for each in (1, 2, 5, 10)) < 0.02


def test_hatching_stays_within_its_area() -> None:
    """Every line begins and ends on the edge of what it fills."""
    area = Rect("band", 10, 20, 100, 40)
    lines = list(hatch(area, 13))
    assert len(lines) > 5
    for line in lines:
        assert 10 <= line.x1 <= line.x2 <= 110
        assert 20 <= line.y2 <= line.y1 <= 60


def money(spent: str, total: str, low: str, high: str, most: str = "100") -> Plot:
    """Draw the money of a job."""
    amounts = Amounts(*(Decimal(each) for each in (most, spent, total, low, high)))
    return plot_money(amounts, MONEY_WORDS, "m")


def test_money_is_to_scale() -> None:
    """Spent 25 and 50 to come against 100: the limit is four times as far as what is spent."""
    plot = money("25", "75", "60", "90")
    spent, expected = (
        next(r for r in plot.rects if r.role == role) for role in ("spent", "expected")
    )
    limit = next(stroke.x1 for stroke in plot.strokes if stroke.role == "most")
    assert expected.width == pytest.approx(2 * spent.width)
    assert limit - spent.x == pytest.approx(4 * spent.width)


@pytest.mark.parametrize(
    ("low", "high", "has_range"),
    [pytest.param("60", "90", True, id="a range"), pytest.param("75", "75", False, id="none")],
)
def test_the_range_is_drawn_where_there_is_one(low: str, high: str, has_range: bool) -> None:
    """A line with ends from low to high, explained in the key."""
    plot = money("25", "75", low, high)
    assert any(stroke.role == "bar" for stroke in plot.strokes) == has_range
    assert ("range" in words_on(plot)) == has_range


@pytest.mark.parametrize(
    "amounts",
    [
        pytest.param(("0", "0", "0", "0", "0"), id="nothing"),
        pytest.param(("500", "900", "800", "1200", "100"), id="far past the limit"),
        pytest.param(("0", "0", "0", "0", "100000"), id="nothing spent"),
    ],
)
def test_money_stays_on_the_drawing(amounts: tuple[str, str, str, str, str]) -> None:
    """Also when the limit is passed many times over."""
    plot = money(*amounts)
    edges = [rect.x + rect.width for rect in plot.rects] + [s.x2 for s in plot.strokes]
    edges += [text.x + text.width for text in plot.texts]
    assert max(edges) <= plot.width
    assert min(text.x for text in plot.texts) >= 0


@pytest.mark.parametrize("title", ["Source coil", "</svg><script>x</script>\"'&"])
def test_the_svg_names_itself_and_escapes_its_words(title: str) -> None:
    """One picture with title and description; text from a file never becomes markup."""
    words = ReadingWords(title, title, "OL", WORDS.key)
    root = ElementTree.fromstring(  # noqa: S314 (our own)
        render_readings(THREE, words, "reading-coil")
    )
    assert root.get("role") == "img"
    assert root.get("aria-labelledby") == "reading-coil-title"
    assert root.get("aria-describedby") == "reading-coil-desc"
    assert [root.findtext(f"{SVG}title"), root.findtext(f"{SVG}desc")] == [title, title]
    assert root.find(f".//{SVG}script") is None
    ids = [each.get("id") for each in root.iter() if each.get("id")]
    assert len(ids) == len(set(ids)) == 3


def test_the_same_input_gives_the_same_bytes() -> None:
    """Nothing on it depends on the hour or on the order of a set."""
    assert render_readings(THREE, WORDS, "p") == render_readings(THREE, WORDS, "p")
    amounts = Amounts(*(Decimal(each) for each in (100, 25, 75, 60, 90)))
    assert render_money(amounts, MONEY_WORDS, "m") == render_money(amounts, MONEY_WORDS, "m")
