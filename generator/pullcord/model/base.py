"""The kind of data every model is made of: frozen, closed, read from text."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Annotated, TypeVar

from pydantic import AfterValidator, BaseModel, BeforeValidator, ConfigDict, StringConstraints

Value = TypeVar("Value")


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


def one_or_many(value: object) -> object:
    """Let an author write `opens: petrol` for `opens: [petrol]`."""
    return (value,) if isinstance(value, str) else value


Many = Annotated[tuple[Value, ...], BeforeValidator(one_or_many)]
"""A list that may be written as a single value."""

Named = Annotated[Mapping[str, Value], AfterValidator(MappingProxyType)]
"""A mapping in the author's order that nobody can change."""

Name = Annotated[str, StringConstraints(pattern=r"^[a-z][a-z0-9]*(-[a-z0-9]+)*$", max_length=48)]
"""A name other files and links may rely on: small letters, digits, single hyphens."""

Line = Annotated[str, StringConstraints(strip_whitespace=True, min_length=1, max_length=120)]
"""One line of text, such as a title."""

Text = Annotated[str, StringConstraints(strip_whitespace=True, min_length=1, max_length=1200)]
"""A few sentences. Plain text: it is never read as markup."""
