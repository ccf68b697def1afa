"""What stands around every page of a site: what the theme prints there, or prints it by."""

from __future__ import annotations

import re
import sys
from collections.abc import Iterable
from pathlib import Path
from pprint import PrettyPrinter
from types import BuiltinFunctionType, FunctionType, MethodType
from typing import Any

from pullcord.source.files import state_of

_NO_SAY = {
    "config_file_path",
    "dev_addr",
    "docs_dir",
    "hooks",
    "plugins",
    "remote_branch",
    "remote_name",
    "site_dir",
    "strict",
    "theme",
    "watch",
}
"""Settings of MkDocs that no page shows, or that are told in another way."""
_FRONT_MATTER = re.compile(r"\ufeff?---\s*$.*?^(---|\.\.\.)\s*$", re.MULTILINE | re.DOTALL)
_FIRST_HEADING = re.compile(r"^(#.*|=+[ \t]*)$", re.MULTILINE)


def surroundings(config: Any, nav: Any, titles: Iterable[str]) -> list[str]:
    """Return what the theme prints around a page, or prints it by.

    `config` and `nav` are MkDocs's. Pages have no titles before they are read, hence the `titles`.
    """
    settings = {key: value for key, value in config.items() if key not in _NO_SAY}
    theme = {key: config.theme[key] for key in config.theme}
    files = state_of(Path(config.theme.custom_dir)) if config.theme.custom_dir else ()
    return [str(nav), _told(settings), _told(theme), repr(files), *titles]


def head_of(text: str) -> str:
    """Return the part of a Markdown page that can give it its title: up to its first heading."""
    front = _FRONT_MATTER.match(text)
    found = _FIRST_HEADING.search(text, front.end() if front else 0)
    return text[: found.end()] if found else text


class _Told(PrettyPrinter):
    """Settings as a text that is the same in every process: a function by name, not by place."""

    def format(self, value: object, *given: Any) -> tuple[str, bool, bool]:
        """Return a value's text, whether it can be read again, and whether it holds itself."""
        if isinstance(value, type | FunctionType | BuiltinFunctionType | MethodType):
            return f"{value.__module__}.{value.__qualname__}", False, False
        return super().format(value, *given)


def _told(settings: object) -> str:
    return _Told(width=sys.maxsize).pformat(settings)
