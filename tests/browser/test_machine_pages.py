"""The pages of a shed's machines, as a gloved thumb and an eye in poor light meet them."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Page

from tests.browser.gallery import Look
from tests.browser.tablet import OpenTablet
from tests.browser.test_pages import LOW_CONTRAST, SMALL_TARGETS, SMALL_TEXT, WIDE, address

READING = "machines/damson/no-spark.html"
PAGES = {
    "machine": "machines/damson.html",
    "unknown": "machines/medlar.html",
    "machines": "machines.html",
    "bench": "bench-tables.html",
    "procedure": READING,
}


@pytest.mark.parametrize("name", PAGES)
def test_every_target_is_big_enough(
    demo_site: Path, look: Look, held: dict[str, int], name: str
) -> None:
    """48 px and up, held upright and across."""
    page = look(address(demo_site, PAGES[name]), held)
    assert page.evaluate(SMALL_TARGETS, 48) == []


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("name", PAGES)
def test_text_is_large_and_stands_out(demo_site: Path, look: Look, name: str, scheme: str) -> None:
    """18 px and up, 7:1 and up (WCAG 2.2, 1.4.6), tables and verdicts too."""
    page = look(address(demo_site, PAGES[name]), scheme=scheme)
    assert page.evaluate(SMALL_TEXT, 18) == []
    assert page.evaluate(LOW_CONTRAST, 7) == []


@pytest.mark.parametrize("name", PAGES)
def test_a_page_reflows_at_four_times_its_size(demo_site: Path, look: Look, name: str) -> None:
    """WCAG 2.2, 1.4.10: at 320 px only drawings and wide tables slide, each in its own frame."""
    page = look(address(demo_site, PAGES[name]), {"width": 320, "height": 640})
    assert page.evaluate(WIDE) <= 0


def test_the_verdict_is_read_without_colour(demo_site: Path, look: Look) -> None:
    """Every row of every table has its own words, and a sign that is drawn."""
    rows = look(address(demo_site, READING)).evaluate(
        """() => [...document.querySelectorAll('.pc-band')].map(row => {
          const mark = row.querySelector('.pc-band__mark');
          return [row.children[1].textContent.replace(mark.textContent, '').trim(),
                  mark.textContent, mark.getBoundingClientRect().width];
        })"""
    )
    signs = {words: sign for words, sign, _ in rows}
    assert signs == {
        "outside": "✕", "too close to call": "?", "within": "✓", "either way": "="
    }  # fmt: skip
    assert all(width > 10 for *_, width in rows)


def test_the_two_pins_stand_out_and_say_which_probe(demo_site: Path, portrait: Page) -> None:
    """A heavier frame than their neighbours' and a word; in the middle of the step, in sight."""
    portrait.goto(address(demo_site, READING, "step-source-coil"))
    chart = portrait.locator("#step-source-coil .pc-pins")
    chart.scroll_into_view_if_needed()
    assert chart.locator(".pc-probe").all_text_contents() == ["1st probe", "2nd probe"]
    widths = chart.evaluate(
        """svg => [...svg.querySelectorAll('.pc-cell')].map(cell => [
          cell.classList.contains('pc-cell-probe'),
          parseFloat(getComputedStyle(cell.querySelector('.pc-frame')).strokeWidth)])"""
    )
    assert sum(is_probe for is_probe, _ in widths) == 2
    lit = min(width for is_probe, width in widths if is_probe)
    assert lit >= 3 * max(width for is_probe, width in widths if not is_probe)


def test_one_thumb_gets_from_a_symptom_to_a_machine_s_reading(
    demo_site: Path, open_tablet: OpenTablet
) -> None:
    """Home, procedure, machine, and the step says that machine's own figure; no script needed."""
    page = open_tablet(java_script_enabled=False)
    page.goto(address(demo_site, "index.html"))
    page.locator(".pc-entry[href$='no-spark.html']").tap()
    page.locator(".pc-versions a", has_text="Damson").tap()
    assert page.locator(".pc-for").inner_text() == "For one machine: Damson (LR-01), farm bike"
    step = page.locator("#step-trigger-coil")
    assert "from this machine's sheet" in step.inner_text()
    assert "33 ohm was read on this one." in step.inner_text()
