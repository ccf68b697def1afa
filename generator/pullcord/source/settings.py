"""Which folders a project's `mkdocs.yml` tells the plugin to read.

Only what `pullcord check` needs is read here; MkDocs itself reads the file for a build.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from pullcord.source.tree import read_tree

_FALSE = ("false", "no", "off")


@dataclass(frozen=True)
class FolderSettings:
    """The options below `- pullcord:` that say what is read."""

    procedures: tuple[str, ...] | None = None
    """Folders of procedures, as seen from the file; None when it names none."""
    machines: tuple[str, ...] | None = None
    """Folders of machine sheets."""
    library: bool = True
    """Whether the shipped procedures are read."""
    replaces: tuple[str, ...] = ()
    """Shipped procedures that the project's own take the place of."""


def read_folder_settings(raw: bytes) -> FolderSettings | None:
    """Return the plugin's options, or None when the file does not list the plugin."""
    data = read_tree(raw).data
    plugins = data.get("plugins") if isinstance(data, dict) else None
    options = _options(plugins)
    if options is None:
        return None
    return FolderSettings(
        procedures=_texts(options.get("procedures")),
        machines=_texts(options.get("machines")),
        library=str(options.get("library", "true")).lower() not in _FALSE,
        replaces=_texts(options.get("replaces")) or (),
    )


def _options(plugins: Any) -> Mapping[str, Any] | None:
    """Find our options in a list of names and single-key mappings, or in one mapping."""
    entries = plugins if isinstance(plugins, list) else [plugins]
    for entry in entries:
        if entry == "pullcord":
            return {}
        if isinstance(entry, dict) and "pullcord" in entry:
            options = entry["pullcord"]
            return options if isinstance(options, dict) else {}
    return None


def _texts(value: Any) -> tuple[str, ...] | None:
    if isinstance(value, str):
        return (value,)
    is_texts = isinstance(value, list) and all(isinstance(item, str) for item in value)
    return tuple(value) if is_texts else None
