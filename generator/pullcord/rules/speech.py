"""What a text speaks of, in plain words: petrol, sparks, a running engine.

The words are looked for, not understood. A needless caution costs a line in the file; a missing one
may cost more, so the lists are wide and a negation counts as speaking of it.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from pullcord.finding import Flaw, Place
from pullcord.model.action import Action
from pullcord.model.procedure import Cause, Procedure, Step

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
    """Letters of which some are in everything `words` can find, whatever its capitals: looked for
    first, because that takes a tenth of the time."""
    declared_by: Mapping[str, frozenset[str]]
    """Fields of an action, each with the values that count."""
    message: str
    """With room for the word that was found."""
    mend: str


def undeclared(procedure: Procedure, topic: Topic) -> Iterator[Flaw]:
    """Yield a flaw for every step and remedy that speaks of a topic and declares nothing."""
    for name, step in procedure.steps.items():
        yield from _undeclared(_texts_of_step(name, step), step, topic)
    for name, cause in procedure.causes.items():
        yield from _undeclared(_texts_of_cause(name, cause), cause, topic)


def _undeclared(
    texts: Iterable[tuple[Place, bool, str]], action: Action, topic: Topic
) -> Iterator[Flaw]:
    written = list(texts)
    whole = " ".join([text for _, _, text in written]).lower()
    if not topic.stems.search(whole) or _declares(action, topic):
        return
    for place, is_key, text in written:
        found = topic.words.search(text)
        if found:
            words = found.group()
            message = topic.message.format(words)
            yield Flaw(place, message, topic.mend, is_key=is_key, word=words.split()[0])
            return


def _declares(action: Action, topic: Topic) -> bool:
    return any(
        not values.isdisjoint(getattr(action, field)) for field, values in topic.declared_by.items()
    )


def _texts_of_step(name: str, step: Step) -> Iterator[tuple[Place, bool, str]]:
    place = ("steps", name)
    yield (*place, "title"), False, step.title
    yield (*place, "do"), False, step.do
    yield (*place, "ask"), False, step.ask or ""
    yield (*place, "reading", "at"), False, step.reading.at if step.reading else ""
    for answer in step.answers:
        yield (*place, "answers", answer), True, answer


def _texts_of_cause(name: str, cause: Cause) -> Iterator[tuple[Place, bool, str]]:
    yield ("causes", name, "remedy"), False, cause.remedy
    yield ("causes", name, "title"), False, cause.title
