"""The keys of one kind of file, record by record, out of its schema."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from pullcord.model.action import Action
from pullcord.model.schema import AS, KINDS, Schema, schema_of
from pullcord.model.shape import keys_of

EFFECTS = "Effects"
_EFFECT_KEYS = tuple(keys_of(Action))


@dataclass(frozen=True)
class KeyEntry:
    """One key of a record."""

    name: str
    meaning: str
    """What the model says of it."""
    schema: Schema
    """What may stand there."""
    is_needed: bool
    """Whether a file without it is refused."""
    is_filled_in: bool
    """Whether `as` fills it in, so that it is needed only without that."""


@dataclass(frozen=True)
class RecordEntry:
    """The keys that stand together in one place."""

    name: str
    """The model's name for it."""
    meaning: str
    keys: tuple[KeyEntry, ...]
    has_effects: bool
    """Whether the keys of effects may stand there too; they are a record of their own."""


def record_entries(kind: str) -> tuple[RecordEntry, ...]:
    """Return the records of one kind of file, each after the first one that holds it."""
    schema = schema_of(kind)
    found = [_entry(name, each) for name, each in _in_order(KINDS[kind].__name__, schema)]
    holder = next((each for each in _all(schema) if _has_effects(each)), None)
    return (*found, _effects(holder)) if holder else tuple(found)


def refs_of(schema: Any) -> Iterator[str]:
    """Yield the names of the records a schema leads to, in order."""
    if isinstance(schema, Mapping):
        if "$ref" in schema:
            yield schema["$ref"].rpartition("/")[2]
        for value in schema.values():
            yield from refs_of(value)
    elif isinstance(schema, list):
        for value in schema:
            yield from refs_of(value)


def _in_order(root: str, schema: Schema) -> Iterator[tuple[str, Schema]]:
    yield root, schema
    waiting = list(refs_of(schema["properties"]))
    seen: set[str] = set()
    for name in waiting:
        if name not in seen:
            seen.add(name)
            record = schema["definitions"][name]
            waiting.extend(refs_of(record["properties"]))
            yield name, record


def _all(schema: Schema) -> list[Schema]:
    return [schema, *schema["definitions"].values()]


def _entry(name: str, record: Schema) -> RecordEntry:
    has_effects = _has_effects(record)
    hidden = _EFFECT_KEYS if has_effects else ()
    keys = tuple(_key(key, record) for key in record["properties"] if key not in hidden)
    return RecordEntry(name, record.get("description", ""), keys, has_effects)


def _effects(record: Schema) -> RecordEntry:
    keys = tuple(_key(key, record) for key in _EFFECT_KEYS)
    return RecordEntry(EFFECTS, "", keys, has_effects=False)


def _has_effects(record: Schema) -> bool:
    return set(_EFFECT_KEYS) <= set(record["properties"])


def _key(name: str, record: Schema) -> KeyEntry:
    schema = record["properties"][name]
    ways = record.get("anyOf", [])
    return KeyEntry(
        name,
        " ".join(schema.get("description", "").split()),
        schema,
        is_needed=name in record.get("required", ()),
        is_filled_in=any(name in way["required"] for way in ways if AS not in way["required"]),
    )
