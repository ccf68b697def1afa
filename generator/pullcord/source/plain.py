"""YAML text in which nothing is out of the ordinary, as plain data, in less time.

Nearly every file is so. Where anything asks for a closer look, `compose` takes it and says what is
wrong; what both can read, they read alike.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

import yaml

from pullcord.source.compose import MOST_CHARACTERS, MOST_LEVELS, Data, Loader
from pullcord.source.decode import UNSEEN

_HEAD = re.compile(r"\A(?:#[^\n]*\n|\n)*")
"""Comments before the first key: they can be nothing else."""

Take = Callable[[], Any]
"""Gives the parser's next event."""


class _UnusualError(Exception):
    """Something asks for a closer look."""


def read_plain(text: str) -> Data | None:
    """Return what a text holds; None when that takes a closer look. Never raises.

    A text with comments below its head is looked at more closely: some may be lost text.
    """
    if "#" in _HEAD.sub("", text):
        return None
    try:
        return _document(Loader(text).get_event)
    except (yaml.YAMLError, RecursionError, ValueError, _UnusualError):
        return None


def _document(take: Take) -> Data:
    take()  # The stream begins, then its document.
    if type(take()) is not yaml.DocumentStartEvent:
        raise _UnusualError
    data = _value(take(), take, 0)
    take()  # The document ends.
    if type(take()) is not yaml.StreamEndEvent:
        raise _UnusualError
    return data


def _value(event: Any, take: Take, level: int) -> Data:
    kind = type(event)
    if kind is yaml.ScalarEvent:
        return _text(event)
    # An alias has an anchor, and nothing else that is asked for here.
    if level >= MOST_LEVELS or event.anchor or event.tag:
        raise _UnusualError
    return _mapping(take, level + 1) if kind is yaml.MappingStartEvent else _list(take, level + 1)


def _mapping(take: Take, level: int) -> dict[str, Any]:
    data: dict[str, Any] = {}
    while type(event := take()) is yaml.ScalarEvent:
        key = _text(event)
        if key in data or key == "<<":
            raise _UnusualError
        data[key] = _value(take(), take, level)
    if type(event) is not yaml.MappingEndEvent:
        raise _UnusualError
    return data


def _list(take: Take, level: int) -> list[Any]:
    data = []
    while type(event := take()) is not yaml.SequenceEndEvent:
        data.append(_value(event, take, level))
    return data


def _text(event: Any) -> str:
    value: str = event.value
    if event.style or not value or event.anchor or event.tag or len(value) > MOST_CHARACTERS:
        _look_at(event)
    return value


def _look_at(event: Any) -> None:
    is_empty = not event.value and not event.style
    is_long = len(event.value) > MOST_CHARACTERS
    hides = event.style == '"' and UNSEEN.search(event.value)
    if is_empty or is_long or hides or event.anchor or event.tag:
        raise _UnusualError
