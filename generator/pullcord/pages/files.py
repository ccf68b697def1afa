"""Links to a procedure's files: its sheets of paper, and the one that needs no other."""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.pages.address import (
    GENERAL_PAPER,
    MACHINE_PAPER,
    file_link,
    one_file_uri,
    paper_uri,
)
from pullcord.pages.page import PageLink
from pullcord.pages.way import Signposts


def file_links(posts: Signposts) -> Iterator[PageLink]:
    """Yield the links of a page; no record sheet where nothing is read."""
    name, machine = posts.procedure.procedure, posts.subject.name
    has_readings = any(step.reading for step in posts.procedure.steps.values())
    for kind in MACHINE_PAPER if machine else GENERAL_PAPER:
        if kind != "record" or has_readings:
            href = file_link(posts.uri, paper_uri(kind, name, machine))
            yield PageLink(posts.words[f"paper_{kind}"], "", href)
    if not machine:
        href = file_link(posts.uri, one_file_uri(name))
        yield PageLink(posts.words["one_file"], "", href)
