"""YAML events to plain data in which every scalar is the text that was written.

One pass with its own stack: nesting is bounded and nothing recurses. Beside the data grows a tree
of the same shape that remembers where each key and value stands. It is made of numbers only, for
a hundred thousand small objects would cost more than all the reading.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import Any

import yaml

from pullcord.finding import Place
from pullcord.source.decode import UNSEEN, name_of
from pullcord.source.flaw import MOST_FLAWS, Mark, TextFlaw
from pullcord.source.syntax import QUOTE_IT, read_syntax_error

MOST_LEVELS = 12
MOST_CHARACTERS = 4000
"""In one value. The model's own limits are smaller; this one keeps every later step short."""

Data = str | list[Any] | dict[str, Any]

Spot = tuple[int, int, int, Any]
"""Where a value stands, counted in characters from 0: its key (-1 for none), its start, its end,
and the spots of what is in it: a dict, a list, or None for text."""

Span = tuple[int, int]
"""The first character of a scalar and the one behind its last."""

Loader: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
"""The parser written in C where PyYAML was built with it; only its events are used."""

_DROPPED: Any = object()
"""Stands for a key whose value is read but not kept."""


@dataclass(slots=True)
class Composed:
    """What one text holds. `data` and `root` are None when the text is broken or empty."""

    data: Data | None = None
    root: Spot | None = None
    spans: list[Span] = field(default_factory=list)
    """Every scalar, in order."""
    flaws: list[TextFlaw] = field(default_factory=list)
    spoilt: set[Place] = field(default_factory=set)
    """Places whose value was left out because of a flaw."""
    read_to: int = 0
    """How many characters were understood: all of them, unless the text is broken."""


def compose(text: str) -> Composed:
    """Read a text that holds no control characters; never raises."""
    composer = _Composer()
    result = composer.result
    try:
        if composer.take_all(yaml.parse(text, Loader=Loader)):
            result.read_to = len(text)
            return result
    except (yaml.YAMLError, RecursionError, ValueError) as error:
        known = error if isinstance(error, yaml.YAMLError) else yaml.YAMLError(str(error))
        result.flaws.append(read_syntax_error(known, text))
        result.data = result.root = None
    result.read_to = result.spans[-1][1] if result.spans else 0
    return result


class _Composer:
    """The state of one pass over the events."""

    def __init__(self) -> None:
        self.result = Composed()
        self._stack: list[Any] = []
        """The unfinished collections around the present one."""
        self._data: Any = None
        """The collection being read; None outside of the root."""
        self._spots: Any = None
        self._start = 0
        self._key: Any = None
        """In a mapping: the key whose value comes next, or None when a key comes next."""
        self._key_index = -1
        self._documents = 0

    def take_all(self, events: Any) -> bool:
        """Take in every event; False when the rest is not to be read."""
        takers = {
            yaml.ScalarEvent: self._scalar,
            yaml.MappingStartEvent: self._begin,
            yaml.SequenceStartEvent: self._begin,
            yaml.MappingEndEvent: self._finish,
            yaml.SequenceEndEvent: self._finish,
            yaml.AliasEvent: self._alias,
            yaml.DocumentStartEvent: self._document,
        }
        flaws = self.result.flaws
        for event in events:
            taker = takers.get(type(event))
            if taker is not None and not taker(event):
                return False
            if len(flaws) >= MOST_FLAWS:
                self.result.data = self.result.root = None
                return False
        return True

    def _scalar(self, event: Any) -> bool:
        value = event.value
        start, end = event.start_mark.index, event.end_mark.index
        self.result.spans.append((start, end))
        if event.anchor or event.tag or event.style or not value or len(value) > MOST_CHARACTERS:
            if not self._unusual(event):
                return len(value) <= MOST_CHARACTERS
        elif value == "<<" and self._awaits_key():
            self._merge_key(event)
            return True
        if self._awaits_key():
            self._take_key(value, event, start)
        else:
            self._place(value, start, end, None)
        return True

    def _awaits_key(self) -> bool:
        return self._key is None and type(self._data) is dict

    def _take_key(self, key: str, event: Any, start: int) -> None:
        self._key, self._key_index = key, start
        if key in self._data or (self.result.spoilt and self._is_spoilt(key)):
            message = f"the key `{_short(key)}` is given twice in the same place"
            self._flaw(event, "duplicate-key", message, "keep one of the two, or rename one")
            self._key = _DROPPED

    def _place(self, value: Data, start: int, end: int, spots: Any) -> None:
        """Put a finished value where it belongs."""
        data, key = self._data, self._key
        if type(data) is list:
            data.append(value)
            self._spots.append((-1, start, end, spots))
        elif data is None:
            self.result.data, self.result.root = value, (-1, start, end, spots)
        elif key is None:
            self._key = _DROPPED
        else:
            if key is not _DROPPED:
                data[key] = value
                self._spots[key] = (self._key_index, start, end, spots)
            self._key = None

    def _begin(self, event: Any) -> bool:
        self._refuse_extras(event)
        if self._awaits_key():
            message = "a list or a block of keys cannot itself be a key"
            self._flaw(event, "key-not-text", message, f"if it is text, {QUOTE_IT}")
            self._spoil()
        if len(self._stack) >= MOST_LEVELS:
            message = f"this is nested deeper than {MOST_LEVELS} levels"
            self._flaw(event, "too-deep", message, "no file of ours needs to go that deep")
            self.result.data = self.result.root = None
            return False
        self._stack.append((self._data, self._spots, self._start, self._key, self._key_index))
        is_map = type(event) is yaml.MappingStartEvent
        self._data, self._spots = ({}, {}) if is_map else ([], [])
        self._start, self._key = event.start_mark.index, None
        return True

    def _finish(self, event: Any) -> bool:
        data, spots, start = self._data, self._spots, self._start
        self._data, self._spots, self._start, self._key, self._key_index = self._stack.pop()
        self._place(data, start, event.end_mark.index, spots)
        return True

    def _unusual(self, event: Any) -> bool:
        """Look closely at a scalar with something beside plain text; False when it is no value."""
        self._refuse_extras(event)
        if len(event.value) > MOST_CHARACTERS:
            message = f"this text has {len(event.value)} characters; {MOST_CHARACTERS} are the most"
            self._flaw(event, "text-too-long", message, "say it shorter, or split the step")
            self.result.data = self.result.root = None
            return False
        if event.value or event.style or self._data is None:
            return True
        self._empty_value(event)
        return False

    def _empty_value(self, event: Any) -> None:
        mend = "write the value, or delete the key"
        if self._awaits_key():
            self._flaw(event, "empty-value", "a key is missing before this colon", "write the key")
        elif type(self._data) is list:
            self._flaw(event, "empty-value", "this list item is empty", "write it, or delete it")
        elif self._key is not _DROPPED:
            message = f"nothing stands behind `{_short(self._key)}:`"
            self._flaw(event, "empty-value", message, mend)
        self._leave_out()

    def _merge_key(self, event: Any) -> None:
        message = "`<<` would merge keys from elsewhere, which is not read here"
        self._flaw(event, "merge-key", message, "write the keys out")
        self._leave_out()

    def _alias(self, event: Any) -> bool:
        message = f"`*{_short(event.anchor)}` would repeat something from elsewhere in the file"
        self._flaw(event, "alias", message, f"write it out, or, if it is text, {QUOTE_IT}")
        self._leave_out()
        return True

    def _leave_out(self) -> None:
        """Go on without the key or value that should stand here; a list keeps its count."""
        if type(self._data) is list:
            self._spoil(len(self._data))
            self._place("", self._start, self._start, None)
        elif self._awaits_key():
            self._spoil()
            self._key = _DROPPED
        else:
            self._spoil(self._key)
            self._key = None

    def _document(self, event: Any) -> bool:
        self._documents += 1
        if self._documents > 1:
            message = "a second document begins here; only one is read"
            self._flaw(event, "several-documents", message, "put it into a file of its own")
        return self._documents == 1

    def _refuse_extras(self, event: Any) -> None:
        if event.anchor:
            message = f"`&{_short(event.anchor)}` is an anchor, which is not read here"
            self._flaw(event, "alias", message, f"delete it, or, if it is text, {QUOTE_IT}")
        if event.tag:
            message = f"`{_short(_written_tag(event.tag))}` is a tag, which is not read here"
            self._flaw(event, "tag", message, f"delete it, or, if it is text, {QUOTE_IT}")
        hidden = UNSEEN.search(event.value) if getattr(event, "style", None) == '"' else None
        if hidden:
            message = f"the text holds an invisible character ({name_of(hidden.group())})"
            self._flaw(event, "control-character", message, "leave it out")

    def _flaw(self, event: Any, rule: str, message: str, mend: str) -> None:
        mark = Mark(event.start_mark.line + 1, event.start_mark.column + 1)
        self.result.flaws.append(TextFlaw(mark, rule, message, mend))

    def _here(self) -> Place:
        """Return the place of the present collection."""
        keys = [key if type(data) is dict else len(data) for data, _, _, key, _ in self._stack[1:]]
        return tuple(key for key in keys if key is not _DROPPED)

    def _spoil(self, *key: Any) -> None:
        self.result.spoilt.add((*self._here(), *(k for k in key if k is not _DROPPED)))

    def _is_spoilt(self, key: str) -> bool:
        return (*self._here(), key) in self.result.spoilt


def _short(text: str) -> str:
    return text if len(text) <= 40 else f"{text[:39]}…"


def _written_tag(tag: str) -> str:
    return re.sub("^tag:yaml.org,2002:", "!!", tag)
