"""The options of `pullcord log`, one for every key of an entry."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import click

from pullcord.model.job import Entry
from pullcord.model.order import ranks_of
from pullcord.model.part_text import FORM
from pullcord.model.shape import keys_of
from pullcord.site.typed_entry import LISTS, PART


def entry_options() -> list[Callable[[Any], Any]]:
    """Return an option for every key of an entry, in the order in which they are written."""
    ranks, meanings = ranks_of(Entry), keys_of(Entry)
    return [_option(key, meanings[key]) for key in sorted(meanings, key=lambda key: ranks[key])]


def _option(key: str, meaning: str) -> Callable[[Any], Any]:
    if key == "parts":
        text = f"A part that was paid for: {FORM}. May be given several times."
        return click.option(f"--{PART}", PART, multiple=True, metavar="PART", help=text)
    if key == "date":
        meaning = f"{meaning} Today, if not given."
    if key in LISTS:
        text = f"{meaning} Several: commas between."
        return click.option(f"--{key}", multiple=True, metavar="WORDS", help=text)
    return click.option(f"--{key}", metavar="TEXT", help=meaning.replace("`", "'"))
