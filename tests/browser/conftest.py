"""A real browser and real sites, built once a run. A missing browser fails; it never skips."""

from __future__ import annotations

import os
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from filelock import FileLock
from playwright.sync_api import Browser, Page, sync_playwright

from pullcord.plugin import PullcordConfig, build_site
from pullcord.site.made import Made, make_site
from tests.browser.chromium import FLAGS, find_chromium
from tests.browser.gallery import Gallery, Look, Picture
from tests.browser.tablet import LANDSCAPE, PORTRAIT, OpenTablet, take_tablet

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """Give the Chromium of PULLCORD_CHROMIUM, an installed one, or Playwright's own."""
    path = find_chromium()
    assert path, "no Chromium: run `python -m tests.browser.chromium`"
    with sync_playwright() as playwright:
        chromium = playwright.chromium.launch(
            executable_path=path, headless=True, args=["--headless", *FLAGS]
        )
        yield chromium
        chromium.close()


@pytest.fixture(scope="session")
def demo_site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Give the demo shed's site."""
    return _built(ROOT / "demo" / "mkdocs.yml", tmp_path_factory, "demo")


@pytest.fixture(scope="session")
def library_site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Give the site of the library with its guide."""
    return _built(ROOT / "mkdocs.yml", tmp_path_factory, "library")


@pytest.fixture
def requests() -> list[str]:
    """Give the list of everything a tablet asked a network for."""
    return []


@pytest.fixture
def open_tablet(browser: Browser, requests: list[str]) -> Iterator[OpenTablet]:
    """Give a way to open tablets with no network; any option of a browser context may be given.

    A request for anything but a local file is refused and noted in `requests`; an error in a
    page's script fails the test.
    """
    pages: list[Page] = []
    errors: list[str] = []

    def open_one(**options: object) -> Page:
        pages.append(take_tablet(browser, requests, errors, **options))
        return pages[-1]

    yield open_one
    for page in pages:
        page.context.close()
    assert errors == []


@pytest.fixture(scope="session")
def gallery(browser: Browser) -> Iterator[Gallery]:
    """Give the pages that stay open."""
    gallery = Gallery(browser)
    yield gallery
    gallery.take_down()


@pytest.fixture
def look(gallery: Gallery) -> Iterator[Look]:
    """Give a way to look at pages that stay open; for measures, not for taps.

    A test that leaves one changed fails, and so does one whose page has an error in a script or
    asks a network for anything.
    """
    shown: list[Picture] = []

    def look_at(url: str, viewport: dict[str, int] = PORTRAIT, scheme: str = "light") -> Page:
        shown.append(gallery.show(url, viewport, scheme))
        return shown[-1].page

    yield look_at
    changed = [picture.url for picture in shown if not picture.is_as_it_was()]
    complaints = list(gallery.complaints)
    if changed or complaints:
        gallery.take_down()
    assert (changed, complaints) == ([], [])


@pytest.fixture(params=[PORTRAIT, LANDSCAPE], ids=["portrait", "landscape"])
def held(request: pytest.FixtureRequest) -> dict[str, int]:
    """Give the size of a tablet that is held upright and then across."""
    size: dict[str, int] = request.param
    return size


@pytest.fixture
def tablet(open_tablet: OpenTablet, held: dict[str, int]) -> Page:
    """Give a tablet with no network, held upright and then across."""
    return open_tablet(viewport=held)


@pytest.fixture
def portrait(open_tablet: OpenTablet) -> Page:
    """Give a tablet with no network, held upright."""
    return open_tablet(viewport=PORTRAIT)


@pytest.fixture
def landscape(open_tablet: OpenTablet) -> Page:
    """Give a tablet with no network, held across."""
    return open_tablet(viewport=LANDSCAPE)


def _built(config: Path, factory: pytest.TempPathFactory, name: str) -> Path:
    """Build a site once a run, whichever of the processes that share the tests comes first."""
    base = factory.getbasetemp()
    folder = (base.parent if "PYTEST_XDIST_WORKER" in os.environ else base) / f"site-{name}"
    with FileLock(f"{folder}.lock"), pytest.MonkeyPatch.context() as patch:
        # The demo has most of its charts and papers in common with the library.
        patch.setattr(PullcordConfig.cache, "default", str(ROOT / ".cache" / "pullcord"))
        return folder if folder.exists() else build_site(config, folder, True, make_screens)


def make_screens(config: Any, options: Any) -> Made:
    """Make all, with stand-ins for the PDFs: those take longest, and have tests of their own."""
    made = make_site(config, options)
    later = {uri: bytes if uri.endswith(".pdf") else make for uri, make in made.later.items()}
    return replace(made, later=later).whole()
