"""Every rule has its place on the page of rules."""

from __future__ import annotations

import pytest

from pullcord.rules.catalogue import RuleDoc, documented_rules
from tests.pages.make import KIT, example_pages, tree_of

PAGE = tree_of(example_pages()["rules.md"])


@pytest.mark.parametrize("rule", documented_rules(), ids=lambda rule: rule.id)
def test_a_rule_says_why_and_shows_how_it_is_mended(rule: RuleDoc) -> None:
    """Its name, how grave it is, its reason, and both examples, word for word."""
    section = PAGE.by_id(f"rule-{rule.id}")
    assert section.tags("h2")[0].text == rule.id
    assert KIT.words[f"rule_{rule.severity.value}"] in section.text
    assert bare(rule.title.replace("`", "")) in bare(section.text)
    files = [figure.tags("figcaption")[0].text for figure in section.all("pc-file")]
    assert files == [*rule.failing, *rule.mended]
    shown = [figure.tags("code")[0].text for figure in section.all("pc-file")]
    expected = [*rule.failing.values(), *rule.mended.values()]
    assert shown == [" ".join(text.split()) for text in expected]


def bare(text: str) -> str:
    """Return a text without its spaces, which the reading of elements does not keep."""
    return "".join(text.split())
