"""A part typed at the command line."""

from __future__ import annotations

from decimal import Decimal

import pytest

from pullcord.model.job import Part, Wanted
from pullcord.model.parse import parse_record
from pullcord.model.part_text import PartError, parse_part
from pullcord.model.taking import plain

CHAIN = {"chain": Wanted(title="Drive chain", price=Decimal(32), serves="drives", number="C-78")}

CASES = {
    "title and price": ("Spark plug=4.50", {"title": "Spark plug", "price": "4.50"}),
    "spaces": (" Spark plug = 4.50 ", {"title": "Spark plug", "price": "4.50"}),
    "a number": ("Plug=4 #A 7-b", {"title": "Plug", "price": "4", "number": "A 7-b"}),
    "a stage": ("Plug=4 for runs", {"title": "Plug", "price": "4", "serves": "runs"}),
    "both": (
        "Plug=4 #A7 for runs",
        {"title": "Plug", "price": "4", "number": "A7", "serves": "runs"},
    ),
    "an equals sign in the title": ("Hose a=b=3", {"title": "Hose a=b", "price": "3"}),
    "commas in title and number": (
        "Oil, 1 l=8 #x,y",
        {"title": "Oil, 1 l", "price": "8", "number": "x,y"},
    ),
    "what was wanted": (
        "chain=30.50",
        {
            "title": "Drive chain",
            "price": "30.50",
            "number": "C-78",
            "serves": "drives",
            "wanted": "chain",
        },
    ),
    "what was wanted, another one": (
        "chain=9 #used for runs",
        {
            "title": "Drive chain",
            "price": "9",
            "number": "used",
            "serves": "runs",
            "wanted": "chain",
        },
    ),
}


@pytest.mark.parametrize(("text", "data"), CASES.values(), ids=CASES)
def test_a_part_is_read(text: str, data: dict[str, str]) -> None:
    """Every piece goes to its key, and the model takes it."""
    part = plain(parse_part(text, CHAIN))
    assert part == data
    assert isinstance(parse_record(Part, part), Part)


REFUSED = {
    "no price": ("Spark plug", "write TITLE=PRICE"),
    "no title": ("=4.50", "write TITLE=PRICE"),
    "a word for a price": ("Plug=free", "write TITLE=PRICE"),
    "something behind the price": ("Plug=4 from the shop", "write TITLE=PRICE"),
    "a comma in the price": ("Plug=4,50", "write `4.50`"),
}


@pytest.mark.parametrize(("text", "said"), REFUSED.values(), ids=REFUSED)
def test_what_is_no_part_is_told(text: str, said: str) -> None:
    """With what to write instead; a comma is never taken for the end of the price."""
    with pytest.raises(PartError, match=said):
        parse_part(text, {})
