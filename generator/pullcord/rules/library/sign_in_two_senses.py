"""A sign stands under one sense, in the same words, in every procedure that goes with it.

The finder leads from what somebody notices to the procedures. `white smoke` here and `White smoke`
or `the white smoke` there, or once seen and once smelt, are two buttons for one thing, and each of
them leads to half of the procedures.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.analysis.finder import Sense, same_sign, signs_of
from pullcord.finding import Flaw
from pullcord.model.procedure import Library, Procedure
from pullcord.rules.example import example

ID = "sign-in-two-senses"

_FIRST = example("signs:\n  smelt: petrol smell\n  felt: it pulls air\n")

_OTHER = _FIRST.replace("procedure: no-prime", "procedure: no-flow")

FAILING = {
    "no-flow.yaml": _OTHER,
    "no-prime.yaml": _FIRST.replace("smelt: petrol smell", "seen: Petrol smells"),
}

MENDED = {"no-flow.yaml": _OTHER, "no-prime.yaml": _FIRST}

_First = tuple[Sense, str, str]
"""Where a sign was met first: sense, words, procedure."""


def check(library: Library) -> Iterator[tuple[str, Flaw]]:
    """Yield a procedure and a flaw for every sign that was met before, but not quite so."""
    first: dict[tuple[str, ...], _First] = {}
    for name, procedure in library.procedures.items():
        for sense, words in signs_of(procedure):
            met = first.setdefault(same_sign(words), (sense, words, name))
            if met[:2] != (sense, words):
                yield name, _flaw(procedure, sense, words, met)


def _flaw(procedure: Procedure, sense: Sense, words: str, met: _First) -> Flaw:
    other_sense, other_words, other = met
    where = "here" if other == procedure.procedure else f"in `{other}`"
    return Flaw(
        ("signs", sense, getattr(procedure.signs, sense).index(words)),
        f"the sign `{words}` is {sense} here; {where} it is {other_sense}, as `{other_words}`",
        f"write `{other_words}` under `{other_sense}:` in both, or say how the two differ",
    )
