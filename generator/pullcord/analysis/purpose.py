"""What a procedure is for: the stage one works towards when one goes through it.

A list of stages names the procedures that prove a stage or look for what is in its way. Most others
are only come to from there, so they serve what those serve.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

import networkx as nx

from pullcord.graph import library_graph
from pullcord.model.procedure import Library
from pullcord.model.stage import Stage


def stages_proved_by(library: Library, procedure: str) -> tuple[str, ...]:
    """Return the names of the stages that going through a procedure may prove, first one first."""
    return tuple(
        name
        for name, stage in library.stages.items()
        if any(evidence.procedure == procedure for evidence in stage.proved_by)
    )


def purposes(library: Library) -> Mapping[str, str]:
    """Return the name of the stage that each procedure serves; one that serves none is left out.

    It is the first stage that names the procedure. Failing that, the stage that the nearest
    procedure leading to it proves when no fault is found in it; failing that, the one of whatever
    it leads to first. Where several are as near, the stage that comes first.
    """
    if not library.stages:
        return {}
    graph = library_graph(library)
    named = _first_stage(library, lambda stage: (*_proving(stage), *stage.looked_for_in))
    passed = _first_stage(library, _passed)
    place = {name: number for number, name in enumerate(library.stages)}
    found = {}
    for procedure in library.procedures:
        stage = (
            named.get(procedure)
            or _nearest(graph.reverse(copy=False), procedure, passed, place)
            or _nearest(graph, procedure, named, place)
        )
        if stage:
            found[procedure] = stage
    return found


def _proving(stage: Stage) -> tuple[str, ...]:
    return tuple(each.procedure for each in stage.proved_by if each.procedure)


def _passed(stage: Stage) -> tuple[str, ...]:
    """Return what proves the stage when it is gone through to its end, not by one step of it."""
    return tuple(each.procedure for each in stage.proved_by if each.procedure and not each.step)


def _first_stage(library: Library, naming: Callable[[Stage], tuple[str, ...]]) -> dict[str, str]:
    found: dict[str, str] = {}
    for name, stage in library.stages.items():
        for procedure in naming(stage):
            found.setdefault(procedure, name)
    return found


def _nearest(
    graph: nx.DiGraph, procedure: str, stage_of: Mapping[str, str], place: Mapping[str, int]
) -> str:
    for layer in nx.bfs_layers(graph, [procedure]):
        stages = {stage_of[name] for name in layer if name in stage_of}
        if stages:
            return min(stages, key=place.__getitem__)
    return ""
