"""A small project with something of everything, for tests that build it in shards."""

from __future__ import annotations

from pathlib import Path

from tests.pages.make import BIKE, PUMP
from tests.shed import SETTINGS, procedure, write_files

NAMES = ("dark-lamp", "dim-lamp", "far-lamp", "hot-lamp", "low-lamp")
COIL = """\
procedure: dark-coil
title: Measure the coil
symptom: The lamp on the bench stays dark.
signs: {seen: no lamp lights}
about: For anyone whose lamp is fed by a coil.
fits: {ignition: points}
start: coil
causes:
  coil: {title: Coil broken, remedy: Fit another coil.}
steps:
  coil:
    title: Measure the coil
    do: Unplug the coil and measure across it.
    reading: {quantity: resistance, at: unit.source, against: unit.ground, limits: source-coil,
              general: 200-300 ohm, source: common practice}
    answers: {below: cause coil, within: procedure dark-lamp, above: cause coil}
"""
JOB = """\
job: spring
machine: old-bike
taken-in: 2026-02-14
purpose: To carry ladders again.
most: 100
log:
  - {date: 2026-02-21, did: Wheels blocked., minutes: 30, photo: pictures/bike.jpg}
  - {date: 2026-03-01, procedure: dark-coil, step: coil, answer: within, reading: 250 ohm}
"""
PAGE = (
    "# Our bench\n\nThe lamp is [dark](procedures/dark-lamp.md#step-swap), or go [home](index.md)\n"
)
OWN_NAV = """\
site_url: https://shed.test/bench/
nav: [index.md, Bench: bench.md, procedures/dim-lamp.md, authors/dark-coil.md, jobs/spring.md]
"""
"""A navigation of the project's own, and an address, by which MkDocs makes a map of the site."""


def write_project(folder: Path, settings: str = "", names: tuple[str, ...] = NAMES) -> Path:
    """Write six procedures, two machines and a job in a repository; return its `mkdocs.yml`."""
    (folder / ".git").mkdir(parents=True)
    own = {f"procedures/{name}.yaml": procedure(name, f"Lamp {name}") for name in names}
    files = {
        "mkdocs.yml": f"{SETTINGS}repo_url: https://code.test/shed\nedit_uri: edit/main/docs/\n"
        + settings,
        "docs/bench.md": PAGE,
        "procedures/dark-coil.yaml": COIL,
        "machines/old-bike.yaml": BIKE,
        "machines/old-pump.yaml": PUMP,
        "jobs/spring.yaml": JOB,
        "jobs/pictures/bike.jpg": "not looked into",
        **own,
    }
    return write_files(folder, files) / "mkdocs.yml"
