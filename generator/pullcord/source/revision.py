"""The Git revision of a folder, read from Git's own files: no process is started."""

from __future__ import annotations

import re
from pathlib import Path

_REVISION = re.compile(r"[0-9a-f]{40}(?:[0-9a-f]{24})?")
_REFERENCE = re.compile(r"refs/[\w.@+/-]+")
_MOST_BYTES = 8 * 1024 * 1024
_MOST_REFERENCES = 5


def read_revision(folder: Path) -> str | None:
    """Return the full revision that is checked out where a folder lies, or None.

    None also when Git keeps its references in a form not read here, or a file is damaged.
    """
    try:
        store = _find_store(folder.resolve())
        return _follow(store, "HEAD", _MOST_REFERENCES) if store else None
    except (OSError, RuntimeError, ValueError):
        return None


def _find_store(folder: Path) -> Path | None:
    """Return Git's folder for the checkout around a folder; a worktree has a file that names it."""
    for place in (folder, *folder.parents):
        git = place / ".git"
        if git.is_dir():
            return git
        if git.is_file():
            _, _, target = _read(git).partition("gitdir:")
            return (place / target.strip()).resolve() if target.strip() else None
    return None


def _follow(store: Path, name: str, references_left: int) -> str | None:
    text = _read_reference(store, name)
    if text is None or references_left == 0:
        return None
    if text.startswith("ref:"):
        target = text.removeprefix("ref:").strip()
        is_safe = _REFERENCE.fullmatch(target) and ".." not in target
        return _follow(store, target, references_left - 1) if is_safe else None
    return text if _REVISION.fullmatch(text) else None


def _read_reference(store: Path, name: str) -> str | None:
    common = store / "commondir"
    shared = (store / _read(common).strip()).resolve() if common.is_file() else store
    for place in (store, shared):
        if (place / name).is_file():
            return _read(place / name).strip()
    return _read_packed(shared / "packed-refs", name)


def _read_packed(packed: Path, name: str) -> str | None:
    lines = _read(packed).splitlines() if packed.is_file() else []
    pairs = (line.split(" ", 1) for line in lines if not line.startswith(("#", "^")))
    return next((pair[0] for pair in pairs if pair[1:] == [name]), None)


def _read(path: Path) -> str:
    with path.open("rb") as file:
        return file.read(_MOST_BYTES).decode("utf-8", "replace")
