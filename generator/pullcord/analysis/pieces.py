"""Which procedures use a shared step or a shared cause."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from pullcord.model.procedure import Procedure


@dataclass(frozen=True)
class UsedPiece:
    """One shared thing."""

    kind: Literal["step", "cause"]
    name: str
    """What a procedure writes behind `as:`."""
    title: str
    """As the first procedure that uses it calls it."""
    uses: tuple[tuple[str, str], ...]
    """The procedures that use it, each with its own name for the step or cause, in their order."""


def used_pieces(procedures: Iterable[Procedure]) -> tuple[UsedPiece, ...]:
    """Return every shared step, then every shared cause: what is used most goes first."""
    titles: dict[tuple[str, str], str] = {}
    uses: dict[tuple[str, str], list[tuple[str, str]]] = {}
    for procedure in procedures:
        for kind, parts in (("step", procedure.steps), ("cause", procedure.causes)):
            for own, part in parts.items():
                if part.as_:
                    titles.setdefault((kind, part.as_), part.title)
                    uses.setdefault((kind, part.as_), []).append((procedure.procedure, own))
    found = (
        UsedPiece("step" if kind == "step" else "cause", name, title, tuple(uses[kind, name]))
        for (kind, name), title in titles.items()
    )
    return tuple(sorted(found, key=lambda piece: (piece.kind != "step", -len(piece.uses))))
