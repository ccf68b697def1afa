"""The YAML files of a folder, and their bytes."""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path

from pullcord.source.decode import MOST_BYTES
from pullcord.source.flaw import Mark, TextFlaw

ENDINGS = (".yaml", ".yml")
SETTINGS_NAMES = ("mkdocs.yml", "mkdocs.yaml")
"""A site's settings; never anything the site is made from."""


def find_files(folder: Path) -> tuple[Path, ...]:
    """Return every YAML file below a folder, sorted; no settings, nothing hidden.

    No linked folder is entered.
    Raises OSError when the folder itself cannot be read.
    """
    os.scandir(folder).close()
    return tuple(sorted(_walk(folder)))


def files_below(folder: Path) -> Iterator[Path]:
    """Yield every ordinary file below a folder, whatever it holds. No linked folder is entered."""
    for parent, _, names in os.walk(folder):
        yield from (path for name in names if (path := Path(parent, name)).is_file())


def state_of(folder: Path) -> tuple[tuple[str, int, int], ...]:
    """Return the path, time and size of every file below a folder: they tell that one changed."""
    found = ((path, path.stat()) for path in files_below(folder))
    return tuple(sorted((str(path), stat.st_mtime_ns, stat.st_size) for path, stat in found))


def read_file(path: Path, folder: Path) -> bytes | TextFlaw:
    """Return the bytes of a file found in a folder, or why they are not read.

    At most one byte more than a file may have is read, so that the reader can say it is too large.
    """
    try:
        if not path.resolve().is_relative_to(folder.resolve()):
            return _unreadable("this is a link to a file outside of the folder; it is not followed")
        if not path.is_file():
            return _unreadable("this is not an ordinary file")
        with path.open("rb") as file:
            return file.read(MOST_BYTES + 1)
    except (OSError, RuntimeError) as error:
        reason = getattr(error, "strerror", None) or "the link leads in a circle"
        return _unreadable(f"the file cannot be read: {reason}")


def _walk(folder: Path) -> Iterator[Path]:
    for parent, folders, names in os.walk(folder):
        folders[:] = [name for name in folders if not name.startswith(".")]
        for name in names:
            if _is_ours(name):
                yield Path(parent, name)


def _is_ours(name: str) -> bool:
    is_yaml = name.lower().endswith(ENDINGS)
    return is_yaml and not name.startswith(".") and name not in SETTINGS_NAMES


def _unreadable(message: str) -> TextFlaw:
    mend = "put the file itself into the folder, and see that you may read it"
    return TextFlaw(Mark(1, 1), "unreadable-file", message, mend)
