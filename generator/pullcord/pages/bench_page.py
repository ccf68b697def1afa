"""The tables for the bench: copper, wire, chain, sprockets, height, tyres, leaks."""

from __future__ import annotations

import re
from dataclasses import dataclass

from pullcord.pages.address import BENCH
from pullcord.pages.imprint import Imprint, imprint
from pullcord.pages.kit import Kit, render
from pullcord.pages.page import Heading, Page
from pullcord.readings import Table, bench_tables


@dataclass(frozen=True)
class BenchTable:
    """A table with the anchor it is found by."""

    id: str
    table: Table


@dataclass(frozen=True)
class BenchView:
    """The page, decided."""

    tables: tuple[BenchTable, ...]
    imprint: Imprint


def bench_page(kit: Kit) -> Page:
    """Return the page of conversions."""
    tables = tuple(BenchTable(_anchor(table.title), table) for table in bench_tables())
    html = render(kit, "bench", BenchView(tables, imprint(kit)))
    headings = tuple(Heading(each.id, each.table.title, 2) for each in tables)
    return Page(BENCH, kit.words["bench_title"], html, headings)


def _anchor(title: str) -> str:
    return "-".join(("table", *re.findall("[a-z0-9]+", title.lower())))
