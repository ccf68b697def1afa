"""From signs to procedures: rare signs count for more, and what is dangerous goes first."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pullcord.analysis.finder import (
    Index,
    Sign,
    index_signs,
    look_alikes,
    rank,
    same_sign,
    specificity,
    telling_signs,
)
from pullcord.model.procedure import Procedure
from tests.analysis.making import make_procedure

SHED = {
    "leaks": {"seen": ["wet floor"], "smelt": ["petrol smell"]},
    "floods": {"seen": ["wet plug", "black smoke"], "smelt": ["petrol smell"]},
    "smokes": {"seen": ["black smoke"], "heard": ["it misfires"]},
    "no-spark": {"seen": ["wet plug"], "heard": ["it spins and does not catch"]},
    "weak-spark": {"heard": ["it misfires", "it spins and does not catch"]},
}


def procedures(shed: dict[str, dict[str, list[str]]]) -> list[Procedure]:
    """Return a procedure for each entry, with its signs and nothing else of note."""
    step = {"look": {"ask": "?", "answers": {"so": "cause it", "not so": "done"}}}
    return [
        make_procedure(step, {"it": {}}, procedure=name, signs=signs)
        for name, signs in shed.items()
    ]


INDEX = index_signs(procedures(SHED))


def sign(words: str) -> Sign:
    """Return the one sign of the shed with these words."""
    (found,) = [each for each in INDEX.signs if each.words == words]
    return found


def ranked(*picked: str, urgent: tuple[str, ...] = ()) -> list[str]:
    """Return the names of the procedures that fit some signs, the likeliest first."""
    return [match.procedure for match in rank(INDEX, [sign(words) for words in picked], urgent)]


def test_every_sign_leads_to_all_that_have_it() -> None:
    """By sense, then in the order of the procedures; each once."""
    assert [(each.sense, each.words, each.procedures) for each in INDEX.signs] == [
        ("seen", "wet floor", ("leaks",)),
        ("seen", "wet plug", ("floods", "no-spark")),
        ("seen", "black smoke", ("floods", "smokes")),
        ("heard", "it misfires", ("smokes", "weak-spark")),
        ("heard", "it spins and does not catch", ("no-spark", "weak-spark")),
        ("smelt", "petrol smell", ("leaks", "floods")),
    ]


def test_a_procedure_without_signs_is_not_in_the_index() -> None:
    """It counts for nothing, neither as a match nor for how rare a sign is."""
    with_one_more = index_signs([*procedures(SHED), *procedures({"silent": {}})])
    assert with_one_more == INDEX
    assert index_signs([]) == Index((), ())


def test_other_spellings_of_a_sign_are_the_same_sign() -> None:
    """A rule complains, and until then the finder still leads to both."""
    shed = {"one": {"seen": ["Wet plugs"]}, "other": {"seen": ["wet  plug"]}}
    (found,) = index_signs(procedures(shed)).signs
    assert (found.words, found.procedures) == ("Wet plugs", ("one", "other"))


@pytest.mark.parametrize(
    ("one", "other", "is_same"),
    [
        ("white smoke", "White Smoke", True),
        ("won't stop", "wont stop", True),
        ("wet plug", "wet plugs", True),
        ("it cuts out", "cuts out", True),
        ("the wet plug", "a wet plug", True),
        ("smell of gas", "smell of ga", False),
        ("hiss", "his", False),
        ("white smoke", "black smoke", False),
    ],
)
def test_spellings(one: str, other: str, is_same: bool) -> None:
    """Capitals, apostrophes, plurals and articles are no difference; any other word is."""
    assert (same_sign(one) == same_sign(other)) == is_same


def test_the_more_signs_are_shared_the_likelier() -> None:
    """Two of two goes before one of two."""
    assert ranked("wet plug", "petrol smell") == ["floods", "leaks", "no-spark"]


def test_a_rare_sign_counts_for_more() -> None:
    """One of five procedures has a wet floor, two of five misfire: 4 and 3 by the measure."""
    assert sign("wet floor").weight == 4
    assert sign("it misfires").weight == 3
    assert ranked("it misfires", "wet floor") == ["leaks", "smokes", "weak-spark"]


def test_what_is_dangerous_goes_first() -> None:
    """Even where another shares more: a leak is seen to before anything else."""
    assert ranked("wet plug", "petrol smell", urgent=("leaks",)) == ["leaks", "floods", "no-spark"]
    assert ranked("wet plug", urgent=("leaks",)) == ["floods", "no-spark"]


def test_each_match_says_why() -> None:
    """The picked signs it has, and their weights together."""
    first = rank(INDEX, [sign("petrol smell"), sign("wet plug")], ())[0]
    assert [each.words for each in first.shares] == ["wet plug", "petrol smell"]
    assert first.score == sum(each.weight for each in first.shares)


def test_nothing_picked_matches_nothing() -> None:
    """The finder does not guess."""
    assert rank(INDEX, [], ("leaks",)) == ()
    assert telling_signs(INDEX, [], 3) == ()


def test_the_sign_that_parts_the_matches_in_halves_is_asked_for_first() -> None:
    """Of floods, smokes, leaks: a wet plug parts 1 from 2; what none has parts nothing."""
    asked = telling_signs(INDEX, [sign("petrol smell"), sign("black smoke")], 9)
    assert [each.words for each in asked] == ["wet floor", "wet plug", "it misfires"]
    four = telling_signs(INDEX, [sign("wet plug"), sign("it misfires")], 1)
    assert [each.words for each in four] == ["black smoke"]


def test_look_alikes_share_signs() -> None:
    """The most alike first, never the procedure itself, no more than asked for."""
    assert [each.procedure for each in look_alikes(INDEX, "floods", 9)] == [
        "leaks",
        "smokes",
        "no-spark",
    ]
    assert [each.procedure for each in look_alikes(INDEX, "floods", 1)] == ["leaks"]
    assert look_alikes(INDEX, "unknown", 3) == ()


SHEDS = st.dictionaries(
    st.sampled_from(["a", "b", "c", "d", "e", "f"]),
    st.dictionaries(
        st.sampled_from(["seen", "heard", "smelt", "felt"]),
        st.lists(st.sampled_from(["one", "two", "three", "four"]), max_size=4, unique=True),
    ),
    max_size=6,
)


@settings(max_examples=60, deadline=None, print_blob=True)
@given(SHEDS, st.data())
def test_whatever_is_picked_a_further_sign_never_lowers_who_has_it(
    shed: dict[str, dict[str, list[str]]], data: st.DataObject
) -> None:
    """Every match has a picked sign and a positive score; one more shared sign adds its weight."""
    index = index_signs(procedures(shed))
    picked = data.draw(st.lists(st.sampled_from(index.signs), unique=True)) if index.signs else []
    scores = {match.procedure: match.score for match in rank(index, picked, ())}
    assert all(score > 0 for score in scores.values())
    for asked in telling_signs(index, picked, 5):
        more = {match.procedure: match.score for match in rank(index, [*picked, asked], ())}
        for name in index.procedures:
            gain = more.get(name, 0) - scores.get(name, 0)
            assert gain == (asked.weight if name in asked.procedures else 0)
        having = [name for name in scores if name in asked.procedures]
        assert 0 < len(having) < len(scores)


@pytest.mark.parametrize(("procedures", "having"), [(1, 1), (2, 2), (64, 64), (100, 100)])
def test_a_sign_that_all_have_still_counts(procedures: int, having: int) -> None:
    """The least weight is 1."""
    assert specificity(procedures, having) == 1
