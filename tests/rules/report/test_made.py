"""What every form says of a rule."""

from __future__ import annotations

import pytest

from pullcord.pages.address import HOME, RULES, link
from pullcord.rules.catalogue import documented_rules
from pullcord.rules.report.made import facts_of, first_sentence, rule_anchor


@pytest.mark.parametrize("doc", documented_rules(), ids=lambda doc: doc.id)
def test_every_rule_says_why_in_one_sentence(doc) -> None:
    """The sentence stands on the rule's page, and the page is where the site has it."""
    facts = facts_of(doc.id)
    assert facts.title == doc.title
    assert facts.why
    assert " ".join(doc.text.split()).startswith(facts.why)
    assert len(facts.why) <= 300
    assert facts.page == link(HOME, RULES, rule_anchor(doc.id))


SENTENCES = {
    "one of two": ("It may leak. It may burn.", "It may leak."),
    "over two lines": ("It may\nleak. So shut it.", "It may leak."),
    "a point in what is typed": ("`1.5 ohm` is little. So is `2.`", "`1.5 ohm` is little."),
    "a point in a number": ("It is 1.5 ohm. So.", "It is 1.5 ohm."),
    "a question": ("Who knows? Nobody.", "Who knows?"),
    "no end": ("Never ends", "Never ends"),
    "nothing": ("", ""),
}


@pytest.mark.parametrize(("text", "first"), SENTENCES.values(), ids=SENTENCES)
def test_a_first_sentence(text: str, first: str) -> None:
    """It ends at its full stop, not at one inside a number or something typed."""
    assert first_sentence(text) == first
