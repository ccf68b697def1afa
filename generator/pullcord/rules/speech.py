"""What a text speaks of, in plain words: petrol, sparks, a running engine.

The words are looked for, not understood. A needless caution costs a line in the file; a missing one
may cost more, so the lists are wide and a negation counts as speaking of it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import islice
from typing import NamedTuple

from pullcord.finding import Flaw, Place
from pullcord.model.action import Action
from pullcord.model.procedure import Cause, Procedure, Step
from pullcord.safety.flow import Same

_Text = tuple[Place, bool, str]
"""Where a text stands in its step or remedy, whether it is a key, and what it says."""

_CARBURETTOR = r"carburett?[eo]r"
_OPENING = (
    r"(?:drain|open|remov|strip|clean|unscrew|undo|unbolt|tilt|tip|empt|tak|dismantl|blow|rins)\w*"
)

_OTHER_PLUG = r"(?<!filler\ )(?<!drain\ )(?<!oil\ )"
_TURNING = r"(?:crank|spin|kick|turn|pull)\w*"
_PLUG_OUT = rf"{_OTHER_PLUG}\bplug\b[^.;]{{0,20}}\b(?:out|off|removed)"
_MACHINE = r"(?:the|this|your|its)\ (?:engine|machine|motor|pump|generator|bike|mower|tiller|saw)"
_NEGATED = "".join(
    rf"(?<!{word}\ )" for word in ("not", "never", "without", "before", "before\\ you", "cannot")
)


def _any_of(*patterns: str) -> re.Pattern[str]:
    return re.compile(rf"\b(?:{'|'.join(patterns)})\b", re.VERBOSE | re.IGNORECASE)


FUEL = _any_of(
    r"petrol | gasoline | (?:re|de)?fuel\w* | petcock | pri(?:ming|mer)\ bulb",
    r"pre-?mix | two-stroke\ mix | starting\ fluid | start(?:er|ing)\ spray",
    r"float\ (?:bowl|chamber|needle|valve) | bowl\ (?:nut|screw|drain|plug)",
    r"(?:main|pilot|idle|slow|starter)\ jet | flood(?:ed|ing|s)",
    rf"{_CARBURETTOR}\ (?:cleaner|bowl|drain)",
    rf"{_OPENING}\b[^.;]{{0,60}}\b{_CARBURETTOR}",
    rf"{_CARBURETTOR}\b[^.;]{{0,40}}\b(?:off|apart|open)",
    r"(?<!water\ )(?<!spray\ )(?<!oil\ )(?<!air\ )tanks?",
)

SPARK = _any_of(
    r"spark(?!\s+arrest)\w* | plug\ (?:cap|lead|wire|boot)s? | high[-\ ](?:tension|voltage)",
    r"HT\ leads? | ignition\ (?:lead|cable)s?",
    rf"{_TURNING}\b[^.;]{{0,60}}{_PLUG_OUT}",
    rf"{_PLUG_OUT}\b[^.;]{{0,60}}\b{_TURNING}",
)

RUNNING = re.compile(
    _NEGATED
    + _any_of(
        rf"(?:re)?start(?:s|ed|ing)?\ (?:it|up|{_MACHINE}) | fir(?:e|es|ing)\ (?:it|up)",
        r"(?:it|engine|machine)\ starts | running\ engine | idling | at\ (?:\w+\ ){0,2}idle",
        rf"(?:let|leav\w*|keep\w*)\ (?:it|{_MACHINE})\ (?:run|idl)\w*",
        rf"r[ua]n(?:s|ning)?\ (?:it|{_MACHINE}) | (?:while|when|as)\ it\ (?:runs|idles)",
        r"engine\ (?:is\ |still\ )?(?:running|idling|runs|idles)",
        rf"(?:warm(?:s|ed|ing)?|rev(?:s|ved|ving)?)\ (?:it|up|{_MACHINE})",
    ).pattern,
    re.VERBOSE | re.IGNORECASE,
)


@dataclass(frozen=True)
class Topic:
    """Something a text may speak of, and what a step may declare about it."""

    words: re.Pattern[str]
    stems: re.Pattern[str]
    """Parts of single words, in small letters: whatever `words` can find has a word with one of
    them in it. They are looked for first, once in each word of a procedure and without the words
    beside it, so no stem may hold a space."""
    declared_by: Mapping[str, frozenset[str]]
    """Fields of an action, each with the values that count."""
    message: str
    """With room for the word that was found."""
    mend: str


class _Said(NamedTuple):
    """What a step or a remedy says."""

    place: Place
    action: Action
    texts: Sequence[_Text]
    whole: str
    """In small letters."""


def undeclared(procedure: Procedure, topic: Topic) -> Iterator[Flaw]:
    """Yield a flaw for every step and remedy that speaks of a topic and declares nothing."""
    said, words = _said_in(Same((procedure,)))
    suspects = {_word_at(words, found.start()) for found in topic.stems.finditer(words)}
    for each in said if suspects else ():
        if any(word in each.whole for word in suspects) and not _declares(each.action, topic):
            yield from islice(_spoken(each, topic), 1)


def _word_at(words: str, index: int) -> str:
    end = words.find(" ", index)
    return words[words.rfind(" ", 0, index) + 1 : end if end >= 0 else None]


def _spoken(said: _Said, topic: Topic) -> Iterator[Flaw]:
    for key, is_key, text in said.texts:
        found = topic.words.search(text)
        if found:
            words = found.group()
            message = topic.message.format(words)
            place = (*said.place, *key)
            yield Flaw(place, message, topic.mend, is_key=is_key, word=words.split()[0])


@lru_cache(maxsize=16)  # Each topic asks the same of one procedure, one after the other.
def _said_in(key: Same) -> tuple[Sequence[_Said], str]:
    """Return what a procedure says, and each word it uses once."""
    (procedure,) = key.parts
    said = [
        *(
            _said(("steps", name), step, _texts_of_step(step))
            for name, step in procedure.steps.items()
        ),
        *(
            _said(("causes", name), cause, _texts_of_cause(cause))
            for name, cause in procedure.causes.items()
        ),
    ]
    return said, " ".join(set(" ".join([each.whole for each in said]).split()))


def _said(place: Place, action: Action, texts: Sequence[_Text]) -> _Said:
    return _Said(place, action, texts, " ".join([text for _, _, text in texts]).lower())


def _declares(action: Action, topic: Topic) -> bool:
    return any(
        not values.isdisjoint(getattr(action, field)) for field, values in topic.declared_by.items()
    )


def _texts_of_step(step: Step) -> Sequence[_Text]:
    return (
        (("title",), False, step.title),
        (("do",), False, step.do),
        (("ask",), False, step.ask or ""),
        (("reading", "at"), False, step.reading.at if step.reading else ""),
        *[(("answers", answer), True, answer) for answer in step.answers],
    )


def _texts_of_cause(cause: Cause) -> Sequence[_Text]:
    return (("remedy",), False, cause.remedy), (("title",), False, cause.title)
