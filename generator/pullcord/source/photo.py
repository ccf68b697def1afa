"""Pictures that a job log names: only real pictures that lie below the log's own folder."""

from __future__ import annotations

from pathlib import Path

MOST_BYTES = 8_000_000
"""What a picture straight from a telephone has; more is left out of the site."""
BEGINNINGS = {
    ".jpg": (b"\xff\xd8\xff",),
    ".jpeg": (b"\xff\xd8\xff",),
    ".png": (b"\x89PNG\r\n\x1a\n",),
    ".webp": (b"RIFF",),
}
"""How a file of each kind begins. A drawing in SVG may hold a script, so it is none of them."""


def find_photo(log: Path, photo: str) -> Path | None:
    """Return where a picture lies that a log names; None when it may not or cannot be shown.

    A link that leads out of the log's folder is not followed.
    """
    folder = log.resolve().parent
    path = (folder / photo).resolve()
    kinds = BEGINNINGS.get(path.suffix.lower())
    if kinds is None or not path.is_relative_to(folder):
        return None
    try:
        if not path.is_file() or path.stat().st_size > MOST_BYTES:
            return None
        with path.open("rb") as file:
            return path if file.read(16).startswith(kinds) else None
    except OSError:
        return None
