"""The machine and the versions, in general words: no name and no path of it."""

from __future__ import annotations

import os
import platform
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path

PACKAGES = ("pullcord", "mkdocs", "mkdocs-material", "Jinja2", "PyYAML", "typst", "graphviz-pure",
            "Sphinx", "playwright")  # fmt: skip


def describe() -> str:
    """Return lines about where this runs."""
    load = (
        f"load average at the start {os.getloadavg()[0]:.1f}" if hasattr(os, "getloadavg") else ""
    )
    system = f"{platform.system()} {platform.machine()}, {os.cpu_count()} cores, {_memory()}"
    versions = ", ".join(f"{name} {_version(name)}" for name in PACKAGES)
    return f"{system} {load}\n\nPython {platform.python_version()}, {versions}"


def _memory() -> str:
    file = Path("/proc/meminfo")
    if not file.is_file():
        return ""
    kib = int(file.read_text(encoding="ascii").split()[1])
    return f"{kib * 1024 / 1e9:.0f} GB of memory,"


def _version(name: str) -> str:
    try:
        return version(name)
    except PackageNotFoundError:
        return "absent"
