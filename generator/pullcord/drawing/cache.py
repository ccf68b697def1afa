"""What is costly to make, kept between builds by what it was made from. Safe to delete at any time.

An entry is named by the SHA-256 of its key, holds the SHA-256 of its content, and is written beside
and renamed: two builds may share a folder, and one that is killed leaves nothing half written.
"""

from __future__ import annotations

import os
import tempfile
import time
import zlib
from collections.abc import Callable, Iterable, Iterator
from contextlib import suppress
from functools import cache, lru_cache
from hashlib import sha256
from importlib.metadata import version
from pathlib import Path
from platform import python_version
from typing import Any, TypeVar, cast

from pydantic import TypeAdapter

PACKAGES = (
    "pullcord",
    "brotli",
    "font-source-sans-pro",
    "fonttools",
    "graphviz",
    "jinja2",
    "markupsafe",
    "networkx",
    "pydantic",
    "typst",
    "ziaplot",
)
"""Everything beside our own source that has a say in all that is kept."""
MOST_BYTES = 512 * 2**20
"""How much is kept after a build beside all that it used; what was used longest ago goes first."""
_FAST = 1
"""Of zlib's levels: pages get to a fifth of their size, and are read sooner than uncompressed."""
_NAME_CHARACTERS = 64
_STALE_SECONDS = 3600.0
"""A file of another name that is older was left behind by a build that was killed."""
_CLOCKS_SECONDS = 2.0
"""A disk may keep times no finer than that."""
_NO_PLACE = (OSError, ValueError)
"""Raised for a place that cannot be read or written; the second for a name no disk takes."""

Value = TypeVar("Value")


def keep(folder: Path | None, key: Iterable[str], make: Callable[[], bytes]) -> bytes:
    """Return what was kept for the key, or make it and keep it.

    The key names all that the bytes depend on; our own source and the versions of all that has a
    say in it are added. Without a folder, or when it cannot be written to, the bytes are made every
    time.
    """
    if folder is None:
        return make()
    words = tuple(key)
    kept = find(folder, words)
    if kept is None:
        kept = make()
        put(folder, words, kept)
    return kept


def find(folder: Path, key: Iterable[str]) -> bytes | None:
    """Return what was kept for the key, None when nothing sound is there."""
    return _read(_place(folder, key))


def is_there(folder: Path | None, key: Iterable[str]) -> bool:
    """Say whether something was kept for the key, sound or not."""
    try:
        return folder is not None and _place(folder, key).is_file()
    except _NO_PLACE:
        return False


def put(folder: Path, key: Iterable[str], content: bytes) -> None:
    """Keep bytes for a key, as `keep` would have done."""
    with suppress(*_NO_PLACE):
        _write(_place(folder, key), content)


def keep_value(
    folder: Path | None, key: Iterable[str], kind: TypeAdapter[Value], make: Callable[[], Value]
) -> Value:
    """Return plain data that was kept for the key, or make it and keep it; as `keep`."""
    if folder is None:
        return make()
    words = tuple(key)
    with suppress(LookupError):
        return cast("Value", _read_value(_place(folder, words), kind))
    return kind.validate_json(keep(folder, words, lambda: kind.dump_json(make())))


def trim(folder: Path | None, since: float, most_bytes: int = MOST_BYTES) -> None:
    """Delete what was used longest ago until no more than that is left, and half-written files.

    What was used since a time, in seconds as `time.time` gives them, stays: the next build wants it
    again, however large the library is.
    """
    if folder is None:
        return
    left = most_bytes
    for used, size, name in sorted(_entries(folder), reverse=True):
        if len(name) == _NAME_CHARACTERS:
            left -= size
            is_over = left < 0 and used < since - _CLOCKS_SECONDS
        else:
            is_over = used < time.time() - _STALE_SECONDS
        if is_over:
            with suppress(OSError):
                (folder / name).unlink()


def _place(folder: Path, key: Iterable[str]) -> Path:
    return folder / sha256("\0".join((*_our_version(), *key)).encode()).hexdigest()


@lru_cache(maxsize=2048)  # A preview needs the same pages again and again.
def _read_value(path: Path, kind: TypeAdapter[Any]) -> object:
    """Return what was kept at a place. Raises LookupError when nothing sound is there."""
    kept = _read(path)
    if kept is None:
        raise LookupError(path)
    return kind.validate_json(kept)


def _entries(folder: Path) -> Iterator[tuple[float, int, str]]:
    """Yield when each file was last used, its size and its name."""
    with suppress(*_NO_PLACE):
        for entry in os.scandir(folder):
            if entry.is_file(follow_symlinks=False):
                found = entry.stat(follow_symlinks=False)
                yield found.st_mtime, found.st_size, entry.name


def _read(path: Path) -> bytes | None:
    """Return the content of an entry; None when there is none or it is not what was written."""
    try:
        digest, _, packed = path.read_bytes().partition(b"\n")
    except _NO_PLACE:
        return None
    if digest != _digest(packed):
        return None
    with suppress(OSError):
        os.utime(path)
    return zlib.decompress(packed)


def _write(path: Path, content: bytes) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    packed = zlib.compress(content, _FAST)
    handle, beside = tempfile.mkstemp(dir=path.parent)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(_digest(packed) + b"\n" + packed)
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
    package = Path(__file__).parents[1]
    for path in sorted(package.rglob("*.py")):
        source.update(path.relative_to(package).as_posix().encode() + b"\0" + path.read_bytes())
    versions = (f"{name} {version(name)}" for name in PACKAGES)
    return (python_version(), *versions, source.hexdigest())
