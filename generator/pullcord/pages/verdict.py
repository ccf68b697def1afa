"""What the instrument's display proves, band by band, and which answer that is."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Literal

from pullcord.pages.way import Way
from pullcord.readings import Band, Resolved

Kind = Literal["within", "outside", "close", "either", "answer"]
"""`either`: too close to call, and it does not matter; `answer`: the answer says it itself."""


@dataclass(frozen=True)
class BandView:
    """One band."""

    kind: Kind
    mark: str
    """A sign for those who only glance, beside the words."""
    verdict: str
    shows: str
    """What the display shows."""
    answers: str
    """The answer it proves and where that leads, or all that it leaves possible."""
    answer: str
    """The answer as it stands in the file, for scripts; empty when it is too close to call."""
    end: str
    """Where the band ends, in base units, for scripts; `Infinity` for over-range."""
    holds_end: bool


def band_views(
    words: Mapping[str, str], resolved: Resolved, ways: Mapping[str, Way]
) -> tuple[BandView, ...]:
    """Return every band of a reading, lowest first; none when they cannot be said."""
    return tuple(_view(words, resolved, band, ways) for band in resolved.bands)


def shown_by(resolved: Resolved) -> Iterator[tuple[str, str]]:
    """Yield each answer that a display proves with what the display then shows.

    `open` says it itself.
    """
    for band in resolved.bands:
        if not band.is_close and band.answers[0] != "open":
            yield band.answers[0], band.words


def _view(
    words: Mapping[str, str], resolved: Resolved, band: Band, ways: Mapping[str, Way]
) -> BandView:
    kind = _kind(resolved, band, ways)
    end = band.interval.end
    return BandView(
        kind=kind,
        mark=words[f"verdict_{kind}_mark"],
        verdict=words[f"verdict_{kind}"],
        shows=band.words,
        answers=_answers(words, kind, band, ways),
        answer="" if band.is_close else band.answers[0],
        end=str(end.value),
        holds_end=bool(end.after),
    )


def _kind(resolved: Resolved, band: Band, ways: Mapping[str, Way]) -> Kind:
    if band.is_close:
        return "either" if len({ways[answer].href for answer in band.answers}) == 1 else "close"
    if resolved.limits is None:
        return "answer"
    share = next(share for share in resolved.shares if share.answer == band.answers[0])
    inside = share.interval.overlap(resolved.limits.interval)
    if inside == share.interval:
        return "within"
    return "outside" if inside.is_empty else "answer"


def _answers(words: Mapping[str, str], kind: Kind, band: Band, ways: Mapping[str, Way]) -> str:
    taken = [ways[answer] for answer in band.answers]
    said = f" {words['or']} ".join(way.said for way in taken)
    if kind == "close":
        return words["band_not_proved"].format(said=said)
    return words["band_answer"].format(said=said, label=taken[0].label)
