"""The stages that a machine has any use for."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping

from pullcord.model.stage import Stage


def stages_without(stages: Mapping[str, Stage], left_out: Collection[str]) -> dict[str, Stage]:
    """Return the stages less those left out; what came after one of these comes after its own.

    Never loops, not even where stages come after one another in a circle.
    """
    return {
        name: stage.model_copy(
            update={"after": tuple(dict.fromkeys(_after(stages, name, left_out, set())))}
        )
        for name, stage in stages.items()
        if name not in left_out
    }


def _after(
    stages: Mapping[str, Stage], name: str, left_out: Collection[str], passed: set[str]
) -> Iterator[str]:
    passed.add(name)
    for before in stages[name].after:
        if before not in left_out or before not in stages:
            yield before
        elif before not in passed:
            yield from _after(stages, before, left_out, passed)
