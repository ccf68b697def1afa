"""What a procedure costs in seconds and bytes, built in one go and in shards.

`.venv/bin/python -m benchmarks.shards FOLDER 200 30 4` builds a made-up library of 200 procedures
of 30 steps in one go, then in four shards that share nothing, then joins them, and compares the two
sites byte by byte. A fifth number copies so many of the demo's machine sheets. Everything is built
with an empty cache, one run after the other.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

from benchmarks.library import write_library

SETTINGS = "site_name: Made up\ntheme: material\nplugins:\n  - pullcord: {library: false}\n"
DEMO = Path(__file__).parents[1] / "demo" / "machines"
DAY = "1772323200"
MOST = 999999
"""So many shards that the first of them holds nothing: what every shard costs for the others."""


def main() -> None:
    """Build, compare and print."""
    procedures, steps, count, machines = map(int, (*sys.argv[2:], "0")[:4])
    folder = Path(sys.argv[1])
    write_project(folder, procedures, steps, machines)
    print(f"{procedures} procedures of {steps} steps, {machines} machines, {count} shards")
    print(f"{'run':<12} {'CPU s':>8} {'MB held':>8}")
    run(folder, "whole", "build", "--site-dir", "whole")
    for number in range(1, count + 1):
        run(folder, f"shard {number}", "build", "--shard", f"{number}/{count}")
    shards = [f"site.shard-{number}-of-{count}" for number in range(1, count + 1)]
    run(folder, "join", "join", *shards)
    run(folder, "empty shard", "build", "--shard", f"1/{MOST}")
    print("joined is whole:", bytes_of(folder / "whole") == bytes_of(folder / "site"))
    print(f"{'folder':<24} {'files':>7} {'bytes':>12} {'a procedure':>12}")
    for place, (files, size) in sorted(by_place(folder / "whole").items()):
        print(f"{place:<24} {files:>7} {size:>12} {size // procedures:>12}")


def write_project(folder: Path, procedures: int, steps: int, machines: int) -> None:
    """Write the library with its settings."""
    shutil.rmtree(folder, ignore_errors=True)
    write_library(folder / "procedures", procedures, steps)
    (folder / "docs").mkdir()
    (folder / "machines").mkdir()
    (folder / "mkdocs.yml").write_text(SETTINGS, encoding="utf-8")
    for sheet in sorted(DEMO.glob("*.yaml"))[:machines]:
        shutil.copy(sheet, folder / "machines")


def run(folder: Path, title: str, *words: str) -> None:
    """Run `pullcord` with nothing kept, and print what it took: CPU seconds, most memory held."""
    shutil.rmtree(folder / ".cache", ignore_errors=True)
    environment = {**os.environ, "SOURCE_DATE_EPOCH": DAY}
    command = [str(Path(sys.executable).with_name("pullcord")), *words]
    process = subprocess.Popen(
        command, cwd=folder, env=environment, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL
    )
    _, status, used = os.wait4(process.pid, 0)
    if status:
        sys.exit(f"{' '.join(command)} failed")
    held = used.ru_maxrss / 1024
    print(f"{title:<12} {used.ru_utime + used.ru_stime:>8.1f} {held:>8.0f}", flush=True)


def bytes_of(site: Path) -> dict[str, bytes]:
    """Return every file of a site."""
    return {path.relative_to(site).as_posix(): path.read_bytes() for path in _files(site)}


def by_place(site: Path) -> dict[str, tuple[int, int]]:
    """Return how many files a site has in each folder, and their bytes; its own pages by name."""
    files: Counter[str] = Counter()
    sizes: Counter[str] = Counter()
    for path in _files(site):
        name = path.relative_to(site).as_posix()
        place = "search" if "/search-" in name else name.split("/")[0]
        files[place] += 1
        sizes[place] += path.stat().st_size
    return {place: (files[place], sizes[place]) for place in files}


def _files(site: Path) -> Iterator[Path]:
    return (path for path in site.rglob("*") if path.is_file())


if __name__ == "__main__":
    main()
