"""How a machine was left, and what to see to before it is touched again."""

from __future__ import annotations

from dataclasses import dataclass

from pullcord.analysis.job.report import JobReport
from pullcord.pages.caution import BoxView, SignView, sign_views
from pullcord.pages.job.words import last_day, say_things
from pullcord.pages.kit import Kit
from pullcord.safety.box import SignalWord
from pullcord.safety.hazards import hazards_of, without_covered


@dataclass(frozen=True)
class LeftView:
    """The box at the top of a job, decided."""

    is_safe: bool
    says: str
    """That it was left safe, or not, with the day."""
    mark: str
    word: str
    """Safe or not, in few words."""
    box: BoxView
    """Its panel and signs; what it says stands in `before`."""
    before: tuple[str, ...]
    """What to see to, the gravest first."""
    facts: tuple[tuple[str, str], ...]
    """What is drained, fitted and off, each with its label."""


def left_view(kit: Kit, report: JobReport) -> LeftView:
    """Return how a machine was left."""
    words, left = kit.job, report.left
    key = "safe" if left.is_safe else "unsafe"
    day = last_day(report) or report.job.taken_in
    facts = {
        "left_fitted": say_things(words, "thing", left.fitted),
        "left_drained": say_things(words, "thing", left.drained),
        "left_off": say_things(words, "off", left.off),
    }
    return LeftView(
        is_safe=left.is_safe,
        says=words[f"left_says_{key}"].format(day=day),
        mark=words[f"left_{key}_mark"],
        word=words[f"left_{key}"],
        box=_box(kit, report),
        before=left.before_touching or (words["left_before_safe"],),
        facts=tuple((words[label], said or words["left_nothing"]) for label, said in facts.items()),
    )


def _box(kit: Kit, report: JobReport) -> BoxView:
    """Return the panel: NOTICE for a machine left safe, else WARNING or whatever is graver."""
    signal = SignalWord.NOTICE
    signs: tuple[SignView, ...] = ()
    if not report.left.is_safe:
        hazards = without_covered(hazards_of(frozenset(report.left.conditions)))
        signal = max((SignalWord.WARNING, *(hazard.signal for hazard in hazards)))
        signs = _signs(kit, tuple(hazard.sign for hazard in hazards))
    level = signal.name.lower()
    return BoxView(level, kit.words[f"signal_{level}"], not report.left.is_safe, signs, ())


def _signs(kit: Kit, names: tuple[str, ...]) -> tuple[SignView, ...]:
    return sign_views(kit, dict.fromkeys(names))
