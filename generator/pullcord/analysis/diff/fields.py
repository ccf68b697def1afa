"""The plain keys of two records of the same kind, held against each other."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping

from pullcord.analysis.diff.change import Change, Part, listed_words
from pullcord.model.base import Record, kebab


def compare_fields(
    part: Part, at: str, old: Record, new: Record, but: Collection[str] = ()
) -> Iterator[Change]:
    """Yield a change for every key that differs; `but` are fields someone else looks at."""
    for name in type(new).model_fields:
        was, now = getattr(old, name), getattr(new, name)
        if name not in but and was != now:
            yield Change(part, at, kebab(name), _said(was), _said(now))


def _said(value: object) -> str:
    """Return a value as its author would write it; "" for none."""
    if value is None:
        return ""
    if isinstance(value, Record):
        return listed_words(
            f"{kebab(name)} {said}"
            for name in type(value).model_fields
            if (said := _said(getattr(value, name)))
        )
    if isinstance(value, Mapping):
        return "; ".join(f"{key}: {_said(part)}" for key, part in value.items())
    if isinstance(value, tuple):
        return "; ".join(map(_said, value)) if _has_sentences(value) else listed_words(value)
    return format(value, "g") if isinstance(value, float) else str(value)


def _has_sentences(values: tuple[object, ...]) -> bool:
    return any(isinstance(value, Record) or " " in str(value) for value in values)
