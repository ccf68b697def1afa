"""The pages of all keys, one a kind of file."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from textwrap import indent

from pullcord.model.schema import KINDS
from pullcord.pages.address import RULES, keys_uri, link
from pullcord.pages.imprint import Imprint, imprint
from pullcord.pages.keys.allowed import Words, allowed, is_below
from pullcord.pages.keys.entries import (
    EFFECTS,
    KeyEntry,
    RecordEntry,
    record_entries,
    refs_of,
)
from pullcord.pages.kit import Kit, render, template_folders
from pullcord.pages.page import Heading, Page, PageLink
from pullcord.pages.prose import Piece, pieces
from pullcord.pages.texts import Phrase, read_texts
from pullcord.pages.texts import Words as WordsShape

Examples = Mapping[str, Mapping[str, str]]
"""What stands behind a key, by record and key."""


@dataclass(frozen=True)
class SeeAlso:
    """A record on the same page."""

    title: tuple[Piece, ...]
    href: str


@dataclass(frozen=True)
class KeyView:
    """One key, every word of it decided."""

    id: str
    name: str
    meaning: tuple[Piece, ...]
    allowed: tuple[Piece, ...]
    besides: tuple[tuple[Piece, ...], ...]
    """Whether it must be there, and what it is without being written."""
    see: tuple[SeeAlso, ...]
    example: str


@dataclass(frozen=True)
class RecordView:
    """The keys of one place."""

    id: str
    title: tuple[Piece, ...]
    intro: tuple[tuple[Piece, ...], ...]
    effects: SeeAlso | None
    """The keys of effects, where they may stand here too."""
    keys: tuple[KeyView, ...]


@dataclass(frozen=True)
class KeysView:
    """One page, decided."""

    title: str
    intro: tuple[tuple[Piece, ...], ...]
    example_title: str
    records: tuple[RecordView, ...]
    others: tuple[PageLink, ...]
    imprint: Imprint


def keys_pages(kit: Kit) -> tuple[Page, ...]:
    """Return one page for every kind of file. Raises PullcordError when a text does not fit."""
    words = _words(kit)
    examples: Examples = read_texts(
        template_folders(kit.settings), "key-examples", Mapping[str, Mapping[str, Phrase]]
    )
    return tuple(_page(kit, kind, words, examples) for kind in KINDS)


def keys_links(kit: Kit, from_uri: str = RULES) -> tuple[PageLink, ...]:
    """Return a link to each of the pages."""
    words = _words(kit)
    return tuple(
        PageLink(words[f"title_{kind}"], "", link(from_uri, keys_uri(kind))) for kind in KINDS
    )


def keys_title(kit: Kit, kind: str) -> str:
    """Return the title of the page of one kind of file."""
    return _words(kit)[f"title_{kind}"]


def _words(kit: Kit) -> Words:
    words: Words = read_texts(template_folders(kit.settings), "keys", WordsShape)
    return words


def _page(kit: Kit, kind: str, words: Words, examples: Examples) -> Page:
    records = tuple(_record(each, words, examples) for each in record_entries(kind))
    title = words[f"title_{kind}"]
    view = KeysView(
        title=title,
        intro=tuple(pieces(words[key]) for key in (f"intro_{kind}", "text", "editor")),
        example_title=words["example"],
        records=records,
        others=tuple(each for each in keys_links(kit, keys_uri(kind)) if each.title != title),
        imprint=imprint(kit),
    )
    headings = tuple(
        Heading(each.id, "".join(piece.text for piece in each.title), 2) for each in records
    )
    return Page(keys_uri(kind), title, render(kit, "keys", view), headings, in_search=False)


def _record(record: RecordEntry, words: Words, examples: Examples) -> RecordView:
    own = examples.get(record.name, {})
    intro = words["effects_intro"] if record.name == EFFECTS else record.meaning
    return RecordView(
        id=_anchor(record.name),
        title=pieces(words[f"record_{record.name}"]),
        intro=(pieces(" ".join(intro.split())),),
        effects=_see(EFFECTS, words, words["effects_too"]) if record.has_effects else None,
        keys=tuple(_key(record.name, key, words, own.get(key.name, "")) for key in record.keys),
    )


def _key(record: str, key: KeyEntry, words: Words, example: str) -> KeyView:
    needed = words["needed"] if key.is_needed else ""
    needed = words["needed_unless_as"] if key.is_filled_in else needed
    default = key.schema.get("default")
    left_out = words["default"].format(value=default) if default is not None else ""
    return KeyView(
        id=f"key-{record.lower()}-{key.name}",
        name=key.name,
        meaning=pieces(key.meaning),
        allowed=pieces(_sentence(allowed(key.schema, words))),
        besides=tuple(pieces(text) for text in (needed, left_out) if text),
        see=tuple(_see(name, words) for name in dict.fromkeys(refs_of(key.schema))),
        example=_example(key, example) if example else "",
    )


def _example(key: KeyEntry, example: str) -> str:
    """Return an example as it stands in a file: lines of keys and lists below their key."""
    if is_below(key.schema):
        return f"{key.name}:\n{indent(example, '  ')}"
    return f"{key.name}: {example}"


def _see(record: str, words: Words, said: str = "") -> SeeAlso:
    return SeeAlso(pieces(said or words[f"record_{record}"]), f"#{_anchor(record)}")


def _anchor(record: str) -> str:
    return f"keys-{record.lower()}"


def _sentence(text: str) -> str:
    return f"{text[0].upper()}{text[1:]}."
