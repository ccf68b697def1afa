"""JSON Schema of every kind of file, for editors: draft 7, which their YAML servers read.

The model says what may stand in a file. Pydantic writes that down in a newer dialect and for typed
data; here it is turned into what an editor sees of the same file. To Pullcord every scalar is text,
while an editor takes `12` for a number and `true` for a truth value, so text may be any of these.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping
from typing import Any

from pullcord.model.base import LINE_PATTERN, WORDS_PATTERN, Record
from pullcord.model.job import Job
from pullcord.model.machine import Machine
from pullcord.model.procedure import Procedure
from pullcord.model.shared import Shared
from pullcord.model.stage import StageList

Schema = dict[str, Any]

KINDS: Mapping[str, type[Record]] = {
    "procedure": Procedure,
    "machine": Machine,
    "job": Job,
    "stages": StageList,
    "shared": Shared,
}
"""Every kind of file by the key that names it, in the order of the reference."""

DIALECT = "http://json-schema.org/draft-07/schema#"
AS = "as"
_DEFINITIONS = "#/$defs/"
_NUMBER = r"^\s*[+-]?([0-9]+\.?[0-9]*|\.[0-9]+)([eE][+-]?[0-9]+)?\s*$"
_WHOLE = r"^\s*[+-]?[0-9]+(\.0*)?\s*$"
AMOUNT = r"^\s*[0-9]+(\.[0-9]{0,2})?\s*$"
_LINE = r"^\s*[^\n]*\s*$"
"""A text block ends with a line break, which is taken off before the line is looked at."""
_OF_ANY_TEXT = (None, LINE_PATTERN, WORDS_PATTERN)
_NUMBERS = {"number": _NUMBER, "integer": _WHOLE}


def schema_of(kind: str) -> Schema:
    """Return the schema of one kind of file, by the name it has in KINDS."""
    model = KINDS[kind]
    raw = model.model_json_schema(by_alias=True, mode="validation")
    definitions = {
        name: _converted(record) for name, record in sorted(raw.pop("$defs", {}).items())
    }
    if model is Procedure:
        # A shared file must say everything itself: it is filled in from, not filled in.
        definitions = {name: _with_as(record) for name, record in definitions.items()}
    return {"$schema": DIALECT, **_converted(raw), "definitions": definitions}


def schema_text(kind: str) -> str:
    """Return the schema as the text of a file."""
    return json.dumps(schema_of(kind), indent=1, ensure_ascii=False) + "\n"


def _with_as(record: Schema) -> Schema:
    """Let whatever is filled in from a shared file leave out what stands there."""
    if AS not in record.get("properties", {}):
        return record
    whole = {"required": record["required"]}
    rest = {key: value for key, value in record.items() if key != "required"}
    return {**rest, "anyOf": [{"required": [AS]}, whole]}


def _converted(raw: Schema) -> Schema:
    """Return one schema in draft 7 and in the terms of an editor."""
    kept = {key: value for key, value in raw.items() if key in _KEPT and not _is_empty(key, value)}
    schema = {key: _KEPT[key](value) for key, value in kept.items()}
    if "$ref" in schema:
        return _beside_ref(schema)
    if "patternProperties" in raw:
        ((pattern, value),) = raw["patternProperties"].items()
        schema["propertyNames"] = {"pattern": pattern, **raw.get("propertyNames", {})}
        schema["additionalProperties"] = _converted(value)
    if "anyOf" in schema:
        return _without_null(schema)
    return _loosened(schema)


def _beside_ref(schema: Schema) -> Schema:
    """Keep what stands beside a `$ref`: in draft 7 it would be passed over."""
    ref, rest = {"$ref": schema["$ref"]}, {key: schema[key] for key in schema if key != "$ref"}
    return {**rest, "allOf": [ref]} if rest else ref


def _is_empty(key: str, value: Any) -> bool:
    """Whether a default says no more than that the key may be left out."""
    return key == "default" and (not value or isinstance(value, dict))


def _without_null(schema: Schema) -> Schema:
    """Leave out that nothing may stand there: a key without a value is a mistake in a file."""
    ways = [way for way in schema["anyOf"] if way.get("type") != "null"]
    rest = {key: value for key, value in schema.items() if key != "anyOf"}
    is_amount = [way.get("type") for way in ways] == [["number", "string"], ["string", *_SCALARS]]
    if is_amount:
        return {**rest, **ways[0], "pattern": AMOUNT}
    return {**rest, **(ways[0] if len(ways) == 1 else {"anyOf": ways})}


_SCALARS = ("number", "boolean")


def _loosened(schema: Schema) -> Schema:
    """Let a number be quoted, and a text look like a number or a truth value."""
    kind = schema.get("type")
    if kind in _NUMBERS:
        return {**schema, "type": [kind, "string"], "pattern": _NUMBERS[kind]}
    is_free = "enum" not in schema and "const" not in schema
    if kind == "string" and is_free and schema.get("pattern") in _OF_ANY_TEXT:
        pattern = {"pattern": _LINE} if schema.get("pattern") == LINE_PATTERN else {}
        return {**schema, **pattern, "type": ["string", *_SCALARS]}
    return schema


def _all(schemas: list[Schema]) -> list[Schema]:
    return [_converted(each) for each in schemas]


def _each(schemas: Mapping[str, Schema]) -> Schema:
    return {name: _converted(each) for name, each in schemas.items()}


def _same(value: Any) -> Any:
    return value


_KEPT: Mapping[str, Callable[[Any], Any]] = {
    "$ref": lambda ref: ref.replace(_DEFINITIONS, "#/definitions/"),
    "description": _same,
    "type": _same,
    "enum": _same,
    "const": _same,
    "pattern": _same,
    "minLength": _same,
    "maxLength": _same,
    "minimum": _same,
    "maximum": _same,
    "exclusiveMinimum": _same,
    "maxItems": _same,
    "default": _same,
    "required": _same,
    "additionalProperties": _same,
    "properties": _each,
    "items": _converted,
    "anyOf": _all,
}
"""What is taken over, each with what is done to it; a title pydantic makes up says nothing."""
