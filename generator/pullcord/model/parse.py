"""Plain data to records of the model, every complaint said in the author's words."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from itertools import islice
from typing import Any, TypeVar

from pydantic import ValidationError

from pullcord.finding import Flaw, Place
from pullcord.model.base import LINE_PATTERN, NAME_PATTERN, Record
from pullcord.model.nearest import did_you_mean, listed, nearest
from pullcord.model.procedure import Procedure
from pullcord.model.shape import keys_of, record_at
from pullcord.model.target import KINDS, MEND

Model = TypeVar("Model", bound=Record)
Words = tuple[str, str, str]
"""A rule, a message, a mend."""

MOST_FLAWS = 100
_SHAPES = {
    "string_type": ("text", "write the value on the same line as its key"),
    "mapping_type": ("`key: value` lines", "write them below the key, indented"),
    "dict_type": ("`key: value` lines", "write them below the key, indented"),
    "model_type": ("`key: value` lines", "write them below the key, indented"),
    "model_attributes_type": ("`key: value` lines", "write them below the key, indented"),
    "tuple_type": ("a list", "write one `- item` a line below the key"),
    "list_type": ("a list", "write one `- item` a line below the key"),
    "float_type": ("a number", "write digits, such as `2.5`"),
    "int_type": ("a number", "write digits, such as `5`"),
    "decimal_type": ("a number", "write digits, such as `2.50`"),
}
_BOUNDS = {
    "greater_than": ("gt", "is too small: it must be more than {}"),
    "greater_than_equal": ("ge", "is too small: the least is {}"),
    "less_than": ("lt", "is too large: it must be less than {}"),
    "less_than_equal": ("le", "is too large: the most is {}"),
    "decimal_max_places": ("decimal_places", "has more than {} digits behind the point"),
}


def parse_procedure(data: object) -> Procedure | tuple[Flaw, ...]:
    """Return the procedure that plain data describes, or what is wrong with it."""
    return parse_record(Procedure, data)


def parse_record(model: type[Model], data: object) -> Model | tuple[Flaw, ...]:
    """Return the record that plain data describes, or what is wrong with it.

    Every scalar of the data is text, as `source.read_data` gives it. Never raises.
    """
    try:
        return model.model_validate(data, by_alias=True, by_name=False)
    except ValidationError as error:
        errors = islice(error.errors(include_url=False), MOST_FLAWS)
        return tuple(dict.fromkeys(_flaw(model, data, known) for known in errors))


def _flaw(model: type[Record], data: object, error: Any) -> Flaw:
    place, is_key = _place_of(error, data)
    kind: str = error["type"]
    value = _shown(place[-1] if is_key and place else error["input"])
    if kind == "extra_forbidden":
        words = _unknown_key(model, place)
    elif kind == "missing":
        words = _missing_key(model, place)
        place = place[:-1]
    elif kind in _SHAPES:
        words = _wrong_shape(kind, error["input"])
    else:
        words = _TRANSLATORS.get(kind, _wrong_value)(value, error)
    rule, message, mend = words
    return Flaw(place, message, mend, rule, is_key or kind == "extra_forbidden")


def _place_of(error: Any, data: object) -> tuple[Place, bool]:
    """Return where an error is, without pydantic's own marks, and whether its key is wrong."""
    location = list(error["loc"])
    is_key = location[-1:] == ["[key]"]
    place: list[str | int] = []
    here: Any = data
    for step in location[:-1] if is_key else location:
        if _has(here, step):
            here = here[step]
            place.append(step)
    if error["type"] == "missing":
        place.append(location[-1])
    return tuple(place), is_key


def _has(data: Any, step: str | int) -> bool:
    if isinstance(data, list | tuple):
        return isinstance(step, int) and step < len(data)
    return isinstance(data, Mapping) and step in data


def _unknown_key(model: type[Record], place: Place) -> Words:
    key = str(place[-1]) if place else ""
    known = keys_of(record_at(model, place[:-1]))
    keys = f"the keys that may stand here are {listed(known)}"
    return (
        "unknown-key",
        f"there is no key called `{_shown(key)}` here",
        did_you_mean(key, known, keys),
    )


def _missing_key(model: type[Record], place: Place) -> Words:
    key = str(place[-1])
    meaning = keys_of(record_at(model, place[:-1])).get(key, "")
    first = meaning.split(". ")[0].rstrip(".")
    tail = f" ({first[0].lower()}{first[1:]})" if first else ""
    return "missing-key", f"the key `{key}` is missing here", f"add `{key}:`{tail}"


def _wrong_shape(kind: str, given: object) -> Words:
    wanted, mend = _SHAPES[kind]
    is_keys, is_list = isinstance(given, Mapping), isinstance(given, list | tuple)
    shape = "`key: value` lines" if is_keys else "a list" if is_list else "text"
    return "wrong-shape", f"{wanted} must stand here, not {shape}", mend


def _unknown_word(value: str, error: Any) -> Words:
    allowed = re.findall(r"'([^']*)'", error["ctx"]["expected"])
    words = f"the words that may stand here are {listed(allowed)}"
    return (
        "unknown-word",
        f"`{value}` is not a word that may stand here",
        did_you_mean(value, allowed, words),
    )


def _bad_pattern(value: str, error: Any) -> Words:
    pattern = error["ctx"]["pattern"]
    if pattern == NAME_PATTERN:
        return (
            "bad-name",
            f"`{value}` cannot be a name",
            "a name has small letters, digits and single hyphens, and begins with a letter"
            + (f": `{better}`" if (better := _as_name(value)) else ""),
        )
    if pattern == LINE_PATTERN:
        return "wrong-value", "this text must fit on one line", "take out the line break"
    return "wrong-value", f"`{value}` cannot stand here", "write a few words on one line"


def _too_long(value: str, error: Any) -> Words:
    most = error["ctx"]["max_length"]
    return "text-too-long", f"this text is longer than {most} characters", "say it shorter"


def _empty(value: str, error: Any) -> Words:
    return "empty-value", "nothing stands here", "write the value, or delete the key"


def _not_a_number(value: str, error: Any) -> Words:
    if re.fullmatch(r"-?\d+,\d+", value):
        return "wrong-number", f"`{value}` has a comma", f"write `{value.replace(',', '.')}`"
    return "wrong-number", f"`{value}` is not a number", "write digits alone, such as `5` or `2.5`"


def _out_of_bounds(value: str, error: Any) -> Words:
    if value.strip(" +-").lower() == "nan":
        return _not_a_number(value, error)
    bound, words = _BOUNDS[error["type"]]
    return (
        "wrong-number",
        f"`{value}` {words.format(format(error['ctx'][bound], 'g'))}",
        "see whether the figure and its unit are meant",
    )


def _bad_target(value: str, error: Any) -> Words:
    kind, _, name = value.partition(" ")
    meant = nearest(kind, KINDS)
    mend = f"did you mean `{meant} {name.strip()}`?" if meant and name and meant != kind else MEND
    return "bad-target", f"`{value}` does not say where to go next", mend


def _wrong_value(value: str, error: Any) -> Words:
    said = str(error["msg"]).removeprefix("Value error, ")
    said = re.sub("^Input should be", "the value should be", said)
    return "wrong-value", f"`{value}` cannot stand here: {said}", "see what the key means"


_TRANSLATORS: Mapping[str, Callable[[str, Any], Words]] = {
    "literal_error": _unknown_word,
    "string_pattern_mismatch": _bad_pattern,
    "string_too_long": _too_long,
    "string_too_short": _empty,
    "float_parsing": _not_a_number,
    "int_parsing": _not_a_number,
    "int_from_float": _not_a_number,
    "decimal_parsing": _not_a_number,
    "finite_number": _not_a_number,
    "target": _bad_target,
    **dict.fromkeys(_BOUNDS, _out_of_bounds),
}


def _shown(value: object) -> str:
    text = " ".join(str(value).split()) if isinstance(value, str) else "this"
    return text if len(text) <= 60 else f"{text[:59]}…"


def _as_name(value: str) -> str:
    bare = re.sub("[^a-z0-9]+", "-", value.lower()).strip("-")
    return bare if re.match("[a-z]", bare) and len(bare) <= 48 else ""
