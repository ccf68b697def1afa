"""Where an answer leads."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Annotated, Literal

from pydantic import BeforeValidator, WithJsonSchema
from pydantic_core import PydanticCustomError

Kind = Literal["step", "cause", "procedure", "done"]
KINDS: tuple[Kind, ...] = ("step", "cause", "procedure", "done")
_NAMED: Mapping[str, Kind] = {kind: kind for kind in KINDS if kind != "done"}
"""What is said with a name, by its word."""
MEND = "write `step NAME`, `cause NAME`, `procedure NAME` or `done`"
PATTERN = "^((step|cause|procedure) +[a-z][a-z0-9-]*|done)$"


@dataclass(frozen=True, order=True)
class Target:
    """A step or cause of the same procedure, another procedure, or `done`."""

    kind: Kind
    name: str = ""

    @property
    def node(self) -> str:
        """Return the name this target has in the procedure's graph, such as `step:plug`."""
        return f"{self.kind}:{self.name}" if self.name else self.kind


def parse_target(value: object) -> object:
    """Read `step plug`, `cause coil-open`, `procedure wont-idle` or `done`."""
    if isinstance(value, Target):
        return value
    words = value.split() if isinstance(value, str) else []
    if words == ["done"]:
        return Target("done")
    kind = _NAMED.get(words[0]) if len(words) == 2 else None
    if kind:
        return Target(kind, words[1])
    raise PydanticCustomError("target", MEND)


TargetText = Annotated[
    Target,
    BeforeValidator(parse_target),
    WithJsonSchema({"type": "string", "pattern": PATTERN}),
]
