"""Geometry kept between builds, by the content it was made from. Safe to delete at any time."""

from __future__ import annotations

import os
import tempfile
from collections.abc import Callable, Iterable
from contextlib import suppress
from functools import cache
from hashlib import sha256
from importlib.metadata import version
from pathlib import Path

PACKAGES = ("pullcord", "font-source-sans-pro", "fonttools", "brotli", "networkx")
"""Everything beside our own source that has a say in what is kept."""


def keep(folder: Path | None, key: Iterable[str], make: Callable[[], bytes]) -> bytes:
    """Return what was kept for the key, or make it and keep it.

    The key names all that the bytes depend on; Pullcord's own version is added. Without a folder,
    or when it cannot be written to, the bytes are made every time.
    """
    if folder is None:
        return make()
    path = folder / sha256("\0".join((*_our_version(), *key)).encode()).hexdigest()
    kept = _read(path)
    if kept is None:
        kept = make()
        with suppress(OSError):
            _write(path, kept)
    return kept


def _read(path: Path) -> bytes | None:
    """Return the content of an entry; None when there is none or it is not what was written."""
    try:
        digest, _, content = path.read_bytes().partition(b"\n")
    except OSError:
        return None
    return content if digest == _digest(content) else None


def _write(path: Path, content: bytes) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    # Written beside and renamed: whoever reads at the same time sees all of it or nothing.
    handle, beside = tempfile.mkstemp(dir=path.parent)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(_digest(content) + b"\n" + content)
        Path(beside).replace(path)
    except OSError:
        Path(beside).unlink(missing_ok=True)
        raise


def _digest(content: bytes) -> bytes:
    return sha256(content).hexdigest().encode("ascii")


@cache
def _our_version() -> tuple[str, ...]:
    """Return the versions of all packages, and of our own source while somebody works on it."""
    source = sha256()
    for path in sorted(Path(__file__).parent.glob("*.py")):
        source.update(path.read_bytes())
    return (*(f"{name} {version(name)}" for name in PACKAGES), source.hexdigest())
