"""Our stand-in for workers behaves like one, on a page opened from a folder."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page

from pullcord.source.places import site_templates
from tests.browser.conftest import OpenTablet
from tests.shed import write_files

SCRIPT = site_templates() / "assets" / "iframe-worker.js"

WORKER = """\
const early = typeof later;
addEventListener("message", async (event) => {
  if (event.data === "load") {
    await importScripts("lib/one.js", "lib/two.js");
    postMessage({early, order: self.order});
  } else {
    postMessage({echo: event.data});
  }
});
"""

FILES = {
    "page.html": '<html><head><script src="iframe-worker.js"></script></head><body></body></html>',
    "work/worker.js": WORKER,
    "work/lib/one.js": 'self.order = ["one"];',
    "work/lib/two.js": 'self.order.push("two");',
}


@pytest.fixture
def page(open_tablet: OpenTablet, tmp_path: Path) -> Page:
    """Give a page that has loaded the stand-in and nothing else."""
    write_files(tmp_path, {**FILES, "iframe-worker.js": SCRIPT.read_text(encoding="utf-8")})
    page = open_tablet()
    page.goto(f"file://{tmp_path}/page.html")
    return page


def answers(page: Page, script: str) -> Any:
    """Run a script that calls `done` with what it found out, and return that."""
    return page.evaluate(f"() => new Promise((done) => {{ {script} }})")


def test_browser_starts_no_worker_from_a_folder(open_tablet: OpenTablet, tmp_path: Path) -> None:
    """Without the stand-in there is nothing: when this fails, the stand-in is no longer needed."""
    write_files(tmp_path, {"page.html": "<html></html>", "work/worker.js": WORKER})
    page = open_tablet()
    page.goto(f"file://{tmp_path}/page.html")
    try_it = """
      try {
        const worker = new Worker("work/worker.js");
        worker.onerror = () => done("refused");
        worker.onmessage = () => done("works");
        worker.postMessage("hello");
      } catch (error) { done("refused"); }
    """
    assert answers(page, try_it) == "refused"


def test_messages_before_the_script_has_loaded_arrive_in_order(page: Page) -> None:
    """What is posted at once is answered, one by one, as with a real worker."""
    found = answers(
        page,
        """
        const heard = [];
        const worker = new Worker("work/worker.js");
        worker.onmessage = (event) => {
          heard.push(event.data.echo);
          if (heard.length === 3) done(heard);
        };
        [1, {two: [2]}, "three"].forEach((data) => worker.postMessage(data));
        """,
    )
    assert found == [1, {"two": [2]}, "three"]


def test_listeners_of_both_kinds_hear_an_answer(page: Page) -> None:
    """A listener that was added and the one that was set both get the message, later."""
    found = answers(
        page,
        """
        const heard = [];
        const note = (who) => (event) => {
          heard.push([who, event.data.echo]);
          if (heard.length === 3) done(heard);
        };
        const worker = new Worker("work/worker.js");
        worker.addEventListener("message", note("added"));
        worker.onmessage = note("set");
        worker.postMessage("x");
        heard.push("posted");
        """,
    )
    assert found[0] == "posted"
    assert sorted(found[1:]) == [["added", "x"], ["set", "x"]]


def test_data_is_copied(page: Page) -> None:
    """Neither side sees what the other does to its data afterwards."""
    found = answers(
        page,
        """
        const data = {word: "before"};
        const worker = new Worker("work/worker.js");
        worker.onmessage = (event) => done([event.data.echo.word, event.data.echo === data]);
        worker.postMessage(data);
        data.word = "after";
        """,
    )
    assert found == ["before", False]


def test_scripts_are_loaded_in_order(page: Page) -> None:
    """A worker that awaits importScripts gets them one after another, from beside its own."""
    found = answers(
        page,
        """
        window.later = 1;
        const worker = new Worker("work/worker.js");
        worker.onmessage = (event) => done(event.data);
        worker.postMessage("load");
        """,
    )
    assert found == {"early": "undefined", "order": ["one", "two"]}


def test_missing_script_is_an_error(page: Page) -> None:
    """A worker whose script is not there says so."""
    found = answers(
        page,
        """
        const worker = new Worker("gone.js");
        worker.onerror = (event) => done(event.type);
        """,
    )
    assert found == "error"


def test_terminated_worker_is_gone(page: Page) -> None:
    """After terminate no answer comes and the frame is off the page."""
    found = answers(
        page,
        """
        const worker = new Worker("work/worker.js");
        worker.onmessage = () => {
          worker.onmessage = () => done("still answers");
          worker.terminate();
          worker.postMessage("again");
          setTimeout(() => done(document.querySelectorAll("iframe").length), 300);
        };
        worker.postMessage("once");
        """,
    )
    assert found == 0


def test_frame_is_hidden_from_everyone(page: Page) -> None:
    """The frame takes no room, no focus and no reader's attention."""
    page.evaluate("() => { new Worker('work/worker.js') }")
    frame = page.locator("iframe")
    assert frame.is_hidden()
    assert frame.get_attribute("aria-hidden") == "true"
    assert frame.get_attribute("tabindex") == "-1"
