"""What may stand at a place of a document, asked of the model itself."""

from __future__ import annotations

from collections.abc import Mapping
from types import NoneType, UnionType
from typing import Annotated, Any, Union, get_args, get_origin

from pullcord.finding import Place
from pullcord.model.base import Record


def record_at(model: type[Record], place: Place) -> type[Record] | None:
    """Return the record that stands at a place of a document of this model, if one does."""
    kind: Any = model
    for step in place:
        kind = _below(_plain(kind), step)
    kind = _plain(kind)
    return kind if _is_record(kind) else None


def keys_of(record: type[Record] | None) -> Mapping[str, str]:
    """Return the keys a record may have, in their order, each with its meaning."""
    fields = record.model_fields if record else {}
    return {field.alias or name: field.description or "" for name, field in fields.items()}


def _is_record(kind: Any) -> bool:
    return isinstance(kind, type) and issubclass(kind, Record)


def _plain(kind: Any) -> Any:
    """Take off what pydantic adds to a type, and `or None`."""
    while True:
        origin, arguments = get_origin(kind), get_args(kind)
        if origin is Annotated:
            kind = arguments[0]
        elif origin in (Union, UnionType):
            kind = next((part for part in arguments if part is not NoneType), None)
        else:
            return kind


def _below(kind: Any, step: str | int) -> Any:
    if _is_record(kind):
        fields = kind.model_fields.values()
        return next((field.annotation for field in fields if field.alias == step), None)
    arguments = get_args(kind)
    if get_origin(kind) is Mapping:
        return arguments[1]
    return arguments[0] if arguments and isinstance(step, int) else None
