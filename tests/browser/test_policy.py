"""A script that was slipped into a page does not run, and the page's own do."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from playwright.sync_api import Page

SLIPPED = {
    "inline": "<script>window.harmed = 1</script>",
    "handler": "<img src=x onerror='window.harmed = 1'>",
    "link": "<a id=bad href='javascript:window.harmed=1'>x</a>",
    "data": "<script src='data:text/javascript,window.harmed=1'></script>",
    "frame": "<iframe srcdoc='<script>parent.harmed = 1</script>'></iframe>",
}


@pytest.fixture
def complaints(portrait: Page) -> list[str]:
    """Give what the browser says it has refused."""
    said: list[str] = []
    portrait.on("console", lambda line: said.append(line.text))
    return said


def refused(complaints: list[str]) -> list[str]:
    """Return what was refused for the page's own policy."""
    return [line for line in complaints if "Content Security Policy" in line]


@pytest.mark.parametrize("page", ["index", "procedures/leaks-fuel", "rules"])
def test_nothing_of_our_own_is_refused(
    library_site: Path, portrait: Page, complaints: list[str], page: str
) -> None:
    """The theme keeps its colours and its menu, we our walk, and the browser says nothing."""
    portrait.goto((library_site / f"{page}.html").as_uri())
    portrait.locator("label[for=__palette_1], label[for=__palette_2]").first.tap()
    assert portrait.evaluate("localStorage.length") > 0
    assert portrait.evaluate("Object.keys(window.pullcord).length") > 3
    assert refused(complaints) == []


@pytest.mark.parametrize("page", ["binder", "one-file/leaks-fuel"])
def test_nothing_is_refused_where_all_is_in_one_file(
    library_site: Path, portrait: Page, complaints: list[str], page: str
) -> None:
    """Scripts that stand in the file run, and so does the search; a handler would not."""
    portrait.goto((library_site / f"{page}.html").as_uri())
    portrait.locator("[data-pc-search] input").first.fill("petrol")
    portrait.get_by_role("link", name="petrol").first.wait_for()
    assert refused(complaints) == []
    portrait.evaluate(
        "document.body.insertAdjacentHTML('beforeend', '<img src=x onerror=\"window.harmed=1\">')"
    )
    portrait.wait_for_timeout(100)
    assert portrait.evaluate("window.harmed") is None
    assert refused(complaints)


@pytest.mark.parametrize("name", SLIPPED)
def test_what_was_slipped_in_does_not_run(
    library_site: Path, tmp_path: Path, portrait: Page, complaints: list[str], name: str
) -> None:
    """In whatever form it comes; without our word it would have run."""
    site = tmp_path / "site"
    shutil.copytree(library_site / "assets", site / "assets")
    html = (library_site / "index.html").read_text(encoding="utf-8")
    harmed = html.replace('<div class="pc-page', SLIPPED[name] + '<div class="pc-page', 1)
    policy = html[html.index("<meta http-equiv") :].partition(">")[0] + ">"
    for text, is_stopped in ((harmed, True), (harmed.replace(policy, ""), False)):
        (site / "index.html").write_text(text, encoding="utf-8")
        portrait.goto((site / "index.html").as_uri())
        if name == "link":
            portrait.evaluate("document.getElementById('bad').click()")
        portrait.wait_for_timeout(100)
        assert (portrait.evaluate("window.harmed") is None) == is_stopped
    assert refused(complaints)
