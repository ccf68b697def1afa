"""The binder is one file that needs no other."""

from __future__ import annotations

import re
from html.parser import HTMLParser

import pytest

from pullcord.pages.binder.bind import Inside, bind, dark_by_tablet
from pullcord.pages.kit import read_kit
from pullcord.pages.page import Heading, Page
from pullcord.pages.settings import Settings
from tests.pages.make import NO_SPARK as MADE
from tests.pages.make import WONT_IDLE as OTHER
from tests.pages.make import pages_of, procedure

SPRITE = (
    '<svg class="pc-sprite" width="0">'
    '<symbol id="pc-sign-flame"><svg><path d="M0 0"/></svg></symbol>\n</svg>\n'
)
HOME = Page(
    "index.md",
    "Shed",
    SPRITE + '<h1>Shed</h1><a href="procedures/no-spark.html#step-plug">No spark</a>',
    (),
)
NO_SPARK = Page(
    "procedures/no-spark.md",
    "No spark",
    SPRITE
    + '<section id="step-plug"><h3>Plug</h3><svg><use href="#pc-sign-flame"/></svg>'
    + '<p>A 12 V battery</p><a href="#step-plug">again</a> '
    + '<a href="../rules.html">rules</a></section>',
    (Heading("steps", "Steps", 2, (Heading("step-plug", "Plug", 3),)),),
)
SCRIPT = 'var shown = "</script>";'


@pytest.fixture(scope="module")
def binder() -> str:
    """Two pages, bound."""
    kit = read_kit(Settings(build_date="2026-01-02", revision="abc"))
    return bind(kit, "Our <shed>", [HOME, NO_SPARK], Inside(["p{color:red}"], [SCRIPT]))


def test_printed_sheets_claim_no_procedures_revision() -> None:
    """Each page has a foot of its own; of those only the last would be printed, on all sheets."""
    kit = read_kit(Settings(build_date="2026-01-02", revision="abc"))
    made = pages_of(procedure(MADE), procedure(OTHER))
    pages = [made[f"procedures/{name}.md"] for name in ("no-spark", "wont-idle")]
    assert all("Procedure\\3a " in page.html for page in pages)
    binder = bind(kit, "Our shed", pages, Inside([], []))
    assert binder.count("--pc-sheet-foot:") == 1
    assert "Procedure\\3a " not in binder


class Links(HTMLParser):
    """Collects ids and links."""

    def __init__(self, html: str) -> None:
        """Read the document."""
        super().__init__()
        self.ids: list[str] = []
        self.links: list[str] = []
        self.feed(html)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Note an element's id and where it leads or what it loads."""
        for name, value in attrs:
            if name == "id" and value:
                self.ids.append(value)
            if name in {"href", "src", "xlink:href", "data", "action"} and value:
                self.links.append(value)


def test_every_link_stays_inside(binder: str) -> None:
    """Each link leads to an id that stands in the document once."""
    links = Links(binder)
    assert links.links
    assert {link for link in links.links if link.removeprefix("#") not in links.ids} == set()
    assert len(set(links.ids)) == len(links.ids)


def test_drawings_are_kept_once(binder: str) -> None:
    """A sign that every page brings stands in the binder one time, whole."""
    assert binder.count('<symbol id="pc-sign-flame">') == 1
    assert '<symbol id="pc-sign-flame"><svg><path d="M0 0"/></svg></symbol>' in binder


def test_scripts_and_titles_are_inert(binder: str) -> None:
    """Nothing inside a script ends it, and a title is text."""
    assert r"<\/script>" in binder
    assert "<title>Our &lt;shed&gt;</title>" in binder


def test_the_search_leads_into_the_binder(binder: str) -> None:
    """A hit of the binder's own index is a place in the same document."""
    assert re.search(
        r'pullcordSearch\.places\(0,".*#no-spark--step-plug\\tPlug\\tNo spark\\t', binder
    )


def test_only_a_page_alone_can_be_walked() -> None:
    """With others it goes without what the walk is made of; what comes after stays."""
    kit = read_kit(Settings(build_date="2026-01-02", revision="abc"))
    pages = pages_of(procedure(MADE), procedure(OTHER))
    walked = [pages["procedures/no-spark.md"], pages["procedures/wont-idle.md"]]
    together = bind(kit, "Shed", walked, Inside([], []))
    assert "pc-walk-" not in together
    assert 'id="no-spark--before"' in together
    alone = bind(kit, "Shed", walked[:1], Inside([], []))
    assert alone.count('id="pc-walk-data"') == alone.count('id="pc-walk-parts"') == 1


def test_a_page_alone_keeps_its_ids() -> None:
    """What a page's own scripts look for is where they look for it."""
    kit = read_kit(Settings(build_date="2026-01-02", revision="abc"))
    alone = bind(kit, "No spark", [NO_SPARK], Inside([], []))
    assert '<section id="step-plug">' in alone
    assert '<a href="#step-plug">again</a>' in alone


DARK = {
    "wrapped": ('@media screen {\n  [data-md-color-scheme="slate"] {\n --a: 1;\n }\n}', "dark"),
    "bare": ('[data-md-color-scheme="slate"] { --a: 1; }', "dark"),
    "light": ('[data-md-color-scheme="default"] { --a: 1; }', ":root { --a: 1; }"),
    "both": ("[data-md-color-scheme] { --a: 1; }", ":root { --a: 1; }"),
}


@pytest.mark.parametrize(("css", "holds"), DARK.values(), ids=DARK)
def test_colours_follow_the_tablet(css: str, holds: str) -> None:
    """No rule waits for a script to choose between light and dark."""
    assert holds in dark_by_tablet(css)
    assert "data-md-color-scheme" not in dark_by_tablet(css)
