"""The site is opened from a folder, with the network cut."""

from __future__ import annotations

import re
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from threading import Thread
from urllib.parse import unquote, urlsplit

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.gallery import Look
from tests.browser.tablet import PORTRAIT, OpenTablet

KINDS = {
    "home": "index.html",
    "list": "procedures.html",
    "procedure": "procedures/no-spark.html",
    "how to read": "how-to-read.html",
    "written by hand": "about.html",
}
"""One page of every kind, in the library's site."""


class QuietHandler(SimpleHTTPRequestHandler):
    """A server that says nothing about what it is asked."""

    def log_message(self, format: str, *args: object) -> None:  # noqa: A002 (the library's name)
        """Say nothing."""


def open_page(page: Page, site: Path, name: str) -> None:
    """Open a page as a tablet's browser does: by its place in a folder."""
    page.goto(f"file://{site / name}")


def search(page: Page, words: str) -> None:
    """Type into the search as a person would."""
    page.get_by_role("searchbox").press_sequentially(words)


def test_network_is_really_cut(open_tablet: OpenTablet, requests: list[str]) -> None:
    """The net that catches requests does catch one."""
    page = open_tablet()
    page.set_content('<img src="http://shed.test/a.png"><img src="https://shed.test/b.png">')
    page.wait_for_load_state("load")
    assert sorted(requests) == ["http://shed.test/a.png", "https://shed.test/b.png"]


@pytest.mark.parametrize("name", KINDS.values(), ids=KINDS)
def test_page_opens_from_a_folder(
    look: Look, held: dict[str, int], library_site: Path, name: str
) -> None:
    """Every kind of page shows its heading in our looks and asks no network for anything."""
    page = look(f"file://{library_site / name}", held)
    expect(page.locator("article h1").first).to_be_visible()
    expect(page.locator(".pc-page").first).to_be_visible()
    expect(page.locator(".pc-imprint").first).to_contain_text("Built")
    # That nothing was asked for is seen to by `look`, when there is nothing more to come.
    page.wait_for_load_state("networkidle")


def test_no_page_of_the_demo_names_a_file_that_is_not_there(demo_site: Path) -> None:
    """Every address in every page of a shop's own site is a file of the site."""
    pages = sorted(demo_site.rglob("*.html"))
    assert len(pages) >= 6
    named = {
        (page.relative_to(demo_site).as_posix(), address)
        for page in pages
        for address in re.findall(r' (?:href|src)="([^"#]+)', page.read_text(encoding="utf-8"))
        if not address.startswith(("data:", "blob:"))
    }
    gone = [
        (name, address)
        for name, address in sorted(named)
        if ":" in address or not (demo_site / name).parent.joinpath(unquote(address)).is_file()
    ]
    assert gone == []


def test_pages_of_the_demo_open(portrait: Page, demo_site: Path, requests: list[str]) -> None:
    """A dozen of them, spread over the site: none asks a network or a missing file for anything."""
    failed: list[tuple[str, str | None]] = []
    portrait.on("requestfailed", lambda request: failed.append((request.url, request.failure)))
    pages = sorted(demo_site.rglob("*.html"))
    for path in pages[:: -(-len(pages) // 12)]:
        open_page(portrait, demo_site, path.relative_to(demo_site).as_posix())
        expect(portrait.locator("article h1").first).to_be_visible()
    # Going to the next page gives up what the last one was still loading, such as its icon.
    assert [url for url, why in failed if why != "net::ERR_ABORTED"] == []
    assert requests == []


@pytest.mark.parametrize("start", ["index.html", "procedures/leaks-fuel.html"])
def test_search_finds_a_step(
    tablet: Page, library_site: Path, requests: list[str], start: str
) -> None:
    """From home and from inside a procedure: type, see a result, follow it, and come back."""
    open_page(tablet, library_site, start)
    search(tablet, "spark")
    result = tablet.locator("a.pc-hit-link:visible", has_text="no spark").first
    expect(result).to_be_visible()
    result.tap()
    tablet.wait_for_url("**/procedures/no-spark.html*")
    expect(tablet.locator("article h1").first).to_contain_text("no spark")
    tablet.go_back()
    expect(tablet).to_have_url(f"file://{library_site / start}")
    assert requests == []


def test_search_leads_to_the_very_step(portrait: Page, library_site: Path) -> None:
    """A result for one step opens the page at that step."""
    open_page(portrait, library_site, "index.html")
    search(portrait, "stop wire")
    expect(portrait.locator("a.pc-hit-link:visible").first).to_be_visible()
    links = portrait.locator("a.pc-hit-link[href*='#']")
    href = links.first.get_attribute("href")
    assert href
    portrait.goto(href)
    anchor = href.partition("#")[2]
    expect(portrait.locator(f"[id='{anchor}']")).to_be_in_viewport()


def test_search_works_from_a_server_too(browser: Browser, library_site: Path) -> None:
    """Served by a shop's own computer, the same site searches as well."""
    handler = partial(QuietHandler, directory=str(library_site))
    with ThreadingHTTPServer(("127.0.0.1", 0), handler) as server:
        Thread(target=server.serve_forever, daemon=True).start()
        context = browser.new_context(viewport=PORTRAIT, has_touch=True)
        page = context.new_page()
        hosts: set[str] = set()
        page.on("request", lambda request: hosts.add(urlsplit(request.url).netloc))
        page.goto(f"http://127.0.0.1:{server.server_port}/index.html")
        search(page, "spark")
        expect(page.locator("a.pc-hit-link:visible").first).to_be_visible()
        assert hosts == {f"127.0.0.1:{server.server_port}"}
        context.close()
        server.shutdown()


def test_walk_with_scripts_off(
    open_tablet: OpenTablet, library_site: Path, requests: list[str]
) -> None:
    """Home, procedure, first answer and Back work as plain links."""
    page = open_tablet(java_script_enabled=False)
    open_page(page, library_site, "index.html")
    page.locator(".pc-page a[href$='procedures/no-spark.html']").first.tap()
    page.wait_for_url("**/procedures/no-spark.html")
    step = page.locator(".pc-page a[href^='#step-']").first
    href = step.get_attribute("href")
    step.tap()
    page.wait_for_url(f"**/procedures/no-spark.html{href}")
    page.go_back()
    page.wait_for_url("**/procedures/no-spark.html")
    assert requests == []


@pytest.mark.parametrize(("scheme", "is_dark"), [("light", False), ("dark", True)])
def test_colours_follow_the_tablet(
    open_tablet: OpenTablet, library_site: Path, scheme: str, is_dark: bool
) -> None:
    """The page is light or dark as the tablet is set, with nothing touched."""
    page = open_tablet(color_scheme=scheme)
    open_page(page, library_site, "index.html")
    colour = page.locator("body").evaluate("body => getComputedStyle(body).backgroundColor")
    red, green, blue = (int(part) for part in colour[4:-1].split(","))
    assert ((red + green + blue) / 3 < 128) is is_dark


def test_home_is_one_touch_away(tablet: Page, library_site: Path) -> None:
    """From a procedure the mark in the header leads to the page of symptoms."""
    open_page(tablet, library_site, "procedures/no-spark.html")
    tablet.locator("header a.md-logo").tap()
    expect(tablet).to_have_url(f"file://{library_site / 'index.html'}")


def test_theme_controls_fit_a_gloved_thumb(
    look: Look, held: dict[str, int], library_site: Path
) -> None:
    """Every control of the theme that can be seen is at least 48 px high and wide."""
    small = look(f"file://{library_site / 'procedures/no-spark.html'}", held).evaluate(
        """() => [...document.querySelectorAll(
               'header a, header label, header input, nav a, nav label, .md-top')]
             .map((e) => [e, e.getBoundingClientRect()])
             .filter(([e, r]) => r.width && r.right > 0 && r.left < innerWidth && r.bottom > 0
               && e.checkVisibility({opacityProperty: true, visibilityProperty: true})
               && !e.matches('.md-search__overlay'))
             .filter(([, r]) => Math.min(r.width, r.height) < 47.5)
             .map(([e, r]) => `${e.className} ${r.width}x${r.height}`)"""
    )
    assert small == []
