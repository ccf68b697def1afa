"""What counts as speaking of petrol, of a spark, of a running engine.

The sentences are the trade's; that they call for a caution is common practice (no source).
"""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pullcord.rules import example
from pullcord.rules.procedure import fuel_undeclared, running_undeclared, spark_undeclared
from pullcord.rules.speech import Topic
from tests.rules.files import check_files

FUEL = [
    "Open the petrol tap.",
    "Shut the fuel tap and look at the line.",
    "Refuel it outdoors.",
    "Take the float bowl off.",
    "Undo the bowl nut.",
    "Drain the carburettor.",
    "Take the carburetor off and look through the main jet.",
    "Look whether the carburettor comes apart easily, then take it apart.",
    "Clean the idle jet with soft wire.",
    "Drain the tank into a can.",
    "Press the primer bulb five times.",
    "Spray a little starting fluid into the intake.",
    "Is the engine flooded?",
    "Wipe up the GASOLINE.",
    "Mix fresh two-stroke mix.",
]
SPARK = [
    "Look for a spark at the plug.",
    "Take the spark plug out.",
    "Pull the plug cap off.",
    "Hold the plug lead by its insulation.",
    "Keep away from the high-voltage side.",
    "Measure the high tension coil.",
    "Follow the HT lead.",
    "With the plug out, spin the engine.",
    "Crank it with the plug removed.",
]
RUNNING = [
    "Start the engine.",
    "Restart it.",
    "Start it and listen.",
    "Let it run for a while.",
    "Leave the engine running.",
    "With the engine idling, turn the screw.",
    "Set it at a fast idle.",
    "Warm it up.",
    "Rev it twice.",
    "Run the pump dry. Run the engine.",
    "Listen while it runs.",
]
NONE = [
    "Take out the filler plug and look for water.",
    "Drain the water tank.",
    "Pull the starter rope slowly.",
    "Do not start the engine.",
    "Never start it yet.",
    "Take the plug out of the connector.",
    "Look at the spark arrester in the exhaust.",
    "Look at the oil drain plug.",
    "Start again from the first step.",
    "Start with the left side.",
    "Loosen the idle speed screw.",
    "Check the running lights.",
    "Unplug the ignition unit and measure its resistance.",
]

STEP = """
steps:
  casing:
    title: Casing
    do: >-
      {}
    {}
    ask: Is the casing full?
    answers:
      full: cause air-leak
      not full: cause dry-casing
"""
NEARNESS = {
    "fuel-undeclared": "petrol",
    "spark-undeclared": "high-voltage",
    "running-undeclared": "moving-parts",
}
SPOKEN = [
    *(("fuel-undeclared", text) for text in FUEL),
    *(("spark-undeclared", text) for text in SPARK),
    *(("running-undeclared", text) for text in RUNNING),
]


def rules_for(sentence: str, declared: str = "minutes: 5") -> set[str]:
    """Return which rules find something in a procedure with this instruction."""
    text = example.example(STEP.format(sentence, declared))
    return {finding.rule for finding in check_files({"no-prime.yaml": text.encode()})}


@pytest.mark.parametrize(("rule", "sentence"), SPOKEN, ids=[text for _, text in SPOKEN])
def test_a_sentence_that_speaks_of_it_is_found(rule: str, sentence: str) -> None:
    """A step with this instruction and no word of what it does gets a finding."""
    assert rule in rules_for(sentence)


@pytest.mark.parametrize(("rule", "sentence"), SPOKEN, ids=[text for _, text in SPOKEN])
def test_declaring_nearness_is_always_enough(rule: str, sentence: str) -> None:
    """No author is driven into a corner by a word."""
    assert rule not in rules_for(sentence, f"near: {NEARNESS[rule]}")


@pytest.mark.parametrize("sentence", NONE)
def test_a_sentence_about_something_else_is_let_be(sentence: str) -> None:
    """What only sounds like it is not held against the author."""
    assert rules_for(sentence) == set()


ELSEWHERE = {
    "title": STEP.format("Look.", "minutes: 5").replace("title: Casing", "title: Float bowl"),
    "question": STEP.format("Look.", "minutes: 5").replace("Is the casing full?", "Any petrol?"),
    "answer": STEP.format("Look.", "minutes: 5").replace("not full:", "full of petrol:"),
    "remedy": """
causes:
  dry-casing:
    title: Dry
    remedy: Fill the tank with fresh petrol.
  air-leak:
    title: Air leak
    remedy: Fit a new washer.
""",
    "cause": """
causes:
  dry-casing:
    title: Float needle stuck
    remedy: Fit a new one.
  air-leak:
    title: Air leak
    remedy: Fit a new washer.
""",
}


@pytest.mark.parametrize("body", ELSEWHERE.values(), ids=ELSEWHERE)
def test_it_is_looked_for_wherever_a_reader_reads(body: str) -> None:
    """Titles, questions, answers and remedies count like instructions."""
    found = check_files({"no-prime.yaml": example.example(body).encode()})
    assert [finding.rule for finding in found] == ["fuel-undeclared"]


def test_the_word_itself_is_pointed_at() -> None:
    """The author sees at once what it is about."""
    text = example.example(STEP.format("Look twice, then open the petrol tap.", "minutes: 5"))
    (finding,) = check_files({"no-prime.yaml": text.encode()})
    line = text.splitlines()[finding.line - 1]
    assert line[finding.column - 1 :].startswith("petrol tap")


TOPICS = [rule.TOPIC for rule in (fuel_undeclared, running_undeclared, spark_undeclared)]
SAID = st.sampled_from(TOPICS).flatmap(
    lambda topic: st.tuples(st.just(topic), st.from_regex(topic.words))
)


@settings(max_examples=300, deadline=None, print_blob=True)
@given(SAID)
def test_whatever_can_be_found_has_a_word_with_a_stem(said: tuple[Topic, str]) -> None:
    """A text is passed over by its words alone, so no caution may hang on anything else."""
    topic, text = said
    assert any(topic.stems.search(word) for word in text.lower().split())
