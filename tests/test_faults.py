"""Whatever happens to a build, there is a good site, and the message says what to do."""

from __future__ import annotations

import os
import random
import shutil
import sys
import time
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest

from tests.faulty import Builds, Ended, Run
from tests.shed import SETTINGS, write_files, write_shed

KILLS = int(os.environ.get("PULLCORD_KILLS", "12"))
"""How many builds are killed; 200 are run by hand before a release."""
SEED = int(os.environ.get("PULLCORD_SEED", "0")) or random.SystemRandom().randrange(1, 10**6)
SWAP_LINES = 120
"""Fewer than the swap of this site takes, clearing up included; most kills fall into the first."""

Site = dict[str, bytes]


def site_bytes(site: Path) -> Site:
    """Return every file of a site."""
    files = (path for path in sorted(site.rglob("*")) if path.is_file())
    return {path.relative_to(site).as_posix(): path.read_bytes() for path in files}


@dataclass(frozen=True)
class Shed:
    """A project with a good site, and what its site is with other words on a page."""

    config: Path
    builds: Builds
    sites: dict[str, Site]
    seconds: float
    """What a build takes when nothing happens to it."""

    @property
    def site(self) -> Path:
        """Where the site is."""
        return self.config.parent / "site"

    def write(self, words: str, settings: str = SETTINGS) -> None:
        """Put other words on the page written by hand."""
        write_files(self.config.parent, {"docs/bench.md": f"# Our bench\n\n{words}\n"})
        self.config.write_text(settings, encoding="utf-8")

    def build(self, fault: str = "", value: str = "", face: str = "mkdocs") -> Ended:
        """Build, with a fault or without."""
        (ended,) = self.builds.run(Run(str(self.config), fault, value, face=face))
        return ended

    def stands(self) -> str:
        """Return the words on the site that stands; it is whole, or it is neither."""
        now = site_bytes(self.site)
        return next((words for words, site in self.sites.items() if site == now), "neither")

    def assert_clean(self, words: str) -> None:
        """Hold that the next build succeeds and leaves nothing beside the site."""
        self.write(words)
        ended = self.build()
        assert ended.code == 0, ended.said
        assert self.stands() == words
        assert not [path for path in self.config.parent.iterdir() if "building" in path.name]


@pytest.fixture(scope="module")
def shed(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Shed]:
    """Give a project whose site was built with the words `before` and with the words `after`."""
    config = write_shed(tmp_path_factory.mktemp("shed"))
    builds, sites, seconds = Builds(), {}, 0.0
    shed = Shed(config, builds, sites, seconds)
    for words in ("after", "before"):
        shed.write(words)
        ended = shed.build()
        assert ended.code == 0, ended.said
        sites[words], seconds = site_bytes(shed.site), ended.seconds
    yield Shed(config, builds, sites, seconds)
    builds.close()


def test_killed_at_random_moments(shed: Shed) -> None:
    """The site that stands is the last good one or the new one, whole; the next build succeeds."""
    sys.stdout.write(f"PULLCORD_SEED={SEED} PULLCORD_KILLS={KILLS}\n")
    chance = random.Random(SEED)  # noqa: S311 no secret hangs on it
    ends: dict[str, int] = {}
    last, seconds = shed.stands(), shed.seconds
    for number in range(KILLS):
        words = "after" if last == "before" else "before"
        shed.write(words)
        run = _random_kill(shed, chance, number, seconds)
        (ended,) = shed.builds.run(run)
        now = shed.stands()
        assert now in (last, words), (number, run, ended)
        assert ended.code in (0, -9), (run, ended)
        seconds = seconds if ended.code else min(seconds, ended.seconds)
        how = "killed" if ended.code else "ended before"
        kind = f"{run.fault or 'by time'}: {how}, {'new' if now == words else 'last'} site stands"
        ends[kind] = ends.get(kind, 0) + 1
        last = now
    sys.stdout.writelines(f"{count:4} {kind}\n" for kind, count in sorted(ends.items()))
    assert sum(count for kind, count in ends.items() if "killed," in kind) > KILLS // 3
    shed.assert_clean("before")


def _random_kill(shed: Shed, chance: random.Random, number: int, seconds: float) -> Run:
    """Return a build to be killed: in the swap one time of three, with no cache one of twelve.

    Whatever a killed build has kept goes on being used.
    """
    if number % 3 == 2:
        line = int(SWAP_LINES * chance.random() ** 3)
        return Run(str(shed.config), "killed_in_swap", str(line))
    if number % 12 == 4:
        config = shed.config.read_text("utf-8")
        shed.config.write_text(f"{config}      cache: .cache/{number}\n", encoding="utf-8")
    return Run(str(shed.config), kill_after_seconds=chance.uniform(0, seconds))


SLOW_ENGINE = 'case "$1" in -V) echo dot 2;; *) exec sleep 60;; esac'
DOT = SETTINGS + "      layout_engine: dot\n"
FULL = "Free some room on that disk, then build again"
NO_LEAVE = "Allow writing there, or name another folder as the site's, then build again"
FAULTS = {
    "disk full at once": ("largest_file", "0", "mkdocs", FULL),
    "disk full after a page": ("largest_file", "20000", "mkdocs", FULL),
    "disk full near the end": ("largest_file", "250000", "pullcord", FULL),
    "no room for a folder": ("no_room_for_folders", "", "mkdocs", FULL),
    "read-only project": ("read_only", ".", "mkdocs", NO_LEAVE),
    "read-only site": ("read_only", "site", "pullcord", NO_LEAVE),
    "engine missing": ("engine", "", "mkdocs", "take `layout_engine: dot` out of the settings"),
    "engine hangs": ("engine", SLOW_ENGINE, "mkdocs", "split the procedure into several"),
    "engine dies": ("engine", "kill -9 $$", "mkdocs", "take `layout_engine: dot` out"),
    "engine talks nonsense": ("engine", "echo hello", "pullcord", "not this chart"),
}


@pytest.mark.parametrize("name", FAULTS)
def test_fault_leaves_the_last_good_site(shed: Shed, tmp_path: Path, name: str) -> None:
    """The build fails with plain words that say what to do, and the site stays as it was."""
    fault, value, face, words = FAULTS[name]
    before = shed.stands()
    shed.write("never seen", DOT if fault == "engine" else SETTINGS)
    if fault == "engine":
        value = str(_engine(tmp_path, value))
    folders = [shed.config.parent / value] if fault == "read_only" else []
    ended = shed.build(fault, str(folders[0]) if folders else value, face)
    for folder in folders:
        folder.chmod(0o755)
    assert ended.code == 1, ended.said
    assert words in ended.said
    assert "Traceback" not in ended.said
    assert shed.stands() == before
    assert not [path for path in shed.config.parent.iterdir() if "building" in path.name]


def _engine(folder: Path, script: str) -> Path:
    """Write a `dot` into a folder with the few programs it calls; none, when there is no script."""
    for name in ("sh", "sleep"):
        (folder / name).symlink_to(shutil.which(name) or "")
    if script:
        (folder / "dot").write_text(f"#!/bin/sh\n{script}\n", encoding="utf-8")
        (folder / "dot").chmod(0o755)
    return folder


def test_read_only_cache_costs_only_time(shed: Shed) -> None:
    """What is kept between builds may be unwritable: the site is built all the same."""
    cache = shed.config.parent / ".cache" / "pullcord"
    min(cache.iterdir(), key=lambda path: path.stat().st_size).unlink()
    shed.write("after")
    ended = shed.build("read_only", str(cache))
    cache.chmod(0o755)
    assert ended.code == 0, ended.said
    assert shed.stands() == "after"


def test_builds_at_once(shed: Shed) -> None:
    """Of three that start together those that get their turn succeed, the others say to wait."""
    shed.write("after")
    ended = shed.builds.run(*[Run(str(shed.config))] * 3)
    refused = [each for each in ended if each.code]
    assert len(refused) < 3, ended
    for each in refused:
        assert "is being built by another run. Wait until it has ended" in each.said
        assert "Traceback" not in each.said
    assert shed.stands() == "after"
    assert not [path for path in shed.config.parent.iterdir() if "building" in path.name]


def test_clock_going_back(shed: Shed) -> None:
    """Files from the future are no reason to keep an old page, nor to fail."""
    later = time.time() + 9e8
    for path in shed.config.parent.rglob("*"):
        os.utime(path, (later, later))
    words = "before" if shed.stands() == "after" else "after"
    shed.write(words)
    os.utime(shed.config.parent / "docs" / "bench.md", (0, 0))
    ended = shed.build("clock", "86400")
    assert ended.code == 0, ended.said
    assert shed.stands() == words
