"""What stands around every page of a site: what the theme prints there, or prints it by."""

from __future__ import annotations

import os
import re
from collections.abc import Iterable
from pathlib import Path
from typing import Any

_FRONT_MATTER = re.compile(r"\ufeff?---\s*$.*?^(---|\.\.\.)\s*$", re.MULTILINE | re.DOTALL)
_FIRST_HEADING = re.compile(r"^(#.*|=+[ \t]*)$", re.MULTILINE)


def surroundings(config: Any, nav: Any, titles: Iterable[str]) -> list[object]:
    """Return what the theme prints around a page, or prints it by.

    `config` and `nav` are MkDocs's. Pages have no titles before they are read, hence the `titles`.
    """
    told = {key: value for key, value in config.items() if key not in ("plugins", "hooks", "theme")}
    theme = {key: config.theme[key] for key in sorted(config.theme)}
    folders = [config.theme.custom_dir] if config.theme.custom_dir else []
    files = [file for folder in folders for file in _files(Path(folder))]
    return [str(nav), repr(told), repr(theme), files, *titles]


def head_of(text: str) -> str:
    """Return the part of a Markdown page that can give it its title: up to its first heading."""
    front = _FRONT_MATTER.match(text)
    found = _FIRST_HEADING.search(text, front.end() if front else 0)
    return text[: found.end()] if found else text


def _files(folder: Path) -> list[tuple[str, int, int]]:
    """Return every file of a folder with its time and size."""
    paths = (Path(parent, name) for parent, _, names in os.walk(folder) for name in names)
    found = ((path, path.stat()) for path in paths if path.is_file())
    return sorted((str(path), stat.st_mtime_ns, stat.st_size) for path, stat in found)
