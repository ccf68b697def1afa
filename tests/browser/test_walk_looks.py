"""The walk as a gloved thumb and a screen reader meet it: sizes, contrast, WCAG 2.2 AA."""

from __future__ import annotations

from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page

from tests.browser.tablet import OpenTablet
from tests.browser.test_pages import LOW_CONTRAST, SMALL_TEXT, WIDE
from tests.browser.walking import answer, begin, jump, leave, open_page, press

DAMSON = "machines/damson/no-spark"
RULES: dict[str, object] = {
    "runOnly": {"type": "tag", "values": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]},
    # What passes need not be told of: that takes as long as to find it.
    "resultTypes": ["violations"],
}
COLOURS: dict[str, object] = {**RULES, "runOnly": ["color-contrast", "link-in-text-block"]}
"""The rules that look at colours: all else in a page is the same in other ones."""
BY_SCHEME = {"light": RULES, "dark": COLOURS}
TARGETS = """least => [...document.querySelectorAll('a, button, summary, input, textarea, label')]
  .filter(each => each.checkVisibility({visibilityProperty: true}) && !each.closest('[inert]'))
  .filter(each => !each.matches('label:not(.pc-key), .pc-load input'))
  .map(each => [each.getBoundingClientRect(), each.textContent.trim().slice(0, 40), each.className])
  .filter(([box]) => box.height > 0 && (box.height < least || box.width < least))
  .map(([box, ...rest]) => [box.width, box.height, ...rest])"""
OVERLAPS = """() => {
  const all = [...document.querySelectorAll('.pc-pad button, .pc-walk-bar > *')]
    .filter(each => each.checkVisibility()).map(each => each.getBoundingClientRect());
  return all.flatMap((a, i) => all.slice(i + 1).filter(b => a.left < b.right && b.left < a.right
    && a.top < b.bottom && b.top < a.bottom));
}"""


def faults(page: Page, options: dict[str, object] = RULES) -> list[str]:
    """Return what axe-core finds: the rule, and the first element that breaks it."""
    found = Axe().run(page, options=options).response["violations"]
    return [f"{each['id']}: {each['nodes'][0]['html'][:200]}" for each in found]


def stand_at_a_reading(page: Page, site: Path) -> None:
    """Walk to a step with everything in it: boxes, plug, pad, verdict, answers, trail."""
    open_page(page, site, DAMSON)
    begin(page)
    answer(page, "dry, no smell")
    jump(page, "source-coil")
    press(page, "250 ohm")


@pytest.mark.parametrize("scheme", BY_SCHEME)
def test_the_walk_keeps_to_wcag(demo_site: Path, open_tablet: OpenTablet, scheme: str) -> None:
    """AA of WCAG 2.2 by axe-core: at a reading, all that folds open, and in the leaving list.

    In the dark only what has to do with colours is asked again; so it is below.
    """
    page = open_tablet(color_scheme=scheme)
    stand_at_a_reading(page, demo_site)
    page.locator(".pc-walk-trail summary").tap()
    page.locator(".pc-walk-causes summary").tap()
    # What is not on the screen has its own test below; here it would only take time.
    page.evaluate("document.querySelectorAll('.pc-step:not(.pc-here)').forEach(e => e.remove())")
    assert faults(page, BY_SCHEME[scheme]) == []
    assert page.evaluate(LOW_CONTRAST, 7) == []
    leave(page)
    assert faults(page, BY_SCHEME[scheme]) == []
    assert page.evaluate(LOW_CONTRAST, 7) == []


@pytest.mark.parametrize("scheme", BY_SCHEME)
def test_a_procedure_keeps_to_wcag(
    library_site: Path, open_tablet: OpenTablet, scheme: str
) -> None:
    """The whole page, with the offer to walk it."""
    page = open_tablet(color_scheme=scheme)
    open_page(page, library_site, "procedures/make-safe")
    assert page.locator(".pc-offer").is_visible()
    assert faults(page, BY_SCHEME[scheme]) == []


@pytest.mark.parametrize("scheme", BY_SCHEME)
def test_the_home_page_keeps_to_wcag(demo_site: Path, open_tablet: OpenTablet, scheme: str) -> None:
    """With a walk that was left on it."""
    page = open_tablet(color_scheme=scheme)
    open_page(page, demo_site, DAMSON)
    begin(page)
    open_page(page, demo_site, "index")
    assert page.locator(".pc-unfinished").count() == 1
    assert faults(page, BY_SCHEME[scheme]) == []


def test_axe_can_find_fault(demo_site: Path, portrait: Page) -> None:
    """A picture without words and a key without a name are found."""
    open_page(portrait, demo_site, "index")
    portrait.evaluate(
        "document.body.insertAdjacentHTML('beforeend', '<img src=x><button></button>')"
    )
    assert {line.partition(":")[0] for line in faults(portrait)} >= {"image-alt", "button-name"}


def test_every_target_is_big_enough(demo_site: Path, tablet: Page) -> None:
    """48 px and up both ways, answers and the pad's keys 64; none lies over another."""
    stand_at_a_reading(tablet, demo_site)
    assert tablet.evaluate(TARGETS, 48) == []
    assert tablet.evaluate(SMALL_TEXT, 18) == []
    heights = tablet.locator(
        ".pc-here .pc-way, .pc-pad__keys button, .pc-pad__units button"
    ).evaluate_all("all => all.map(each => each.getBoundingClientRect().height)")
    assert len(heights) > 15
    assert min(heights) >= 64
    assert tablet.evaluate(OVERLAPS) == []
    leave(tablet)
    assert tablet.evaluate(TARGETS, 48) == []
    assert tablet.evaluate(TARGETS, 2000)
    tablet.locator('[data-deed="close"]').tap()
    tablet.locator('[data-deed="end"]').tap()
    offered = tablet.locator(".pc-offer .pc-way, .pc-offer .pc-load").evaluate_all(
        "all => all.map(each => each.getBoundingClientRect().height)"
    )
    assert len(offered) == 3
    assert min(offered[:2]) >= 64
    assert offered[2] >= 48


def test_answers_are_as_wide_as_their_column(demo_site: Path, tablet: Page) -> None:
    """From edge to edge held upright; across, as wide as the pad above them."""
    stand_at_a_reading(tablet, demo_site)
    pad = tablet.locator(".pc-pad").bounding_box()
    boxes = [each.bounding_box() for each in tablet.locator(".pc-here .pc-way").all()]
    assert pad
    assert [box for box in boxes if not box or abs(box["width"] - pad["width"]) > 2] == []


def test_the_walk_reflows_at_four_times_its_size(demo_site: Path, open_tablet: OpenTablet) -> None:
    """1280 x 1024 px at 400 % are 320 x 256: nothing slides sideways or lies over the step."""
    page = open_tablet(viewport={"width": 320, "height": 256})
    stand_at_a_reading(page, demo_site)
    assert page.evaluate(WIDE) <= 0
    assert (
        page.locator(".pc-walk-bar").evaluate("bar => getComputedStyle(bar).position") == "static"
    )
    leave(page)
    assert page.evaluate(WIDE) <= 0
    assert page.locator(".pc-leave").evaluate("box => box.scrollWidth - box.clientWidth") <= 0
