"""A preview that follows what is saved, as a person runs it: a real server on a free port."""

from __future__ import annotations

import os
import re
import signal
import socket
import subprocess
import sys
import time
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from urllib.error import HTTPError, URLError
from urllib.request import urlopen

import pytest

from tests.shed import SETTINGS, procedure, write_files, write_shed

PATIENCE_SECONDS = 60.0
"""A busy machine is slow; a preview that does not come at all is what fails."""
PAGE = "procedures/dark-lamp.html"
BAD = procedure("dark-lamp", "Lamp stays dark").replace("    do: Look", "    dp: Look")
BUILDING = "Building documentation..."


def free_port() -> int:
    """Return a port nobody uses at the moment."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])


def wait_for(is_so: Callable[[], bool]) -> None:
    """Wait until something is so. Raises AssertionError when that takes too long."""
    end = time.monotonic() + PATIENCE_SECONDS
    while not is_so():
        assert time.monotonic() < end
        time.sleep(0.05)


@dataclass(frozen=True)
class Preview:
    """A running preview of a project."""

    folder: Path
    port: int
    log: Path

    def get(self, path: str) -> str:
        """Return a page, or what stands in its place; nothing while there is no server."""
        try:
            with urlopen(f"http://127.0.0.1:{self.port}/{path}", timeout=30) as answer:
                return str(answer.read().decode("utf-8", "replace"))
        except HTTPError as error:
            return str(error.read().decode("utf-8", "replace"))
        except (URLError, OSError):
            return ""

    def status(self, path: str) -> int:
        """Return how a page is answered."""
        try:
            with urlopen(f"http://127.0.0.1:{self.port}/{path}", timeout=30) as answer:
                return int(answer.status)
        except HTTPError as error:
            return error.code

    def see(self, words: str, path: str = PAGE) -> None:
        """Wait until a page says these words."""
        wait_for(lambda: words in self.get(path))

    def save(self, text: str, name: str = "procedures/dark-lamp.yaml") -> None:
        """Save a file of the project."""
        write_files(self.folder, {name: text})

    def builds(self) -> int:
        """Return how many builds were begun."""
        return self.log.read_text("utf-8").count(BUILDING)


@contextmanager
def serve(config: Path, command: Sequence[str]) -> Iterator[Preview]:
    """Run a preview, and stop it as Ctrl+C does."""
    port, log = free_port(), config.parent.parent / "serve.log"
    words = [word.format(config=config, port=port) for word in command]
    with log.open("wb") as out:
        running = subprocess.Popen(
            [sys.executable, *words],
            stdout=out,
            stderr=subprocess.STDOUT,
            cwd=config.parent,
            env={**os.environ, "NO_MKDOCS_2_WARNING": "1", "PYTHONUNBUFFERED": "1"},
        )
    try:
        yield Preview(config.parent, port, log)
    finally:
        running.send_signal(signal.SIGINT)
        running.wait(PATIENCE_SECONDS)


PULLCORD = ("-c", "from pullcord.cli import main; main()", "serve", "-f", "{config}")
COMMANDS = {
    "pullcord": (*PULLCORD, "--port", "{port}"),
    "mkdocs": ("-m", "mkdocs", "serve", "-f", "{config}", "-a", "127.0.0.1:{port}"),
}


@contextmanager
def shed(folder: Path, command: str = "pullcord") -> Iterator[Preview]:
    """Preview a shed of two procedures; wait until it is there."""
    config = write_shed(folder / "shed", ("dark-lamp", "dim-lamp"))
    with serve(config, COMMANDS[command]) as running:
        running.see("Lamp dark-lamp")
        yield running


@pytest.fixture
def preview(tmp_path: Path) -> Iterator[Preview]:
    """Preview the shed by our own command."""
    with shed(tmp_path) as running:
        yield running


@pytest.mark.parametrize("command", COMMANDS)
def test_a_mistake_is_shown_and_the_last_good_page_stays(tmp_path: Path, command: str) -> None:
    """A saved change is seen; a mistake stands on top with its line; mended, it is gone."""
    with shed(tmp_path, command) as preview:
        check_mistake(preview)


def check_mistake(preview: Preview) -> None:
    """Save a change, a mistake and its mending, and see each of them."""
    preview.save(procedure("dark-lamp", "Lamp is out"))
    preview.see("Lamp is out")
    preview.save(BAD)
    preview.see("unknown-key")
    page = preview.get(PAGE)
    line = BAD.split("\n").index("    dp: Look whether the switch is on.") + 1
    assert f"procedures/dark-lamp.yaml:{line}:5: error: " in page
    assert "\n    dp: Look whether the switch is on.\n    ^\n" in page
    text = page.partition("<article")[2]
    assert text.index('role="alert"') < text.index("Lamp is out")
    assert 'role="alert"' in preview.get("procedures/dim-lamp.html")
    assert 'role="alert"' in preview.get("bench.html")
    preview.save(procedure("dark-lamp", "Lamp is lit"))
    preview.see("Lamp is lit")
    assert 'role="alert"' not in preview.get(PAGE)
    assert "Traceback" not in preview.log.read_text("utf-8")


def test_pages_that_a_change_does_not_reach_stay(preview: Preview) -> None:
    """They are no part of the next build, nor of one after nothing was changed, and yet there."""
    other = preview.get("procedures/dim-lamp.html")
    assert "Lamp dim-lamp" in other
    write_files(preview.folder, {"docs/own.md": "# Ours\n\n[Lamp](procedures/dim-lamp.md#done)\n"})
    preview.see("Ours", "own.html")
    for title in ("Lamp is out", "Lamp is out", "Lamp is lit"):
        seen = preview.builds()
        preview.save(procedure("dark-lamp", title))
        wait_for(lambda seen=seen: preview.builds() > seen)  # type: ignore[misc]
        preview.see(title)
        assert told(preview.get("procedures/dim-lamp.html")) == told(other)
        assert 'href="procedures/dim-lamp.html#done"' in preview.get("own.html")
        assert "Our bench" in preview.get("bench.html")
        assert title in preview.get("")
    said = preview.log.read_text("utf-8")
    assert "Traceback" not in said
    assert "WARNING" not in said


def told(page: str) -> str:
    """Return a page without what MkDocs adds to see changes, and the navigation around it."""
    return page.partition("<article")[2].partition("</article")[0]


def test_a_page_that_is_deleted_is_gone(preview: Preview) -> None:
    """No page outlives its file, not even where somebody waits for it while it goes."""
    path = "procedures/dim-lamp.html"
    assert preview.status(path) == 200
    (preview.folder / "procedures" / "dim-lamp.yaml").unlink()
    wait_for(lambda: preview.status(path) == 404)
    assert preview.status(PAGE) == 200
    assert preview.status(path) == 404


def test_a_title_of_ones_own_reaches_every_page(preview: Preview) -> None:
    """The navigation around a page that stays is made anew when another page is named anew."""
    write_files(preview.folder, {"docs/own.md": "# Ours\n\nText\n"})
    preview.see("Ours", "procedures/dim-lamp.html")
    write_files(preview.folder, {"docs/own.md": "# Theirs\n\nText\n"})
    preview.see("Theirs", "procedures/dim-lamp.html")


def test_settings_that_cannot_be_read_stop_nothing(preview: Preview) -> None:
    """A mistake in `mkdocs.yml` is told on the pages too, and mended the same way."""
    preview.save(SETTINGS + "nav: [\n", "mkdocs.yml")
    preview.see('role="alert"')
    assert "Lamp dark-lamp" in preview.get(PAGE)
    preview.save(SETTINGS, "mkdocs.yml")
    wait_for(lambda: 'role="alert"' not in preview.get(PAGE))


def test_it_rests_when_nothing_changes(preview: Preview) -> None:
    """What a build writes does not start the next one, not even where everything is watched."""
    inside = SETTINGS + "      procedures: [.]\n      cache: procedures/kept\n"
    preview.save(inside, "mkdocs.yml")
    wait_for(lambda: preview.builds() >= 2)
    preview.save(procedure("dark-lamp", "Lamp is out"))
    preview.see("Lamp is out")
    time.sleep(2)  # Two changes may have been two builds.
    seen = preview.builds()
    time.sleep(3)
    assert preview.builds() == seen


def test_papers_and_the_binder_are_made_when_asked_for(preview: Preview) -> None:
    """They are as new as the pages, though no build makes them."""
    assert "%PDF" in preview.get("print/dark-lamp.pdf")
    assert "search-index.js" not in preview.get("assets/pullcord/nothing.js")
    assert "pullcordSearch.start" in preview.get("assets/pullcord/search-index.js")
    preview.save(procedure("dim-lamp", "Lamp is out"), "procedures/dim-lamp.yaml")
    preview.see("Lamp is out", "procedures/dim-lamp.html")
    assert "Lamp is out" in preview.get("binder.html")
    assert "Lamp is out" in preview.get("one-file/dim-lamp.html")


def test_it_begins_with_a_mistake(tmp_path: Path) -> None:
    """Who starts with a file that cannot be built from sees what is wrong, and then the site."""
    config = write_shed(tmp_path / "shed")
    (config.parent / "procedures" / "dark-lamp.yaml").write_text(BAD, encoding="utf-8")
    with serve(config, COMMANDS["pullcord"]) as preview:
        preview.see("unknown-key", "")
        assert "unknown-key" in preview.get(PAGE)
        preview.save(procedure("dark-lamp", "Lamp is lit"))
        preview.see("Lamp is lit")
        assert 'role="alert"' not in preview.get("")


def test_the_shop_reads_what_was_built(tmp_path: Path) -> None:
    """`--lan` serves the last built site, prints where, and says who can read it."""
    config = write_shed(tmp_path / "shed")
    write_files(config.parent, {"site/index.html": "<p>built</p>"})
    with serve(config, (*COMMANDS["pullcord"], "--lan")) as running:
        running.see("built", "")
        running.save(procedure("dark-lamp", "Lamp is out"))
        assert running.get(PAGE).count("404") > 0
    said = running.log.read_text("utf-8")
    assert re.search(rf"The site is at http://[\d.]+:{running.port}/\n", said)
    assert "nothing is encrypted" in said
    assert "Anyone on this network can read" in said
    assert "▀" in said
    assert "Traceback" not in said


def test_a_site_that_was_never_built_is_not_served(tmp_path: Path) -> None:
    """The words say what to do first."""
    config = write_shed(tmp_path)
    done = subprocess.run(
        [sys.executable, *(word.format(config=config) for word in PULLCORD), "--lan"],
        capture_output=True,
        text=True,
        check=False,
        timeout=PATIENCE_SECONDS,
    )
    assert done.returncode == 1
    assert "run `pullcord build` first" in done.stderr
