"""Hostile text in every field that takes words: it is shown, and nothing runs, leaves or loads.

What may stand where is decided in `tests/test_hostile.py`; here a site is built of it.
"""

from __future__ import annotations

import io
import re
from collections.abc import Iterator
from pathlib import Path

import pypdf
import pytest
from playwright.sync_api import Dialog, Page

from pullcord.plugin import build_site
from tests.browser.tablet import OpenTablet
from tests.browser.walking import answer, begin, jump, open_page, trail
from tests.hostile import KEY, LINE, mark, text_for
from tests.hostile_shed import FIELDS, METER, taken_fields, write_hostile
from tests.shed import SETTINGS, write_files

CURRENCY, METER_TITLE = 900, 901
"""Numbers of what the settings say."""
TEXT_OF = """() => {
  const walker = document.createTreeWalker(document, NodeFilter.SHOW_TEXT, node =>
    node.parentElement.closest('script, style, template, noscript')
      ? NodeFilter.FILTER_REJECT : NodeFilter.FILTER_ACCEPT);
  const texts = [];
  while (walker.nextNode()) texts.push(walker.currentNode.data);
  return texts.join('').replace(/\\s+/g, '');
}"""
STRAYS = """() => {
  const leads = ['src', 'href', 'xlink:href', 'srcset', 'action', 'formaction', 'data', 'poster'];
  const leaves = value => /harm|javascript:/i.test(value) || /^(https?:)?\\/\\//i.test(value);
  const isStray = e => e.matches('iframe, base, object, embed')
    || [...e.attributes].some(a => /^on/i.test(a.name))
    || leads.some(name => leaves(e.getAttribute(name) || ''))
    || (e.matches('script') && /^\\s*(parent\\.)?harm/.test(e.textContent));
  return [...document.querySelectorAll('*')].filter(isStray).map(e => e.outerHTML.slice(0, 200));
}"""


def line(number: int) -> str:
    """Return a hostile line, in quotes for YAML."""
    return "'" + LINE.format(mark=mark(number)).replace("'", "''") + "'"


def bare(text: str) -> str:
    """Return a text without its spaces: lines may be broken anywhere."""
    return "".join(text.split())


def number_of(*place: str) -> int:
    """Return the number of a field of the procedure."""
    return next(number for number, field in FIELDS.items() if field.place == place)


@pytest.fixture(scope="module")
def taken(tmp_path_factory: pytest.TempPathFactory) -> list[int]:
    """Give the numbers of all fields that take words."""
    return taken_fields(tmp_path_factory.mktemp("tried"))[0]


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory, taken: list[int]) -> Path:
    """Give the site of a shed in which every one of them is hostile, and the settings are too."""
    folder = write_hostile(tmp_path_factory.mktemp("hostile"), taken)
    meter = METER.replace("the good meter", line(METER_TITLE)).replace("\n", "\n        ")
    settings = f"{SETTINGS}      currency: {line(CURRENCY)}\n      meter:\n        {meter}\n"
    write_files(folder, {"mkdocs.yml": settings, "docs/bench.md": "# Bench\n"})
    return build_site(folder / "mkdocs.yml", None, strict=False)


@pytest.fixture
def tablet_with_alarm(open_tablet: OpenTablet, requests: list[str]) -> Iterator[Page]:
    """Give a tablet on which nothing may run, ask or be fetched; it is checked at the end."""
    page = open_tablet()
    dialogs: list[str] = []

    def note(dialog: Dialog) -> None:
        dialogs.append(dialog.message)
        dialog.dismiss()

    page.on("dialog", note)
    page.add_init_script("window.harm = () => { window.top.harmed = true; alert('harm'); }")
    yield page
    assert page.evaluate("window.harmed") is None
    assert (dialogs, requests) == ([], [])


def pages_of(site: Path) -> list[Path]:
    """Return the pages that hold any of the hostile text."""
    marked = re.compile(mark(0).replace("000", r"\d{3}").encode())
    return [page for page in sorted(site.rglob("*.html")) if marked.search(page.read_bytes())]


def test_it_is_shown_and_does_nothing(
    site: Path, taken: list[int], tablet_with_alarm: Page
) -> None:
    """On every page, also where all is in one file: the words are there, and no element of them."""
    shown = ""
    for path in pages_of(site):
        tablet_with_alarm.goto(path.as_uri())
        assert tablet_with_alarm.evaluate(STRAYS) == [], path
        assert tablet_with_alarm.evaluate("window.harmed") is None, path
        shown += tablet_with_alarm.evaluate(TEXT_OF)
    missing = {FIELDS[n].name for n in taken if bare(text_for(FIELDS[n], n)) not in shown}
    assert missing == set()
    assert all(bare(LINE.format(mark=mark(n))) in shown for n in (CURRENCY, METER_TITLE))


@pytest.mark.parametrize("page", ["index", "binder"])
def test_it_is_found_as_text(site: Path, tablet_with_alarm: Page, page: str) -> None:
    """What the search lists is text too, and leads to pages of the site."""
    tablet_with_alarm.goto((site / f"{page}.html").as_uri())
    number = number_of("steps", "look", "title")
    tablet_with_alarm.get_by_role("searchbox").first.fill(mark(number))
    hit = tablet_with_alarm.locator(".pc-search-panel a").first
    hit.wait_for()
    assert bare(text_for(FIELDS[number], number)) in bare(hit.text_content() or "")
    assert tablet_with_alarm.evaluate(STRAYS) == []
    hit.click()
    assert tablet_with_alarm.url.startswith(site.as_uri())
    assert tablet_with_alarm.url.endswith("step-look")


def test_it_is_walked_as_text(site: Path, tablet_with_alarm: Page) -> None:
    """Answers that are tapped and the trail they leave are text, after a reload too."""
    open_page(tablet_with_alarm, site, "procedures/hostile")
    begin(tablet_with_alarm)
    jump(tablet_with_alarm, "look")
    answer(tablet_with_alarm)
    number = number_of("steps", "look", "answers", "it is on", KEY)
    for _ in range(2):
        assert bare(text_for(FIELDS[number], number)) in bare("".join(trail(tablet_with_alarm)))
        assert tablet_with_alarm.evaluate(STRAYS) == []
        tablet_with_alarm.reload()


def test_it_is_printed_as_text(site: Path, tablet_with_alarm: Page) -> None:
    """On paper from the browser there is no link that leaves, and no script."""
    tablet_with_alarm.goto((site / "procedures" / "hostile.html").as_uri())
    reader = pypdf.PdfReader(io.BytesIO(tablet_with_alarm.pdf()))
    number = number_of("steps", "look", "title")
    text = bare("".join(page.extract_text() for page in reader.pages))
    assert bare(text_for(FIELDS[number], number)) in text
    assert leaving(reader) == []


def test_papers_hold_it_as_text(site: Path) -> None:
    """The sheets that lie ready: no script, no form, no file and no link that leaves."""
    papers = [pypdf.PdfReader(path) for path in sorted(site.rglob("*.pdf"))]
    text = bare("".join(page.extract_text() for paper in papers for page in paper.pages))
    assert "<script>harm()</script>" in text
    for paper in papers:
        assert {"/OpenAction", "/AA", "/AcroForm"}.isdisjoint(paper.trailer["/Root"])
        assert {"/JavaScript", "/EmbeddedFiles"}.isdisjoint(
            paper.trailer["/Root"].get("/Names", {})
        )
        assert leaving(paper) == []


def leaving(paper: pypdf.PdfReader) -> list[str]:
    """Return where the links of a paper lead that lead out of the site's folder."""
    notes = (note.get_object() for page in paper.pages for note in page.get("/Annots", []))
    actions = [str(note.get("/A", {}).get("/URI", "")) for note in notes]
    return [action for action in actions if action and not action.startswith("file:")]


def test_bare_it_would_have_done_harm(open_tablet: OpenTablet, requests: list[str]) -> None:
    """The same text as markup runs, asks for a file and is seen as elements that stray."""
    page = open_tablet()
    page.add_init_script("window.harm = () => { window.top.harmed = true; }")
    page.goto("data:text/html,<title>x</title>")
    number = number_of("steps", "look", "do")
    page.set_content(f"<p title='{text_for(FIELDS[number], number)}</p>")
    assert page.evaluate("window.harmed")
    assert len(page.evaluate(STRAYS)) >= 5
    assert "harm.test" in " ".join(requests)
