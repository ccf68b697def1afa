"""What may stand behind a key, in words, out of its schema."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from pullcord.model.base import NAME_PATTERN, WORDS_PATTERN
from pullcord.model.job import DAY_PATTERN, MOMENT_PATTERN, PHOTO_PATTERN
from pullcord.model.schema import AMOUNT, Schema
from pullcord.model.target import PATTERN as TARGET_PATTERN

Words = Mapping[str, str]
_PATTERNS = {
    NAME_PATTERN: "may_name",
    WORDS_PATTERN: "may_answer",
    TARGET_PATTERN: "may_target",
    DAY_PATTERN: "may_day",
    MOMENT_PATTERN: "may_moment",
    PHOTO_PATTERN: "may_photo",
}


def allowed(schema: Schema, words: Words) -> str:
    """Return what may stand there; `words` are those of `texts/keys.yaml`."""
    return next(say(schema, words) for is_so, say in _SHAPES if is_so(schema))


def is_below(schema: Schema) -> bool:
    """Say whether what stands there is written below the key, not behind it."""
    is_list = schema.get("type") == "array"
    return is_list or "$ref" in schema or "allOf" in schema or schema.get("type") == "object"


def _many(schema: Schema, words: Words) -> str:
    return words["may_many"].format(one=allowed(schema["anyOf"][0], words))


def _record(schema: Schema, words: Words) -> str:
    return words["may_record"]


def _list(schema: Schema, words: Words) -> str:
    return words["may_list"].format(one=allowed(schema["items"], words))


def _by_key(schema: Schema, words: Words) -> str:
    is_name = schema["propertyNames"]["pattern"] == NAME_PATTERN
    one = allowed(schema["additionalProperties"], words)
    return words["may_by_name" if is_name else "may_by_answer"].format(one=one)


def _words(schema: Schema, words: Words) -> str:
    allowed_words = schema.get("enum") or [schema["const"]]
    said = ", ".join(f"`{word}`" for word in allowed_words)
    key = "may_one_of" if len(allowed_words) > 1 else "may_word"
    return words[key].format(words=said, word=allowed_words[0])


def _number(schema: Schema, words: Words) -> str:
    most = _figure(schema.get("maximum"))
    if schema.get("pattern") == AMOUNT:
        return words["may_amount"].format(most=most)
    if "exclusiveMinimum" in schema:
        least = _figure(schema["exclusiveMinimum"])
        return words["may_number_above"].format(least=least, most=most)
    key = "may_whole" if "integer" in schema["type"] else "may_number"
    return words[key].format(least=_figure(schema.get("minimum")), most=most)


def _text(schema: Schema, words: Words) -> str:
    pattern = schema.get("pattern")
    key = _PATTERNS.get(pattern or "", "may_line" if pattern else "may_text")
    return words[key].format(most=schema.get("maxLength", ""))


def _figure(value: Any) -> str:
    return f"{value:g}"


_SHAPES: tuple[tuple[Callable[[Schema], bool], Callable[[Schema, Words], str]], ...] = (
    (lambda schema: "anyOf" in schema, _many),
    (lambda schema: "$ref" in schema or "allOf" in schema, _record),
    (lambda schema: "enum" in schema or "const" in schema, _words),
    (lambda schema: schema["type"] == "array", _list),
    (lambda schema: schema["type"] == "object", _by_key),
    (lambda schema: bool({"number", "integer"} & set(schema["type"][:1])), _number),
    (lambda schema: True, _text),
)
"""How each shape of schema is said; the first that fits counts."""
