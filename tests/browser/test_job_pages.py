"""The pages of a shed's jobs, as a gloved thumb and an eye in poor light meet them."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.browser.gallery import Look
from tests.browser.tablet import OpenTablet
from tests.browser.test_pages import LOW_CONTRAST, SMALL_TARGETS, SMALL_TEXT, WIDE, address
from tests.browser.test_walk_looks import BY_SCHEME, faults

PAGES = {
    "shed": "jobs.html",
    "unsafe": "jobs/damson-spring.html",
    "drifting": "jobs/quince-lights.html",
    "past the stop line": "jobs/medlar-pump.html",
}
SMALL_TABLETS = {
    "upright": {"width": 768, "height": 1024},
    "across": {"width": 1024, "height": 768},
}

# Type on a drawing shrinks with it; what is read is its size times the drawing's scale.
DRAWN_TYPE = """() => [...document.querySelectorAll('.pc-plot')].map(svg => {
  const scale = svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
  const sizes = [...svg.querySelectorAll('text')].map(t => t.getAttribute('font-size'));
  return scale * Math.min(...sizes);
})"""
OUTSIDE = """() => [...document.querySelectorAll('.pc-plot')].flatMap(svg => {
  const own = svg.getBoundingClientRect();
  return [...svg.querySelectorAll('text')].filter(text => {
    const box = text.getBoundingClientRect();
    return box.left < own.left - 1 || box.right > own.right + 1 || box.bottom > own.bottom + 1;
  }).map(text => text.textContent);
})"""


@pytest.mark.parametrize("size", SMALL_TABLETS.values(), ids=SMALL_TABLETS)
@pytest.mark.parametrize("name", PAGES)
def test_a_small_tablet_shows_all_of_it(
    demo_site: Path, look: Look, name: str, size: dict[str, int]
) -> None:
    """768 px across: nothing slides sideways, drawings neither, and every target is 48 px high."""
    page = look(address(demo_site, PAGES[name]), size)
    assert page.evaluate(WIDE) <= 0
    assert page.evaluate(SMALL_TARGETS, 48) == []
    slides = (
        "[...document.querySelectorAll('.pc-plot-scroll')].map(e => e.scrollWidth - e.clientWidth)"
    )
    assert max(page.evaluate(slides), default=0) <= 0


@pytest.mark.parametrize("scheme", BY_SCHEME)
@pytest.mark.parametrize("name", PAGES)
def test_text_is_large_and_stands_out(demo_site: Path, look: Look, name: str, scheme: str) -> None:
    """18 px and up, 7:1 and up (WCAG 2.2, 1.4.6), and AA by axe-core; in the dark, its colours."""
    page = look(address(demo_site, PAGES[name]), scheme=scheme)
    assert page.evaluate(SMALL_TEXT, 18) == []
    assert page.evaluate(LOW_CONTRAST, 7) == []
    assert faults(page, BY_SCHEME[scheme]) == []


@pytest.mark.parametrize("name", PAGES)
def test_a_page_reflows_at_four_times_its_size(demo_site: Path, look: Look, name: str) -> None:
    """WCAG 2.2, 1.4.10: at 320 px only drawings slide, each in its own frame."""
    page = look(address(demo_site, PAGES[name]), {"width": 320, "height": 640})
    assert page.evaluate(WIDE) <= 0


@pytest.mark.parametrize("name", ["unsafe", "drifting"])
def test_drawings_are_readable(
    demo_site: Path, look: Look, held: dict[str, int], name: str
) -> None:
    """Type of 16 px, and every word lies on its drawing."""
    page = look(address(demo_site, PAGES[name]), held)
    sizes = page.evaluate(DRAWN_TYPE)
    assert len(sizes) >= 4
    assert min(sizes) >= 15.9
    assert page.evaluate(OUTSIDE) == []


@pytest.mark.parametrize("size", SMALL_TABLETS.values(), ids=SMALL_TABLETS)
def test_what_was_left_unsafe_is_seen_without_sliding(
    demo_site: Path, look: Look, size: dict[str, int]
) -> None:
    """The box with its first sentence stands on the first screen, above every check."""
    page = look(address(demo_site, PAGES["unsafe"]), size)
    first = page.locator(".pc-left__before li").first.bounding_box()
    check = page.locator("#next .pc-way").first.bounding_box()
    assert first
    assert check
    assert first["y"] + first["height"] <= size["height"]
    assert first["y"] < check["y"]


def test_one_gets_from_home_to_tonights_step_and_back(
    demo_site: Path, open_tablet: OpenTablet
) -> None:
    """Without scripts: home, the job, the step on this machine's page, Back."""
    page = open_tablet(java_script_enabled=False)
    page.goto(address(demo_site, "index.html"))
    page.locator("#jobs .pc-way", has_text="Quince").tap()
    page.wait_for_url("**/jobs/quince-lights.html")
    job = page.url
    page.locator("#next .pc-way").first.tap()
    page.wait_for_url("**/machines/quince/no-spark.html#step-air-gap")
    assert page.locator("#step-air-gap").is_visible()
    page.go_back()
    assert page.url == job


def test_a_part_number_is_found(demo_site: Path, portrait: Page) -> None:
    """The search leads to the job whose part it is."""
    portrait.goto(address(demo_site, "index.html"))
    portrait.get_by_role("searchbox").press_sequentially("LR-C428-78")
    hit = portrait.locator("a.pc-hit-link:visible").first
    expect(hit).to_be_visible()
    assert "jobs/damson-spring.html#buy" in (hit.get_attribute("href") or "")


def test_the_binder_holds_the_jobs(demo_site: Path, open_tablet: OpenTablet) -> None:
    """In the one file too, the next check leads to its step."""
    page = open_tablet(java_script_enabled=False)
    page.goto(address(demo_site, "binder.html"))
    link = page.locator("#jobs-quince-lights #jobs-quince-lights--next a.pc-way").first
    assert link.get_attribute("href") == "#no-spark--step-air-gap"
    assert page.locator("#no-spark--step-air-gap").count() == 1
