"""What a review says of the order of checks: as written, at best, and the change that wins most."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from math import inf

from pullcord.analysis.advice import Advice
from pullcord.analysis.review import Review
from pullcord.analysis.runs import Run
from pullcord.analysis.sensitivity import Robustness
from pullcord.pages.review_words import Namer, say_factor, say_number, say_steps, say_two

SAME_MINUTES = 0.005


def say_order(names: Namer, found: Review) -> Iterator[str]:
    """Yield what there is to say, a sentence or two each."""
    words = names.words
    if found.cost.minutes is not None:
        yield words["as_written"].format(minutes=say_number(found.cost.minutes.mean))
    if found.is_comparable:
        yield from _best(words, found)
    else:
        yield words["not_comparable"]
    yield from _bounds(words, found)
    yield from _changes(names, found)
    for run in found.runs:
        yield from _run(words, run)


def _best(words: Mapping[str, str], found: Review) -> Iterator[str]:
    best, presuming = found.sure.optimum, found.presuming.optimum
    if best.minutes == inf:
        yield words["best_none"]
    else:
        text = words["best_proven"] if best.is_proven else words["best_found"]
        yield text.format(minutes=say_number(best.minutes), least=say_number(best.at_least))
    if presuming.minutes < best.minutes - SAME_MINUTES:
        presumed = dict.fromkeys(check for check, _ in found.presuming.presumptions)
        minutes = say_number(presuming.minutes)
        yield words["best_presumed"].format(minutes=minutes, steps=say_steps(presumed))


def _bounds(words: Mapping[str, str], found: Review) -> Iterator[str]:
    if found.cost.checks is None:
        return
    steps = found.tree.procedure.steps
    yield words["huffman"].format(
        checks=say_number(found.bounds.checks),
        answers=max((len(steps[name].answers) for name in found.tree.checks), default=2),
        written=say_number(found.cost.checks.mean),
        bits=say_number(found.bounds.bits),
    )


def _changes(names: Namer, found: Review) -> Iterator[str]:
    words = names.words
    if found.undoable:
        yield words["not_sought"]
        return
    sure, presuming = found.sure.advice, found.presuming.advice
    if sure is None:
        yield words["no_change"]
    else:
        yield _change(words, sure)
        yield from _robustness(names, sure.robustness)
    if presuming is not None and _wins_more(presuming, sure):
        yield words["if_presumed"].format(change=_change(words, presuming))
        yield words["rests_on"].format(
            step=say_steps([presuming.change.step]),
            outcomes=names.outcomes(presuming.change.presumed),
        )
        yield from _robustness(names, presuming.robustness)


def _wins_more(presuming: Advice, sure: Advice | None) -> bool:
    wins = sure is None or presuming.change.saves > sure.change.saves + SAME_MINUTES
    return wins and bool(presuming.change.presumed)


def _change(words: Mapping[str, str], advice: Advice) -> str:
    change = advice.change
    now, then = say_two(advice.minutes_now, advice.minutes_then)
    text = words["ask_before"] if change.before else words["leave_out"]
    return text.format(
        step=say_steps([change.step]), before=say_steps([change.before]), now=now, then=then
    )


def _robustness(names: Namer, robustness: Robustness) -> Iterator[str]:
    words = names.words
    if robustness.factor == inf:
        yield words["always_saves"]
        return
    yield words["saves_until"].format(factor=say_factor(robustness.factor))
    for tip in robustness.tippings[:1]:
        text = words["tips_more"] if tip.factor > 1 else words["tips_less"]
        factor = say_factor(max(tip.factor, 1 / tip.factor))
        yield text.format(outcome=names.outcome(tip.outcome), factor=factor)


def _run(words: Mapping[str, str], run: Run) -> Iterator[str]:
    """Yield how firmly a run stands as it is; another order of it was not shown to be safe."""
    margin = min(run.margins, default=inf)
    if not run.refused and run.best == run.written and margin < inf:
        steps = say_steps(run.written)
        yield words["run_stands"].format(steps=steps, factor=say_factor(margin))
