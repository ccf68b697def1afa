"""No two procedures, and no two machines, have the same name.

Each has one page, and a hand-over must know which one is meant. A shop that wants its own version
of a procedure that comes with Pullcord gives it another name, or says in its settings that it
replaces the shipped one.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from pullcord.finding import Flaw
from pullcord.model.base import Record, name_of
from pullcord.rules.example import example

ID = "same-name-twice"

FAILING = {
    "library/no-prime.yaml": example("title: Pump will not prime\n"),
    "shop/no-prime.yaml": example("title: Our pump will not prime\n"),
}

MENDED = {
    "library/no-prime.yaml": example("title: Pump will not prime\n"),
    "shop/our-no-prime.yaml": example("procedure: our-no-prime\ntitle: Our pump will not prime\n"),
}


def check(files: Mapping[str, Record]) -> Iterator[tuple[str, Flaw]]:
    """Yield a file and a flaw for everything whose name an earlier file has."""
    first: dict[tuple[str, str], str] = {}
    for file, record in files.items():
        kind, name = name_of(record)
        if (kind, name) in first:
            yield (
                file,
                Flaw(
                    (kind,),
                    f"there is a {kind} `{name}` already, in {first[kind, name]}",
                    f"give this one another name, or list `{name}` under `replaces` in the "
                    "settings if it is to take the other's place",
                ),
            )
        first.setdefault((kind, name), file)
