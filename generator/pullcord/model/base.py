"""The kind of data every model is made of: frozen, closed, read from text."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Annotated, TypeVar

from pydantic import (
    AfterValidator,
    BaseModel,
    BeforeValidator,
    ConfigDict,
    GetJsonSchemaHandler,
    StringConstraints,
)
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import CoreSchema

Value = TypeVar("Value")

NAME_PATTERN = r"^[a-z][a-z0-9]*(-[a-z0-9]+)*$"
LINE_PATTERN = r"^[^\n]*$"
WORDS_PATTERN = r"^[^\n]*[^ \n][^\n]*$"


def kebab(field: str) -> str:
    """Return the key an author writes for a Python field: `takes_off` is `takes-off`."""
    return field.rstrip("_").replace("_", "-")


class Record(BaseModel):
    """A frozen record whose keys are all known; its field docs become the reference."""

    model_config = ConfigDict(
        frozen=True,
        extra="forbid",
        alias_generator=kebab,
        populate_by_name=True,
        use_attribute_docstrings=True,
        hide_input_in_errors=True,
    )


def name_of(record: Record) -> tuple[str, str]:
    """Return what kind of file a record is and its name: its first key and that key's value."""
    key = next(iter(type(record).model_fields))
    return key, str(getattr(record, key))


def one_or_many(value: object) -> object:
    """Let an author write `opens: petrol` for `opens: [petrol]`."""
    return (value,) if isinstance(value, str) else value


class _OneOrMany:
    """Says in a schema that one item may stand for a list of it."""

    def __get_pydantic_json_schema__(
        self, core_schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> JsonSchemaValue:
        many = handler(core_schema)
        return {"anyOf": [many["items"], many]}


Many = Annotated[tuple[Value, ...], BeforeValidator(one_or_many), _OneOrMany()]
"""A list that may be written as a single value."""

Name = Annotated[str, StringConstraints(pattern=NAME_PATTERN, max_length=48)]
"""A name other files and links may rely on: small letters, digits, single hyphens."""

Line = Annotated[
    str,
    StringConstraints(strip_whitespace=True, min_length=1, max_length=120, pattern=LINE_PATTERN),
]
"""One line of text, such as a title."""

Words = Annotated[str, StringConstraints(min_length=1, max_length=120, pattern=WORDS_PATTERN)]
"""An answer in anybody's words, used as a key: kept exactly as written."""

Text = Annotated[str, StringConstraints(strip_whitespace=True, min_length=1, max_length=1200)]
"""A few sentences. Plain text: it is never read as markup."""

Named = Annotated[Mapping[Name, Value], AfterValidator(MappingProxyType)]
"""A mapping by name, in the author's order, that nobody can change."""

Worded = Annotated[Mapping[Words, Value], AfterValidator(MappingProxyType)]
"""A mapping by answer, in the author's order, that nobody can change."""
