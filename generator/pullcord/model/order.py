"""The order in which the keys of a file are written: what it is, then what is done, then where on.

It is the order of the fields in the model, but for the records named here: their fields come from
two classes, or read better in another order. Effects keep the order they happen in, which only the
author knows.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from pullcord.finding import Place
from pullcord.model.action import Action
from pullcord.model.base import Record
from pullcord.model.job import Entry
from pullcord.model.machine import SheetValue
from pullcord.model.procedure import Cause, Procedure, Step
from pullcord.model.shape import keys_of, record_at

EFFECTS = "effects"
"""Stands for all effects, and in a log for what was drained and filled: they share one rank."""

ORDERS: Mapping[type[Record], str] = {
    Procedure: "procedure title symptom also-said signs about fits before tools proves mistakes "
    "other-odds start causes steps",
    Step: "as title do why source effects needs minutes ask reading answers tells then after",
    Cause: "as title remedy effects odds odds-from parts minutes source",
    SheetValue: "title value limits quantity winding at-celsius source note",
    Entry: "date procedure step value answer reading celsius cause did parts shows unproves "
    "effects minutes note photo",
}
_LIQUIDS = ("drains", "fills")


def in_order(model: type[Record], place: Place, keys: Iterable[str]) -> list[str]:
    """Return the keys that stand at a place of a document of this model, in their order.

    Names and answers keep the author's order; so do keys nobody knows, at the end.
    """
    record = record_at(model, place)
    if record is None:
        return list(keys)
    ranks = ranks_of(record)
    return sorted(keys, key=lambda key: ranks.get(key, len(ranks)))


def ranks_of(record: type[Record]) -> Mapping[str, int]:
    """Return the rank of every key a record may have, from 0; some share one."""
    known = keys_of(record)
    order = ORDERS[record].split() if record in ORDERS else list(known)
    effects = [key for key in (*keys_of(Action), *_LIQUIDS) if EFFECTS in order and key in known]
    ranks = {key: rank for rank, key in enumerate(order)}
    ranks.update(dict.fromkeys(effects, ranks.get(EFFECTS, 0)))
    ranks.pop(EFFECTS, None)
    return ranks
