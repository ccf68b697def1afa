"""Where an answer leads."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Literal

from pydantic import BeforeValidator, WithJsonSchema
from pydantic_core import PydanticCustomError

Kind = Literal["step", "cause", "procedure", "done"]
KINDS: tuple[Kind, ...] = ("step", "cause", "procedure", "done")
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
    for kind in KINDS:
        if len(words) == 2 and words[0] == kind and kind != "done":
            return Target(kind, words[1])
    raise PydanticCustomError("target", MEND)


TargetText = Annotated[
    Target,
    BeforeValidator(parse_target),
    WithJsonSchema({"type": "string", "pattern": PATTERN}),
]
