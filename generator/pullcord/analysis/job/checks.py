"""What to do tonight: the next few checks, from where the log left off."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from pullcord.analysis.belief import update
from pullcord.analysis.job.believed import Believed, believed_in
from pullcord.analysis.job.given import Given
from pullcord.analysis.job.outlay import not_passed
from pullcord.analysis.job.report import NextCheck, NextProof, StageState
from pullcord.analysis.job.walks import Walk, walks_of
from pullcord.analysis.job.words import listed
from pullcord.analysis.table import taking
from pullcord.analysis.tree import Way
from pullcord.model.procedure import Procedure
from pullcord.model.stage import Stage

MOST_CHECKS = 3


@dataclass(frozen=True)
class _From:
    """Where to go on."""

    procedure: str
    step: str
    walk: Walk | None
    why: str


def read_next_checks(
    given: Given, states: tuple[StageState, ...], proofs: tuple[NextProof, ...]
) -> tuple[NextCheck, ...]:
    """Return at most three checks: on from what was left unfinished, else the next proof's first.

    Only steps that ask something are told; the steps to do before each are named in its sentence.
    """
    if given.job.given_up is not None:
        return ()
    walks = walks_of(given)
    checks: list[NextCheck] = []
    begun: set[str] = set()
    for start in _starts(given, states, proofs, walks):
        if start.procedure not in begun:
            begun.add(start.procedure)
            checks += _checks_from(given, start, MOST_CHECKS - len(checks))
        if len(checks) >= MOST_CHECKS:
            break
    return tuple(checks)


def _starts(
    given: Given,
    states: tuple[StageState, ...],
    proofs: tuple[NextProof, ...],
    walks: Mapping[str, tuple[Walk, ...]],
) -> Iterator[_From]:
    unfinished = _unfinished(given, states, walks)
    if unfinished is not None:
        yield unfinished
    by_name = {state.name: state.stage for state in states}
    unproved = {proof.stage: by_name[proof.stage] for proof in proofs}
    for stage in unproved.values():
        lacking = [unproved[name] for name in stage.after if name in unproved]
        if any(each.looked_for_in for each in lacking):
            continue
        for name in not_passed(given, stage.looked_for_in, walks):
            walk = walks[name][-1] if walks.get(name) else None
            yield _first(given, name, walk, stage, lacking)


def _unfinished(
    given: Given, states: tuple[StageState, ...], walks: Mapping[str, tuple[Walk, ...]]
) -> _From | None:
    """Return where the latest walk was left, unless what it is for has been proved since."""
    last = max((each[-1] for each in walks.values()), key=lambda walk: walk.entry, default=None)
    if last is None or _is_proved(states, last.procedure):
        return None
    kind, _, name = (last.at or "").partition(":")
    known = given.library.procedures
    on = given.notes[last.entry].day
    title = known[last.procedure].title
    if kind == "procedure" and name in known:
        why = f"“{title}” led here on {on}."
        return _From(name, known[name].start, None, why)
    if kind == "step":
        return _From(last.procedure, name, last, f"“{title}” was left here on {on}.")
    if last.at is None and last.answers:
        why = f"On {on} nobody could say, or the reading was too close to call: ask it again."
        return _From(last.procedure, last.answers[-1][0], last, why)
    return None


def _is_proved(states: tuple[StageState, ...], procedure: str) -> bool:
    serving = [state for state in states if procedure in state.stage.looked_for_in]
    return bool(serving) and all(state.proof == "proved" for state in serving)


def _first(given: Given, name: str, walk: Walk | None, stage: Stage, lacking: list[Stage]) -> _From:
    """Return how to begin with a procedure, or to go on where it was left some time ago."""
    procedure = given.library.procedures[name]
    kind, _, found = ((walk.at if walk else None) or "").partition(":")
    if walk is not None and kind == "cause":
        cause = f"“{procedure.causes[found].title}”"
        again = f"go through “{procedure.title}” again to prove it"
        if walk.is_remedied:
            return _From(name, procedure.start, None, f"{cause} was put right: {again}.")
        on = given.notes[walk.entry].day
        return _From(
            name, procedure.start, None, f"{cause} was found on {on}: put it right, then {again}."
        )
    if walk is not None and kind == "step":
        on = given.notes[walk.entry].day
        return _From(name, found, walk, f"“{procedure.title}” was left here on {on}.")
    first = f" Show {listed([f'“{each.title}”' for each in lacking])} first." if lacking else ""
    return _From(name, procedure.start, None, f"It is for “{stage.title}”.{first}")


def _checks_from(given: Given, start: _From, most: int) -> Iterator[NextCheck]:
    believed = believed_in(given, start.procedure, start.walk)
    if believed is None:
        return
    node, why, shares = f"step:{start.step}", start.why, believed.shares
    for _ in range(most):
        actions, node = _to_check(believed, node)
        if not node:
            return
        step = node.removeprefix("step:")
        yield _check(believed.tree.procedure, step, actions, why)
        way, share = _likeliest(believed, step, shares)
        if way is None:
            return
        why = f"Comes next if the answer is “{way.answer}”{_percent(share)}."
        node, shares = way.to, _given(believed, step, way.answer, shares)


def _to_check(believed: Believed, node: str) -> tuple[list[str], str]:
    """Go on through steps that ask nothing; return them and the check's node, "" if none comes."""
    actions: list[str] = []
    tree = believed.tree
    while node.startswith("step:") and node.removeprefix("step:") in tree.ways:
        step = node.removeprefix("step:")
        if tree.asks(step):
            return actions, node
        actions.append(step)
        node = tree.ways[step][0].to
    return actions, ""


def _check(procedure: Procedure, step: str, actions: list[str], why: str) -> NextCheck:
    steps = [procedure.steps[name] for name in (*actions, step)]
    titles = [f"“{each.title}”" for each in steps[:-1]]
    before = f" Do {listed(titles)} first." if titles else ""
    tools = dict.fromkeys(tool for each in steps for tool in each.needs)
    return NextCheck(
        procedure=procedure.procedure,
        step=step,
        title=steps[-1].title,
        minutes=sum(each.minutes for each in steps),
        tools=tuple(procedure.tools[tool].title for tool in tools if tool in procedure.tools),
        why=f"{why}{before}",
    )


def _likeliest(
    believed: Believed, step: str, shares: Mapping[str, float]
) -> tuple[Way | None, float]:
    """Return the likeliest of the ways that lead to a further check, with its probability."""
    ways = [way for way in believed.tree.ways[step] if _to_check(believed, way.to)[1]]
    weights = [sum(taking(believed.table, step, way.answer, shares).values()) for way in ways]
    best = max(range(len(ways)), key=lambda place: weights[place], default=None)
    return (None, 0.0) if best is None else (ways[best], weights[best])


def _given(
    believed: Believed, step: str, answer: str, shares: Mapping[str, float]
) -> Mapping[str, float]:
    seen = {name: cell.likelihood(answer) for name, cell in believed.table[step].items()}
    return update(shares, seen) or shares


def _percent(share: float) -> str:
    return f", as about {100 * share:.0f} times in 100" if share >= 0.005 else ""
