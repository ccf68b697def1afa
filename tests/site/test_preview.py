"""What a preview keeps from one build to the next, and how it serves it."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from pathlib import Path
from typing import Any

import pytest
from watchdog.events import FileSystemEventHandler
from watchdog.observers.polling import PollingObserver

from pullcord.pages.page import Page
from pullcord.site.made import Made
from pullcord.site.preview import LOOK_SECONDS, Preview, look_often

URI, ADDRESS = "procedures/lamp.md", "/procedures/lamp.html"
LAMP = Page(URI, "Lamp", "<p>lamp</p>", ())


def made(*pages: Page) -> Made:
    """Return a site of these pages and nothing else."""
    return Made({page.src_uri: page for page in pages}, "", "", (), ())


def folder_app(folder: Path) -> Callable[..., Iterable[bytes]]:
    """Return an application that serves a folder, as MkDocs's does."""

    def serve(asked: dict[str, Any], begin: Callable[..., Any]) -> Iterable[bytes]:
        path = folder / asked["PATH_INFO"].removeprefix("/")
        begin("200 OK" if path.is_file() else "404 Not Found", [("Content-Type", "text/html")])
        return [path.read_bytes() if path.is_file() else b"none"]

    return serve


def ask(preview: Preview, folder: Path, path: str = ADDRESS) -> tuple[str, bytes]:
    """Return the status and the body of an answer."""
    told: list[str] = []
    app = preview.app(folder_app(folder), "/")
    body = b"".join(app({"PATH_INFO": path}, lambda status, _: told.append(status)))
    return told[0], body


def built(preview: Preview, folder: Path, *pages: Page, output: str = "whole page") -> None:
    """Have a good build print these pages."""
    preview.come_to(["around"])
    for page in pages:
        preview.remember(page, output, tuple)
    preview.take(made(*pages), [], folder)


def test_a_page_that_a_build_leaves_out_is_laid_down_when_asked_for(tmp_path: Path) -> None:
    """It comes out as it did last time, and lies in the folder from then on."""
    preview = Preview()
    built(preview, tmp_path, LAMP)
    preview.come_to(["around"])
    assert preview.kept(LAMP) is not None
    preview.take(made(LAMP), [], tmp_path)
    assert ask(preview, tmp_path) == ("200 OK", b"whole page")
    assert [path.name for path in (tmp_path / "procedures").iterdir()] == ["lamp.html"]


@pytest.mark.parametrize(
    ("page", "around"),
    [
        pytest.param(Page(URI, "Lamp", "<p>lamps</p>", ()), "around", id="the page"),
        pytest.param(LAMP, "another navigation", id="what stands around it"),
    ],
)
def test_a_page_is_made_anew(page: Page, around: str, tmp_path: Path) -> None:
    """What would come out otherwise is no longer what was kept."""
    preview = Preview()
    built(preview, tmp_path, LAMP)
    preview.come_to([around])
    assert preview.kept(page) is None


def test_a_build_that_fails_changes_nothing(tmp_path: Path) -> None:
    """What it had printed before it failed is neither served nor kept for the next build."""
    preview = Preview()
    built(preview, tmp_path, LAMP)
    worse = Page(URI, "Lamp", "<p>half</p>", ())
    preview.come_to(["around"])
    preview.remember(worse, "half a page", tuple)
    assert ask(preview, tmp_path) == ("200 OK", b"whole page")
    preview.come_to(["around"])
    assert preview.kept(worse) is None
    assert preview.kept(LAMP) is not None


def test_a_page_that_is_gone_is_not_laid_down(tmp_path: Path) -> None:
    """Nor is one that never was, nor a file elsewhere."""
    preview = Preview()
    built(preview, tmp_path, LAMP)
    built(preview, tmp_path)
    assert ask(preview, tmp_path)[0] == "404 Not Found"
    assert ask(preview, tmp_path, "/../lamp.html")[0] == "404 Not Found"
    assert list(tmp_path.iterdir()) == []


def test_a_folder_that_takes_nothing(tmp_path: Path) -> None:
    """A full or failing disk leaves the answer that was there before."""
    preview = Preview()
    (tmp_path / "procedures").write_text("no folder", encoding="utf-8")
    built(preview, tmp_path, LAMP)
    assert ask(preview, tmp_path)[0] == "404 Not Found"


def test_changes_are_looked_for_often(tmp_path: Path) -> None:
    """What was watched before is looked at as often as what is watched from now on."""
    observer = PollingObserver(timeout=5)
    observer.schedule(FileSystemEventHandler(), str(tmp_path))
    look_often(observer)
    assert [one.timeout for one in (observer, *observer.emitters)] == [LOOK_SECONDS] * 2
