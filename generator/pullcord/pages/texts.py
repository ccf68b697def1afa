"""The standing texts: every word on a page that does not come from a procedure.

They lie in `texts/*.yaml` of the template folders. A project's own file need only hold the keys
it words differently; they go before the shipped ones. Every scalar is text, so `no` stays `no`.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path
from types import MappingProxyType
from typing import Annotated, Any, Literal, TypeVar

import yaml
from pydantic import AfterValidator, StringConstraints, TypeAdapter, ValidationError

from pullcord.errors import PullcordError
from pullcord.model.base import Line, Name, Record, Text

Shape = TypeVar("Shape")
LOADER = getattr(yaml, "CBaseLoader", yaml.BaseLoader)
"""Every scalar stays text and no object is ever made: this loader knows no tags."""
Phrase = Annotated[str, StringConstraints(strip_whitespace=True, min_length=1)]
Words = Annotated[Mapping[str, Phrase], AfterValidator(MappingProxyType)]
"""Labels and short sentences, by key; `{name}` in one is filled in by the page that prints it."""


class Standing(Record):
    """What every page or every procedure says."""

    deferral: tuple[Text, ...]
    """What goes before these pages: the maker's manual, local codes, licensed practice."""
    before: tuple[Text, ...]
    """What holds before the first step of any procedure."""
    always_ready: tuple[Name, ...]
    """What is in place before any procedure, by the keys of `ready.yaml`."""
    always_wear: tuple[Name, ...]
    """What is worn in any procedure, by the keys of `wear.yaml`."""
    walk_away: tuple[Text, ...]
    """How a machine is left, whatever was found."""


class Caution(Record):
    """What the box for one hazard says."""

    hazard: Text
    """What threatens."""
    consequence: Text
    """What it does to a person."""
    avoid: Text
    """How to avoid it."""


class GuideSection(Record):
    """One section of the page that says how to read the others."""

    title: Line
    text: tuple[Text, ...]
    shows: Literal["signal-words", "signs", "odds", ""] = ""
    """A table to stand below the text."""


def read_texts(folders: Sequence[Path], name: str, shape: type[Shape] | Any) -> Any:
    """Read `texts/NAME.yaml` from every folder, first one first, as the given shape.

    Raises PullcordError when no folder has the file or one does not fit the shape.
    """
    merged: dict[str, object] = {}
    paths = [path for folder in folders if (path := folder / "texts" / f"{name}.yaml").is_file()]
    if not paths:
        raise PullcordError(f"there is no texts/{name}.yaml in any template folder")
    for path in reversed(paths):
        merged |= _read_mapping(path)
    try:
        return TypeAdapter(shape).validate_python(merged)
    except ValidationError as error:
        first = error.errors()[0]
        where = ".".join(str(part) for part in first["loc"])
        raise PullcordError(f"{paths[0]}: {where}: {first['msg']}") from None


def check_keys(name: str, given: Mapping[str, object], known: Mapping[str, object]) -> None:
    """Refuse a key nobody prints: it is a typing error in a project's own texts."""
    for key in given:
        if key not in known:
            raise PullcordError(f"texts/{name}.yaml: `{key}` is not a key of the shipped texts")


def _read_mapping(path: Path) -> dict[str, object]:
    try:
        data = yaml.load(path.read_text(encoding="utf-8"), Loader=LOADER)  # noqa: S506
    except (OSError, UnicodeDecodeError, RecursionError, yaml.YAMLError) as error:
        raise PullcordError(f"{path}: cannot be read: {error}") from None
    if not isinstance(data, dict):
        raise PullcordError(f"{path}: must be a mapping of keys to texts")
    return data
