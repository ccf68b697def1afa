"""From a saved file to its page: `.venv/bin/python benchmarks/preview.py 100 300`.

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
from pathlib import Path
from urllib.error import URLError
from urllib.request import urlopen

from library import name_of, write_library

STEPS = 30
CHANGES = 7
SETTINGS = "site_name: x\ntheme: material\nplugins:\n  - pullcord: {library: false}\n"
START = "from pullcord.cli import main; main()"


def main() -> None:
    """Print a line for each size."""
    for word in sys.argv[1:]:
        with tempfile.TemporaryDirectory() as folder:
            first, seconds = measure(Path(folder), int(word))
        middle, most = statistics.median(seconds), max(seconds)
        print(f"{word:>5} procedures: first build {first:.0f} s, "
              f"then {middle:.2f} s from save to page (at most {most:.2f} s)")  # fmt: skip


def measure(folder: Path, procedures: int) -> tuple[float, list[float]]:
    """Return the seconds of the first build, and of each change."""
    write_library(folder / "procedures", procedures, STEPS)
    (folder / "docs").mkdir()
    (folder / "mkdocs.yml").write_text(SETTINGS, encoding="utf-8")
    port = free_port()
    words = [sys.executable, "-c", START, "serve", "--port", str(port)]
    begun = time.monotonic()
    quiet = {**os.environ, "NO_MKDOCS_2_WARNING": "1"}
    running = subprocess.Popen(words, cwd=folder, stderr=subprocess.DEVNULL, env=quiet)  # noqa: S603
    try:
        name = name_of(procedures // 2)
        page = f"http://127.0.0.1:{port}/procedures/{name}.html"
        wait_for(page, "Made up", 3600)
        first = time.monotonic() - begun
        return first, [change(folder, name, page, number) for number in range(CHANGES)]
    finally:
        running.send_signal(signal.SIGINT)
        running.wait()


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
