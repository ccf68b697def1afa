"""From a saved file to its page: `.venv/bin/python -m benchmarks.preview 100 300`.

Starts a preview of a made-up library of so many procedures of 30 steps, changes one file again and
again, and says how long it takes until its page has the change. Seconds by the clock: run it on a
machine that does nothing else.
"""

from __future__ import annotations

import os
import signal
import socket
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from urllib.error import URLError
from urllib.request import urlopen

from benchmarks.library import name_of, write_library
from benchmarks.table import Line, at_most

STEPS = 30
CHANGES = 7
MOST_SECONDS = 1.0
SETTINGS = "site_name: x\ntheme: material\nplugins:\n  - pullcord: {library: false}\n"
START = "from pullcord.cli import main; main()"


NOTE = (
    f"Procedures of {STEPS} steps; one changes, and its page is asked for until it has the change. "
    "A file saved with nothing changed in it is timed until the rebuild is over. Seconds by the "
    f"clock; medians of {CHANGES}."
)


@dataclass(frozen=True)
class Waited:
    """Seconds a preview let one wait."""

    first: float
    """Until the first page could be seen, with nothing kept from before."""
    changes: list[float]
    nothing: list[float]
    """Until a rebuild without a change was over."""


def main() -> None:
    """Print a line for each size."""
    for line in lines(tuple(map(int, sys.argv[1:]))):
        print(line)


def lines(sizes: tuple[int, ...]) -> Iterator[Line]:
    """Yield the lines of each size."""
    for size in sizes:
        with tempfile.TemporaryDirectory() as folder:
            waited = measure(Path(folder), size)
        yield Line(f"preview of {size}, first build", f"{waited.first:.1f} s (1 run)")
        middle, most = statistics.median(waited.changes), max(waited.changes)
        what = f"preview of {size}, save to page (slowest {most:.2f} s)"
        yield at_most(what, middle, "s", MOST_SECONDS, CHANGES)
        none = statistics.median(waited.nothing)
        yield at_most(f"preview of {size}, saved unchanged", none, "s", MOST_SECONDS, CHANGES)


def measure(folder: Path, procedures: int) -> Waited:
    """Return what a preview of so many procedures lets one wait."""
    write_library(folder / "procedures", procedures, STEPS)
    (folder / "docs").mkdir()
    (folder / "mkdocs.yml").write_text(SETTINGS, encoding="utf-8")
    port = free_port()
    words = [sys.executable, "-c", START, "serve", "--port", str(port)]
    begun = time.monotonic()
    quiet = {**os.environ, "NO_MKDOCS_2_WARNING": "1"}
    running = subprocess.Popen(words, cwd=folder, stderr=subprocess.DEVNULL, env=quiet)
    try:
        name = name_of(procedures // 2)
        site = f"http://127.0.0.1:{port}"
        page = f"{site}/procedures/{name}.html"
        wait_for(page, "Made up", 3600)
        first = time.monotonic() - begun
        changes = [change(folder, name, page, number) for number in range(CHANGES)]
        return Waited(first, changes, [save_unchanged(folder, name, site) for _ in range(CHANGES)])
    finally:
        running.send_signal(signal.SIGINT)
        running.wait()


def save_unchanged(folder: Path, name: str, site: str) -> float:
    """Save a file as it is and return the seconds until the rebuild is over."""
    time.sleep(1.5)
    epoch = ask_epoch(site, "0")
    begun = time.monotonic()
    (folder / "procedures" / f"{name}.yaml").touch()
    while ask_epoch(site, epoch) == epoch:
        pass
    return time.monotonic() - begun


def ask_epoch(site: str, known: str) -> str:
    """Ask MkDocs which build it shows; it answers when there is one after the known."""
    with urlopen(f"{site}/livereload/{known}/1", timeout=120) as answer:  # noqa: S310
        return str(answer.read().decode())


def change(folder: Path, name: str, page: str, number: int) -> float:
    """Save a change and return the seconds until the page has it."""
    file = folder / "procedures" / f"{name}.yaml"
    text = file.read_text(encoding="utf-8")
    time.sleep(1.5)  # A person does not save twice a second either.
    begun = time.monotonic()
    file.write_text(text.replace("Shut it off", f"Shut it off {number}"), encoding="utf-8")
    wait_for(page, f"Shut it off {number}", 120)
    spent = time.monotonic() - begun
    file.write_text(text, encoding="utf-8")
    wait_for(page, "Shut it off<", 120)
    return spent


def wait_for(page: str, words: str, seconds: float) -> None:
    """Ask for a page until it says the words. Raises TimeoutError."""
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        try:
            with urlopen(page, timeout=seconds) as answer:  # noqa: S310
                if words in answer.read().decode():
                    return
        except URLError:
            pass
        time.sleep(0.02)
    raise TimeoutError(f"{page} never said {words!r}")


def free_port() -> int:
    """Return a port nobody uses at the moment."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])


if __name__ == "__main__":
    main()
