"""The stylesheet's colours can be read, in light, in dark and on paper."""

from __future__ import annotations

import re

import pytest

from pullcord.source.places import site_templates

CSS = (site_templates() / "assets" / "chart.css").read_text(encoding="utf-8")
SCHEMES = {"light": '"default"', "dark": '"slate"', "print": "@media print"}


def colours(scheme: str) -> dict[str, str]:
    """Return the variables in force in a scheme, by name without prefix."""
    found: dict[str, str] = {}
    for name in ("light", scheme):
        start = CSS.index(SCHEMES[name])
        block = CSS[start : CSS.index("}", start)]
        found |= dict(re.findall(r"--pc-chart-([a-z-]+): (#[0-9a-f]{6});", block))
    return found


def luminance(colour: str) -> float:
    """Return the relative luminance of WCAG 2.2."""
    parts = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one: str, other: str) -> float:
    """Return the contrast ratio of WCAG 2.2: 1 to 21."""
    dark, light = sorted((luminance(one), luminance(other)))
    return (light + 0.05) / (dark + 0.05)


def test_the_formula_gives_the_standards_own_values() -> None:
    """Black on white is 21 to 1; #767676 on white just reaches 4.5 to 1 (WCAG 2.2, G18)."""
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#767676", "#ffffff") == pytest.approx(4.54, abs=0.01)


@pytest.mark.parametrize("scheme", SCHEMES)
@pytest.mark.parametrize("under", ["page", "fill", "cause-fill"])
def test_text_reaches_seven_to_one(scheme: str, under: str) -> None:
    """Enhanced contrast, WCAG 2.2 success criterion 1.4.6, on everything text stands on."""
    found = colours(scheme)
    assert contrast(found["text"], found[under]) >= 7


@pytest.mark.parametrize("scheme", SCHEMES)
@pytest.mark.parametrize("line", ["line", "focus"])
def test_lines_reach_three_to_one(scheme: str, line: str) -> None:
    """Outlines, arrows and the focus can be seen: success criterion 1.4.11."""
    found = colours(scheme)
    assert all(contrast(found[line], found[under]) >= 3 for under in ("page", "fill", "cause-fill"))


@pytest.mark.parametrize("scheme", SCHEMES)
@pytest.mark.parametrize("signal", ["danger", "warning", "caution"])
def test_the_bar_shows_in_its_triangle(scheme: str, signal: str) -> None:
    """The hazard symbol is more than a blot of colour."""
    found = colours(scheme)
    assert contrast(found[signal], found[f"{signal}-bar"]) >= 3


def test_print_is_black_on_white() -> None:
    """A printer without colour loses nothing."""
    assert {value for name, value in colours("print").items() if name != "focus"} == {
        "#000000",
        "#ffffff",
    }


def test_no_colour_stands_outside_the_variables() -> None:
    """Rules name variables only, so that a scheme changes everything."""
    rules = re.sub(r"--pc-chart-[a-z-]+: #[0-9a-f]{6};", "", CSS)
    assert re.findall(r"#[0-9a-fA-F]{3,8}\b|rgb|hsl", rules) == []


def test_no_line_is_thinner_than_one_and_a_half_pixels() -> None:
    """Lines show at arm's length."""
    widths = [float(width) for width in re.findall(r"stroke-width: ([0-9.]+)px", CSS)]
    assert min(widths) >= 1.5
