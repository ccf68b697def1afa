"""A real browser and real sites, built once a run. A missing browser fails; it never skips."""

from __future__ import annotations

import os
import re
from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from filelock import FileLock
from playwright.sync_api import Browser, BrowserContext, Page, sync_playwright

from pullcord.plugin import PullcordConfig, build_site
from pullcord.site.made import Made, make_site
from tests.browser.chromium import FLAGS, find_chromium

ROOT = Path(__file__).parents[2]
PORTRAIT = {"width": 820, "height": 1180}
LANDSCAPE = {"width": 1180, "height": 820}
FROM_A_NETWORK = re.compile(r"^(?!file:|data:)")
PATIENCE_MS = 120_000
"""Of a machine that does other things meanwhile."""

OpenTablet = Callable[..., Page]


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Mark every test of this folder, so that `-m browser` finds it."""
    here = Path(__file__).parent
    for item in items:
        if here in item.path.parents:
            item.add_marker(pytest.mark.browser)


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
    contexts: list[BrowserContext] = []
    errors: list[str] = []

    def open_one(**options: object) -> Page:
        context = browser.new_context(**{"viewport": PORTRAIT, "has_touch": True, **options})
        contexts.append(context)
        context.set_offline(True)
        context.set_default_timeout(PATIENCE_MS)
        context.route(FROM_A_NETWORK, lambda route: route.abort())
        context.on("request", lambda request: _note(requests, request.url))
        page = context.new_page()
        page.on("pageerror", lambda error: errors.append(str(error)))
        return page

    yield open_one
    for context in contexts:
        context.close()
    assert errors == []


@pytest.fixture(params=[PORTRAIT, LANDSCAPE], ids=["portrait", "landscape"])
def tablet(open_tablet: OpenTablet, request: pytest.FixtureRequest) -> Page:
    """Give a tablet with no network, held upright and then across."""
    return open_tablet(viewport=request.param)


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


def _note(requests: list[str], url: str) -> None:
    if not url.startswith(("file:", "data:", "blob:", "about:")):
        requests.append(url)
