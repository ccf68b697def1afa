"""What is begun is put right on every way out, and what is put right was begun."""

from __future__ import annotations

import pytest
from hypothesis import given, settings

from pullcord.safety.ends import LOOSE_ENDS, check_ever_begun, check_put_right
from pullcord.safety.scope import node_in, scope_from
from tests.safety.make import library, procedure
from tests.safety.random_procedures import all_paths, libraries

LEFT = {
    "petrol": ("opens: petrol", ["opens"]),
    "plug hole": ("opens: plug-hole", ["opens"]),
    "guard": ("opens: guard", ["opens"]),
    "engine": ("starts: engine", ["starts"]),
    "test lead": ("fits: test-lead", ["fits"]),
    "bypass": ("fits: bypass", ["fits"]),
    "borrowed part": ("fits: borrowed-part", ["fits"]),
    "auxiliary tank and its drips": ("fits: auxiliary-tank", ["fits", "fits"]),
    "raised": ("raises: machine", ["raises"]),
    "tank pressure": ("pressurises: tank", ["pressurises"]),
    "cylinder pressure": ("pressurises: cylinder", ["pressurises"]),
    "charger": ("connects: charger", ["connects"]),
    "closed but not cleared": ("opens: petrol, closes: petrol", ["closes"]),
    "tyres hold their pressure": ("pressurises: tyre", []),
    "springs hold their wind": ("pressurises: spring", []),
    "a battery belongs to the machine": ("connects: battery", []),
    "a made-safe ignition is safe": ("disables: ignition", []),
    "over with the step": ("makes: [spark, cranking, running]", []),
}


@pytest.mark.parametrize(("keys", "places"), LEFT.values(), ids=LEFT)
def test_what_one_step_leaves_behind(keys, places) -> None:
    """A finding for each thing left, at the key that begins it."""
    flaws = check_put_right(procedure(f"steps: {{a: {{{keys}}}}}"), None)
    assert [flaw.at for flaw in flaws] == [("steps", "a", key) for key in places]


def test_the_way_out_is_printed_and_the_other_ends_are_named() -> None:
    """From the start, past the step that fitted it, to the nearest end that leaves it on."""
    (flaw,) = check_put_right(
        procedure("""
        causes: {a: {takes-off: test-lead}, b: , c: , d: , e: , f: }
        steps:
          look: {then: step fit}
          fit: {fits: test-lead, answers: {one: cause a, two: step more, three: cause b}}
          more: {answers: {c: cause c, d: cause d, e: cause e, f: cause f}}
        """),
        None,
    )
    assert flaw.at == ("steps", "fit", "fits")
    assert flaw.message == (
        "step `fit`: from here a test lead is fitted, and it is not put right at the end "
        "cause `b`, on this way:\n"
        "  1. step `look` (Title of look)\n"
        "  2. step `fit` (Title of fit) [here: a test lead is fitted] -> three\n"
        "  3. cause `b` (Title of b)\n"
        "The same at cause `c`, cause `d`, cause `e` and 1 more."
    )
    assert "`takes-off: test-lead`" in flaw.mend


def test_what_a_remedy_leaves_is_left() -> None:
    """A cause is an end: what its remedy opens, its remedy closes."""
    flaws = check_put_right(
        procedure("""
        causes: {jet: {opens: petrol}}
        steps: {a: {then: cause jet}}
        """),
        None,
    )
    assert [flaw.at for flaw in flaws] == [("causes", "jet", "opens")]


def test_another_procedure_may_put_it_right() -> None:
    """The hand-over carries the lead along, and the second procedure takes it off everywhere."""
    texts = {"first": "steps: {a: {fits: test-lead, then: procedure second}}"}
    mended = library(**texts, second="steps: {b: {takes-off: test-lead}}")
    left = library(
        **texts, second="steps: {b: {answers: {x: done, y: step c}}, c: {takes-off: test-lead}}"
    )
    assert list(check_put_right(mended.procedures["first"], mended)) == []
    (flaw,) = check_put_right(left.procedures["first"], left)
    assert flaw.at == ("steps", "a", "fits")
    assert "hands over to procedure `second`" in flaw.message


def test_a_way_that_leads_nowhere_is_not_judged() -> None:
    """An unknown target is its own error; guessing what would come there helps nobody."""
    for text in ("steps: {a: {fits: bypass, then: step b}}", "steps: {a: {fits: bypass}}"):
        found = list(check_put_right(procedure(text), None))
        assert bool(found) == ("step b" not in text)


BEGUN = {
    "never opened": ("closes: plug-hole", [("steps", "b", "closes")]),
    "never raised": ("lowers: machine", [("steps", "b", "lowers")]),
    "never fitted": ("takes-off: [test-lead, bypass]", [("steps", "b", "takes-off")]),
    "never disabled": ("enables: ignition", [("steps", "b", "enables")]),
    "petrol": ("closes: petrol", [("steps", "b", "closes")]),
    "somebody's bypass": ("takes-off: bypass", []),
    "a tyre has pressure": ("releases: tyre", []),
    "the engine may be hot": ("cools: engine", []),
    "the shop may smell": ("clears: vapour", []),
    "a battery may be there": ("disconnects: battery", []),
    "ran in this step": ("makes: running, stops: engine", []),
    "opened in this step": ("opens: plug-hole, closes: plug-hole", []),
}


@pytest.mark.parametrize(("keys", "places"), BEGUN.values(), ids=BEGUN)
def test_what_is_put_right_was_begun(keys, places) -> None:
    """A finding where no way can have brought it about, unless machines arrive like that."""
    flaws = check_ever_begun(procedure(f"steps: {{a: {{then: step b}}, b: {{{keys}}}}}"), None)
    assert [flaw.at for flaw in flaws] == places


def test_one_way_on_which_it_was_begun_is_enough() -> None:
    """A step that several ways share may close what only one of them opened."""
    shared = procedure("""
    steps:
      a: {answers: {x: step b, y: step c}}
      b: {opens: plug-hole, then: step c}
      c: {closes: plug-hole}
    """)
    assert list(check_ever_begun(shared, None)) == []


def test_a_caller_may_have_begun_it() -> None:
    """What the first procedure fitted, the second takes off."""
    both = library(
        first="steps: {a: {fits: test-lead, then: procedure second}}",
        second="steps: {b: {takes-off: test-lead}}",
    )
    second = both.procedures["second"]
    assert list(check_ever_begun(second, both)) == []
    assert [flaw.message for flaw in check_ever_begun(second, None)] == [
        "step `b`: on no way here can it be that a test lead is fitted"
    ]


@given(libraries())
@settings(max_examples=100, deadline=None, print_blob=True)
def test_findings_are_the_openers_with_a_path_that_leaves_it(both) -> None:
    """Exactly those steps and remedies of which some path, walked alone, leaves something on."""
    first = both.procedures["first"]
    scope = scope_from(first, both)
    expected = set()
    for path in all_paths(scope, scope.starts[0]):
        for position, node in enumerate(path):
            ended = {each for later in path[position + 1 :] for each in scope.effects[later].ends}
            for condition in (scope.effects[node].begins & LOOSE_ENDS) - ended:
                expected.add((node, condition))
    mine = {(node, each) for node, each in expected if node.startswith("first/")}
    found = list(check_put_right(first, both))
    assert len(found) == len(mine)
    assert {(flaw.at[0], flaw.at[1]) for flaw in found} == {
        (f"{node.partition('/')[2].partition(':')[0]}s", node.partition(":")[2]) for node, _ in mine
    }
    assert node_in(first, "step:s0") == scope.starts[0]
