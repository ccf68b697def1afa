"""A small made-up project on disk, for tests that build a whole site."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

SETTINGS = """\
site_name: Test shed
theme: material
plugins:
  - pullcord:
      library: false
"""

PROCEDURE = """\
procedure: {name}
title: {title}
symptom: The lamp on the bench stays dark.
about: For anyone with a lamp that stays dark. It goes no further than the bulb.
start: look
causes:
  bulb: {{title: Bulb burnt out, remedy: Fit a new bulb of the same kind.}}
  switch: {{title: Switch was off, remedy: Turn it on.}}
steps:
  look:
    title: Look at the switch
    do: Look whether the switch is on.
    ask: Is it on?
    answers:
      it is on: step swap
      it is off: cause switch
  swap:
    title: Swap the bulb
    do: Put in a bulb that works in another lamp.
    ask: Does it light?
    answers:
      it lights: cause bulb
      it stays dark: done
"""


def write_files(folder: Path, files: Mapping[str, str]) -> Path:
    """Write files by their paths below a folder, and return the folder."""
    for name, text in files.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return folder


def procedure(name: str, title: str = "Lamp stays dark") -> str:
    """Return a whole, faultless procedure."""
    return PROCEDURE.format(name=name, title=title)


def write_shed(
    folder: Path, names: tuple[str, ...] = ("dark-lamp",), settings: str = SETTINGS
) -> Path:
    """Write a project with a page of its own and the named procedures; return its `mkdocs.yml`."""
    own = {f"procedures/{name}.yaml": procedure(name, f"Lamp {name}") for name in names}
    page = "# Our bench\n\nSee [what it is doing](index.md).\n"
    write_files(folder, {"mkdocs.yml": settings, "docs/bench.md": page, **own})
    return folder / "mkdocs.yml"
