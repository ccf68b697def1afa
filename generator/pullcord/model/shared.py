"""What several procedures share: written once, in a file of its own, and filled in by name.

    shared: bench
    steps:
      known-good-plug: {title: Try a known-good plug, do: ..., makes: spark}

A procedure writes `as: known-good-plug` in a step, and beside it whatever is its own: always where
the answers lead. A key of its own takes the place of the shared one.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any

from pydantic import Field

from pullcord.finding import Flaw
from pullcord.model.base import Name, Named, Record
from pullcord.model.nearest import did_you_mean, listed
from pullcord.model.procedure import Cause, Step, Tool

Data = Mapping[str, Any]
_KINDS = ("steps", "causes")


class Shared(Record):
    """A whole file of shared tools, causes and steps."""

    shared: Name
    """Its name: the file's name without `.yaml`."""
    tools: Named[Tool] = Field(default_factory=dict, validate_default=True)
    """Tools, by the names steps use in `needs`; a procedure need not list them again."""
    causes: Named[Cause] = Field(default_factory=dict, validate_default=True)
    """Causes with their remedies, by the names procedures fill them in with `as`."""
    steps: Named[Step] = Field(default_factory=dict, validate_default=True)
    """Steps, by the names procedures fill them in with `as`."""


@dataclass(frozen=True)
class Pieces:
    """Everything shared, as plain data: by kind (`tools`, `causes`, `steps`), then by name."""

    by_kind: Mapping[str, Data] = field(default_factory=dict)

    def of(self, kind: str) -> Data:
        """Return the shared things of one kind, by name."""
        return self.by_kind.get(kind, {})


@dataclass(frozen=True)
class Filled:
    """A procedure's data with what it shares filled in."""

    data: Data
    used: tuple[tuple[str, str], ...]
    """(Kind, name) of everything that was filled in, sorted."""
    flaws: tuple[Flaw, ...]


def gather_pieces(files: Iterable[Data]) -> Pieces:
    """Return what shared files hold, given as plain data; of two with the same name, the first."""
    kinds: dict[str, dict[str, Any]] = {"tools": {}, "causes": {}, "steps": {}}
    for data in files:
        for kind, known in kinds.items():
            for name, piece in dict(data.get(kind) or {}).items():
                known.setdefault(name, piece)
    return Pieces(kinds)


def fill_in(data: Data, pieces: Pieces) -> Filled:
    """Return a procedure's data with every `as` replaced by the shared thing it names.

    The key `as` stays. Shared tools that steps need are added. Never raises, whatever the data.
    """
    filled = dict(data)
    used: set[tuple[str, str]] = set()
    flaws: list[Flaw] = []
    for kind in _KINDS:
        if isinstance(things := data.get(kind), Mapping):
            filled[kind] = {
                name: _filled(thing, (kind, name), pieces.of(kind), used, flaws)
                for name, thing in things.items()
            }
    tools = _missing_tools(filled, pieces.of("tools"))
    if tools:
        filled["tools"] = {**(filled.get("tools") or {}), **tools}
    used |= {("tools", name) for name in tools}
    return Filled(filled, tuple(sorted(used)), tuple(flaws))


def _filled(
    thing: Any,
    place: tuple[str, str],
    known: Data,
    used: set[tuple[str, str]],
    flaws: list[Flaw],
) -> Any:
    wanted = thing.get("as") if isinstance(thing, Mapping) else None
    if not isinstance(wanted, str):
        return thing
    if wanted not in known:
        some = f"what is shared there: {listed(sorted(known))}" if known else "nothing is shared"
        message = f"no shared file has `{wanted}` among its {place[0]}"
        mend = did_you_mean(wanted, known, some)
        flaws.append(Flaw((*place, "as"), message, mend, "unknown-piece"))
        return thing
    used.add((place[0], wanted))
    return {**known[wanted], **thing}


def _missing_tools(data: Data, known: Data) -> dict[str, Any]:
    steps, own = data.get("steps"), data.get("tools")
    if not isinstance(steps, Mapping) or not isinstance(own or {}, Mapping):
        return {}
    needs = [step.get("needs") for step in steps.values() if isinstance(step, Mapping)]
    names = [name for each in needs for name in ([each] if isinstance(each, str) else each or ())]
    wanted = dict.fromkeys(name for name in names if isinstance(name, str))
    return {name: known[name] for name in wanted if name in known and name not in (own or {})}
