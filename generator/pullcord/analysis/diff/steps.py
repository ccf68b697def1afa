"""What changed about the steps: which there are, what each asks for, and where it leads."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from pullcord.analysis.diff.change import Change, Part, changed, changed_each, listed_words
from pullcord.analysis.diff.fields import compare_fields
from pullcord.analysis.diff.judged import compare_readings, is_same_general
from pullcord.analysis.diff.renames import Renames
from pullcord.model.procedure import Procedure, Step
from pullcord.model.target import Target
from pullcord.readings import Meter

_LOOKED_AT = ("as_", "reading", "answers", "then", "tells")
_STEPS = Part.STEPS


def compare_steps(
    old: Procedure, new: Procedure, renames: Renames, meters: tuple[Meter, Meter]
) -> Iterator[Change]:
    """Yield every change of the steps; `old` has its new names already."""
    for name in old.steps:
        if name not in new.steps:
            yield Change(_STEPS, name, "removed", old.steps[name].title, "")
    was = {after: before for before, after in renames.steps.items()}
    for name, step in new.steps.items():
        if name not in old.steps:
            yield Change(_STEPS, name, "added", "", step.title)
            continue
        yield from changed(_STEPS, name, "renamed", was.get(name, name), name)
        yield from _compare_step(name, old.steps[name], step, meters)


def _compare_step(name: str, old: Step, new: Step, meters: tuple[Meter, Meter]) -> Iterator[Change]:
    yield from compare_fields(_STEPS, name, old, new, but=_LOOKED_AT)
    if old.reading and new.reading:
        but = ("general",) if is_same_general(old.reading, new.reading) else ()
        yield from compare_fields(_STEPS, name, old.reading, new.reading, but)
    else:
        yield from changed(_STEPS, name, "reading", _reading(old), _reading(new))
    yield from _compare_answers(name, old.answers, new.answers)
    yield from changed(_STEPS, name, "then", _way(old.then), _way(new.then))
    yield from changed_each(_STEPS, name, "tells", _tells(old), _tells(new))
    yield from compare_readings(name, old, new, meters)


def _compare_answers(
    name: str, old: Mapping[str, Target], new: Mapping[str, Target]
) -> Iterator[Change]:
    reworded = _reworded(old, new)
    for before, after in reworded.items():
        yield Change(_STEPS, name, "reworded", before, after, _way(new[after]))
    was = {words: _way(to) for words, to in old.items() if words not in reworded}
    now = {words: _way(to) for words, to in new.items() if words not in reworded.values()}
    yield from changed_each(_STEPS, name, "answer", was, now)


def _reworded(old: Mapping[str, Target], new: Mapping[str, Target]) -> dict[str, str]:
    """Return answers that lead where just one other answer has led before."""
    gone = [words for words in old if words not in new]
    come = [words for words in new if words not in old]
    pairs = {}
    for before in gone:
        after = [words for words in come if new[words] == old[before]]
        rivals = [words for words in gone if old[words] == old[before]]
        if len(after) == len(rivals) == 1:
            pairs[before] = after[0]
    return pairs


def _way(target: Target | None) -> str:
    return f"{target.kind} {target.name}".strip() if target else ""


def _reading(step: Step) -> str:
    reading = step.reading
    return " ".join((reading.quantity, "at", reading.at)) if reading else ""


def _tells(step: Step) -> dict[str, str]:
    return {words: listed_words(names) for words, names in step.tells.items()}
