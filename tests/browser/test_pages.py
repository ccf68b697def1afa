"""What a gloved thumb meets on a page, and what comes out of a printer. Measured, not believed."""

from __future__ import annotations

from pathlib import Path

import pytest
from pypdfium2 import PdfDocument

from tests.browser.gallery import Look
from tests.browser.tablet import OpenTablet

NO_SPARK = "procedures/no-spark.html"
PAGES = {
    "home": "index.html",
    "guide": "how-to-read.html",
    "procedure": NO_SPARK,
}

SMALL_TARGETS = """least => [...document.querySelectorAll('.pc-page a:not(.pc-node)')]
  .map(a => [a.getBoundingClientRect().height, a.textContent.trim()])
  .filter(([height]) => height > 0 && height < least)"""

SMALL_TEXT = """least => [...document.querySelectorAll('.pc-page *:not(svg *)')]
  .filter(e => [...e.childNodes].some(n => n.nodeType === 3 && n.data.trim()))
  .filter(e => e.getClientRects().length && parseFloat(getComputedStyle(e).fontSize) < least)
  .filter(e => e.tagName !== 'STYLE' && e.tagName !== 'CODE')
  .map(e => [getComputedStyle(e).fontSize, e.textContent.slice(0, 60)])"""

# Relative luminance and contrast as WCAG 2.2 defines them, every colour laid over what is below it.
LOW_CONTRAST = """least => {
  const lin = v => (v /= 255) <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
  const lum = ([r, g, b]) => 0.2126 * lin(r) + 0.7152 * lin(g) + 0.0722 * lin(b);
  const read = text => {
    const [r, g, b, a = 1] = text.match(/[0-9.]+/g).map(Number);
    return [[r, g, b], a];
  };
  const over = ([top, a], below) => top.map((v, i) => v * a + below[i] * (1 - a));
  const ground = e => {
    if (!e) return [255, 255, 255];
    const colour = read(getComputedStyle(e).backgroundColor);
    return colour[1] === 1 ? colour[0] : over(colour, ground(e.parentElement));
  };
  return [...document.querySelectorAll('.pc-page *:not(svg *)')]
    .filter(e => [...e.childNodes].some(n => n.nodeType === 3 && n.data.trim()))
    .filter(e => e.getClientRects().length && e.tagName !== 'STYLE')
    .map(e => {
      const below = ground(e);
      const [a, b] = [lum(over(read(getComputedStyle(e).color), below)), lum(below)];
      return [(Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05), e.textContent.slice(0, 60)];
    })
    .filter(([contrast]) => contrast < least);
}"""

WIDE = """() => document.documentElement.scrollWidth - document.documentElement.clientWidth"""


def address(site: Path, page: str, fragment: str = "") -> str:
    """Return the address of a page in a folder."""
    return (site / page).as_uri() + (f"#{fragment}" if fragment else "")


@pytest.mark.parametrize("name", PAGES)
def test_every_target_is_big_enough(
    library_site: Path, look: Look, held: dict[str, int], name: str
) -> None:
    """48 px and up, held upright and across."""
    page = look(address(library_site, PAGES[name]), held)
    assert page.evaluate(SMALL_TARGETS, 48) == []


@pytest.mark.parametrize("name", PAGES)
def test_answers_are_as_wide_as_the_page(
    library_site: Path, look: Look, held: dict[str, int], name: str
) -> None:
    """64 px high and up, for either hand, with room between two of them."""
    boxes = look(address(library_site, PAGES[name]), held).evaluate(
        """() => [...document.querySelectorAll('.pc-way')].filter(a => a.offsetParent).map(a => {
          const [own, row] = [a.getBoundingClientRect(), a.parentElement.getBoundingClientRect()];
          const next = a.nextElementSibling?.getBoundingClientRect();
          return [own.height, own.width / row.width, next ? next.top - own.bottom : 99];
        })"""
    )
    assert [box for box in boxes if box[0] < 64 or box[1] < 0.99 or box[2] < 8] == []
    assert boxes or name == "guide"


@pytest.mark.parametrize("name", PAGES)
def test_text_is_large_enough(
    library_site: Path, look: Look, held: dict[str, int], name: str
) -> None:
    """18 px and up, also in the small print."""
    page = look(address(library_site, PAGES[name]), held)
    assert page.evaluate(SMALL_TEXT, 18) == []


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("name", PAGES)
def test_text_stands_out(library_site: Path, look: Look, name: str, scheme: str) -> None:
    """7:1 and up for all text, signal words too (WCAG 2.2, 1.4.6)."""
    page = look(address(library_site, PAGES[name]), scheme=scheme)
    assert page.evaluate(LOW_CONTRAST, 7) == []


def test_the_measures_can_fail(library_site: Path, look: Look) -> None:
    """Each finds fault when asked for more than any page has, and the two schemes differ."""
    grounds = set()
    for scheme in ("light", "dark"):
        page = look(address(library_site, "how-to-read.html"), scheme=scheme)
        grounds.add(page.evaluate("getComputedStyle(document.body).backgroundColor"))
        assert page.evaluate(SMALL_TEXT, 200)
        assert page.evaluate(LOW_CONTRAST, 20)
    assert look(address(library_site, "index.html")).evaluate(SMALL_TARGETS, 1000)
    assert len(grounds) == 2


def test_every_step_is_there_for_a_screen_reader(library_site: Path, look: Look) -> None:
    """In the browser's own tree, not only in the file: also what is far below the screen."""
    page = look(address(library_site, NO_SPARK))
    titles = page.locator(".pc-step > h3").all_text_contents()
    tree = page.context.new_cdp_session(page).send("Accessibility.getFullAXTree")
    headings = {
        " ".join(node["name"]["value"].split())
        for node in tree["nodes"]
        if node.get("role", {}).get("value") == "heading"
    }
    assert len(titles) > 40
    assert [title for title in titles if " ".join(title.split()) not in headings] == []


@pytest.mark.parametrize("name", PAGES)
def test_a_page_reflows_at_four_times_its_size(library_site: Path, look: Look, name: str) -> None:
    """WCAG 2.2, 1.4.10: 1280 px at 400 % are 320 px; nothing but a chart slides sideways."""
    page = look(address(library_site, PAGES[name]), {"width": 320, "height": 640})
    assert page.evaluate(WIDE) <= 0


def test_every_box_lies_above_its_instruction(
    library_site: Path, look: Look, held: dict[str, int]
) -> None:
    """On the screen, not only in the file, and it is seen."""
    places = look(address(library_site, NO_SPARK), held).evaluate(
        """() => [...document.querySelectorAll('.pc-step')].map(step => {
          const told = step.querySelector('.pc-instruction').getBoundingClientRect();
          return [...step.querySelectorAll('.pc-box')].map(box => {
            const own = box.getBoundingClientRect();
            return [own.height, told.top - own.bottom];
          });
        })"""
    )
    boxes = [box for step in places for box in step]
    assert boxes
    assert [box for box in boxes if box[0] < 48 or box[1] < 0] == []


def test_the_walk_needs_no_script_and_back_is_one_step_back(
    library_site: Path, open_tablet: OpenTablet
) -> None:
    """Start, three answers, then Back three times, each time to the step before."""
    page = open_tablet(java_script_enabled=False)
    page.goto(address(library_site, NO_SPARK))
    trail = [page.url]
    page.locator(".pc-first .pc-way").tap()
    for _ in range(3):
        trail.append(page.url)
        step = page.locator(f"#{page.url.partition('#')[2]}")
        assert step.is_visible()
        step.locator(".pc-way--step").first.tap()
    assert len(set(trail)) == 4
    for url in reversed(trail):
        page.go_back()
        assert page.url == url


def test_the_step_one_comes_to_fills_the_screen(
    library_site: Path, open_tablet: OpenTablet, held: dict[str, int]
) -> None:
    """Its title is in sight, and the title of the step below it is not."""
    page = open_tablet(viewport=held)
    page.goto(address(library_site, NO_SPARK))
    steps = page.evaluate("[...document.querySelectorAll('.pc-step')].map(step => step.id)")
    for step, below in ((steps[0], steps[1]), (steps[9], steps[10])):
        page.goto(address(library_site, NO_SPARK, step))
        page.wait_for_timeout(100)
        own, other = (page.locator(f"#{id_} > h3").bounding_box() for id_ in (step, below))
        assert own
        assert other
        assert 0 < own["y"] < held["height"] / 4
        assert other["y"] >= held["height"] - 10


def test_print_keeps_steps_whole_and_drops_what_is_for_fingers(
    library_site: Path, open_tablet: OpenTablet
) -> None:
    """On paper: black on white, nothing of the theme, cautions kept with their step."""
    page = open_tablet(color_scheme="dark")
    page.goto(address(library_site, NO_SPARK))
    page.emulate_media(media="print")
    style = """css => {
      const own = getComputedStyle(document.querySelector(css));
      return [own.display, own.breakInside, own.color];
    }"""
    for gone in (".md-header", ".pc-jump", ".pc-first", ".md-footer"):
        assert page.evaluate(style, gone)[0] == "none"
    for whole in (".pc-step", ".pc-boxes", ".pc-box", ".pc-sheet", ".pc-instruction"):
        assert page.evaluate(style, whole)[1] == "avoid"
    assert page.evaluate(style, ".pc-instruction")[2] == "rgb(0, 0, 0)"
    assert page.evaluate(style, ".pc-box")[0] == "block"


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_every_printed_sheet_carries_its_age(
    library_site: Path, open_tablet: OpenTablet, paper: str
) -> None:
    """The foot of every sheet names the day of the build, and every step is on some sheet."""
    page = open_tablet()
    page.goto(address(library_site, "procedures/leaks-fuel.html"))
    printed = PdfDocument(page.pdf(format=paper, prefer_css_page_size=False))
    sheets = [" ".join(sheet.get_textpage().get_text_bounded().split()) for sheet in printed]
    assert len(sheets) > 10
    assert [n for n, sheet in enumerate(sheets) if "Built on 20" not in sheet] == []
    titles = page.locator(".pc-step > h3").all_text_contents()
    everything = " ".join(sheets)
    assert min(map(len, titles)) > 3
    assert [title for title in titles if " ".join(title.split()) not in everything] == []
