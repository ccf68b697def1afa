"""Hostile text for every string field of every kind of file, found by walking the models.

A new field needs nothing here: it is given such text like all others. What refuses it says so in
a finding at the field's own line; what takes it has to show it as text, on a page that stays tame.
"""

from __future__ import annotations

import copy
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import pairwise
from typing import Any

import yaml
from pydantic import BaseModel

from pullcord.model.base import LINE_PATTERN, WORDS_PATTERN

MARK = "mark"
LINE = (
    "{mark}'\"></title></style><script>harm()</script><img src=http://harm.test onerror=harm()>"
    "{{{{7*7}}}}javascript:harm()"
)
"""As much as a line of 120 characters holds."""
TEXT = LINE + (
    "<svg onload=harm()><iframe srcdoc='<script>parent.harm()</script>'></iframe>"
    "<a href=javascript:harm()>x</a><base href=http://harm.test>{{% raw %}}]]>--></textarea>"
    "<style>@import 'http://harm.test/a.css';</style> http://harm.test/b &lt;i&gt; \\u003cb\\u003e"
)
_LONGEST_LINE = 120

Schema = Mapping[str, Any]
Place = tuple[str | int, ...]


@dataclass(frozen=True)
class Field:
    """One place of a file that holds a string."""

    file: str
    place: Place
    """Where in the file's data; KEY at its end means the key that leads there itself."""
    owner: str
    """The model it belongs to."""
    is_free: bool
    """Whether the model lets any words stand there."""
    longest: int

    @property
    def name(self) -> str:
        """Return the model and the key, however often there are any."""
        keys = [part for part in self.place if isinstance(part, str)]
        return f"{self.owner}.{keys[-1]}"


KEY = "<key>"


def fields_of(file: str, model: type[BaseModel], data: Any) -> Iterator[Field]:
    """Yield every place for a string: of each record that the data holds, present or not."""
    schema = model.model_json_schema(by_alias=True)
    yield from _Walk(file, schema.get("$defs", {})).fields(schema, data, (), model.__name__)


@dataclass(frozen=True)
class _Walk:
    file: str
    models: Mapping[str, Schema]

    def fields(self, schema: Schema, data: Any, place: Place, owner: str) -> Iterator[Field]:
        if "$ref" in schema:
            owner = schema["$ref"].rpartition("/")[2]
            schema = self.models[owner]
        if "anyOf" in schema:
            yield from self.fields(_chosen(schema["anyOf"], data), data, place, owner)
        elif "properties" in schema:
            yield from self._record(schema["properties"], data, place, owner)
        elif schema.get("type") == "object":
            yield from self._mapping(schema, data or {}, place, owner)
        elif schema.get("type") == "array":
            for number, value in enumerate(data or [None]):
                yield from self.fields(schema["items"], value, (*place, number), owner)
        elif schema.get("type") == "string" or {"enum", "const"} & set(schema):
            yield self._field(schema, place, owner)

    def _record(self, keys: Schema, data: Any, place: Place, owner: str) -> Iterator[Field]:
        if isinstance(data, dict):
            for key, part in keys.items():
                yield from self.fields(part, data.get(key), (*place, key), owner)

    def _mapping(self, schema: Schema, data: Any, place: Place, owner: str) -> Iterator[Field]:
        keys, values = schema.get("propertyNames", {}), schema.get("additionalProperties")
        if "patternProperties" in schema:
            ((pattern, values),) = schema["patternProperties"].items()
            keys = {"pattern": pattern, **keys}
        for number, (key, value) in enumerate(data.items()):
            if number == 0:
                yield self._field(keys, (*place, key, KEY), owner)
            yield from self.fields(values or {}, value, (*place, key), owner)

    def _field(self, schema: Schema, place: Place, owner: str) -> Field:
        is_free = (
            schema.get("pattern") in (None, LINE_PATTERN, WORDS_PATTERN)
            and not {"enum", "const", "format"} & set(schema)
        )  # fmt: skip
        return Field(self.file, place, owner, is_free, schema.get("maxLength", 10**6))


def _chosen(schemas: list[Schema], data: Any) -> Schema:
    """Return the one that fits the data: a list for a list, else what is no null."""
    some = [schema for schema in schemas if schema.get("type") != "null"]
    many = [schema for schema in some if schema.get("type") == "array"]
    return many[0] if many and isinstance(data, list) else some[0]


def mark(number: int) -> str:
    """Return a word that stands for one field."""
    return f"{MARK}{number:03}"


def text_for(field: Field, number: int) -> str:
    """Return the hostile text for a field, as long as it may be."""
    template = LINE if field.longest <= _LONGEST_LINE else TEXT
    return template.format(mark=mark(number))


def put(files: Mapping[str, Any], fields: Mapping[int, Field]) -> dict[str, str]:
    """Return the files as YAML, each field with its own hostile text."""
    changed = copy.deepcopy(dict(files))
    # Keys come last, the innermost first: until then they lead to what is below them.
    for number, field in sorted(fields.items(), key=lambda each: _turn(each[1].place)):
        _put(changed[field.file], field.place, text_for(field, number))
    return {
        name: yaml.dump(data, sort_keys=False, allow_unicode=True, width=10**6)
        for name, data in changed.items()
    }


def _turn(place: Place) -> tuple[bool, int]:
    return place[-1] == KEY, -len(place)


def _put(data: Any, place: Place, text: str) -> None:
    keys = place[:-1] if place[-1] == KEY else place
    last: Any = keys[-1]
    for part, below in pairwise(keys):
        if isinstance(data, dict):
            data = data.setdefault(part, [] if isinstance(below, int) else {})
        else:
            data = data[part]
    if place[-1] == KEY:
        pairs = [(text if key == last else key, value) for key, value in data.items()]
        data.clear()
        data.update(pairs)
    elif isinstance(data, list) and last == len(data):
        data.append(text)
    else:
        data[last] = text
