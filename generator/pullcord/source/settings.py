"""Which folders a project's `mkdocs.yml` tells the plugin to read.

Only what the commands `check` and `print` need is read here; MkDocs itself reads the file for a
build.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from pullcord.finding import Place
from pullcord.source.tree import read_tree

_NAME = "pullcord"
_FALSE = ("false", "no", "off")


@dataclass(frozen=True)
class FolderSettings:
    """The options below `- pullcord:` that say what is read."""

    procedures: tuple[str, ...] | None = None
    """Folders of procedures, as seen from the file; None when it names none."""
    machines: tuple[str, ...] | None = None
    """Folders of machine sheets."""
    jobs: tuple[str, ...] | None = None
    """Folders of job logs."""
    library: bool = True
    """Whether the shipped procedures are read."""
    replaces: tuple[str, ...] = ()
    """Shipped procedures that the project's own take the place of."""
    meter: Any = None
    """The shop's meter, as it stands in the file; None when it names none."""
    templates: tuple[str, ...] = ()
    """Folders whose templates and texts go before the shipped ones."""
    currency: str = ""
    """What stands behind an amount of money."""
    cache: str = ".cache/pullcord"
    """Where finished charts are kept."""


def read_folder_settings(raw: bytes) -> FolderSettings | None:
    """Return the plugin's options, or None when the file does not list the plugin."""
    plugins = _plugins(raw)
    place = _place(plugins)
    if place is None:
        return None
    options = _options(plugins, place)
    return FolderSettings(
        procedures=_texts(options.get("procedures")),
        machines=_texts(options.get("machines")),
        jobs=_texts(options.get("jobs")),
        library=str(options.get("library", "true")).lower() not in _FALSE,
        replaces=_texts(options.get("replaces")) or (),
        meter=options.get("meter"),
        templates=_texts(options.get("templates")) or (),
        currency=str(options.get("currency") or ""),
        cache=str(options.get("cache") or FolderSettings.cache),
    )


def options_place(raw: bytes) -> Place:
    """Return where in a settings file the plugin's options stand, as far as they are there."""
    return ("plugins", *(_place(_plugins(raw)) or ()))


def _plugins(raw: bytes) -> Any:
    """Return the list of plugins; `- pullcord:` with nothing behind it is one of them."""
    tree = read_tree(raw)
    plugins = tree.data.get("plugins") if isinstance(tree.data, dict) else None
    for place in tree.spoilt:
        # Where the text breaks off, a place may lie in what was not read to its end.
        if place[:1] == ("plugins",) and place[-1] == _NAME and plugins is not None:
            _holder(plugins, place[1:-1])[_NAME] = {}
    return plugins


def _holder(plugins: Any, place: Place) -> Any:
    for step in place:
        plugins = plugins[step]
    return plugins


def _place(plugins: Any) -> Place | None:
    """Find us in a list of names and single-key mappings, or in one mapping."""
    if plugins == _NAME:
        return ()
    if isinstance(plugins, dict):
        return (_NAME,) if _NAME in plugins else None
    for position, entry in enumerate(plugins if isinstance(plugins, list) else ()):
        below = _place(entry)
        if below is not None:
            return (position, *below)
    return None


def _options(plugins: Any, place: Place) -> Mapping[str, Any]:
    options = _holder(plugins, place)
    return options if isinstance(options, dict) else {}


def _texts(value: Any) -> tuple[str, ...] | None:
    if isinstance(value, str):
        return (value,)
    is_texts = isinstance(value, list) and all(isinstance(item, str) for item in value)
    return tuple(value) if is_texts else None
