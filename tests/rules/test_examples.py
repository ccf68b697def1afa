"""Every rule shows a file that breaks it and the same file put right, and both are tried."""

from __future__ import annotations

import pytest

from pullcord.rules.catalogue import documented_rules, rules
from tests.rules.files import check_files

RULES = {rule.id: rule for rule in rules()}
SHOWN = {name: rule for name, rule in RULES.items() if rule.failing}


@pytest.mark.parametrize("rule", SHOWN.values(), ids=SHOWN)
def test_a_failing_example_breaks_its_rule_and_no_other(rule) -> None:
    """What a page shows as wrong is wrong in just that way."""
    assert {finding.rule for finding in check_files(rule.failing)} == {rule.id}


@pytest.mark.parametrize("rule", SHOWN.values(), ids=SHOWN)
def test_a_mended_example_breaks_no_rule(rule) -> None:
    """What a page shows as put right is right."""
    assert check_files(rule.mended) == ()


@pytest.mark.parametrize("rule", SHOWN.values(), ids=SHOWN)
def test_a_finding_says_how_to_mend_it(rule) -> None:
    """Nobody is left with a complaint alone."""
    assert all(finding.message and finding.mend for finding in check_files(rule.failing))


def test_only_what_no_text_can_show_has_no_example() -> None:
    """A link out of the folder is the one thing that is not in a file's text."""
    assert set(RULES) - set(SHOWN) == {"unreadable-file"}


def test_no_two_rules_have_the_same_identifier() -> None:
    """A finding's identifier leads to one page."""
    assert len(RULES) == len(rules())


@pytest.mark.parametrize("doc", documented_rules(), ids=lambda doc: doc.id)
def test_every_rule_has_a_page(doc) -> None:
    """The docstring of a rule is what its user reads: a sentence, then why."""
    assert doc.title.endswith(".")
    assert len(doc.title) <= 100
    assert len(doc.text) >= 50
    assert all(text.count("\n") <= 60 for text in (*doc.failing.values(), *doc.mended.values()))
