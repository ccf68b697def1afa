"""A rule's page at the terminal."""

from __future__ import annotations

import pytest

from pullcord.rules.catalogue import documented_rules
from pullcord.rules.report.explain import WIDTH, rule_list, rule_names, rule_page
from pullcord.rules.show import Line


def plain(line: Line) -> str:
    """Return a line as it is read."""
    return "".join(text for _, text in line)


def test_every_rule_has_one_line_in_the_list() -> None:
    """Identifier, severity and what must hold, in line with one another."""
    lines = [plain(line) for line in rule_list()]
    assert [line.split()[0] for line in lines] == list(rule_names())
    assert (
        len({line.index(doc.title) for line, doc in zip(lines, documented_rules(), strict=True)})
        == 1
    )
    assert "unused-tool" in " ".join(line for line in lines if "warning" in line)


@pytest.mark.parametrize("doc", documented_rules(), ids=lambda doc: doc.id)
def test_a_page_holds_all_that_is_said_of_a_rule(doc) -> None:
    """Nothing of the rule's page is left out, and its text fits a terminal."""
    lines = [plain(line) for line in rule_page(doc.id)]
    said = " ".join(" ".join(lines).split())
    assert lines[0] == f"{doc.id}  {doc.severity}"
    assert doc.title in lines
    assert " ".join(doc.text.split()) in said
    for text in (*doc.failing.values(), *doc.mended.values()):
        assert " ".join(text.split()) in said
    assert lines[-2:] == [
        f"In the site: rules.html#rule-{doc.id}",
        "Every key of every file: authors/keys/procedure.html",
    ]
    assert max(len(line) for line in lines if not line.startswith("    ")) <= max(
        WIDTH, len(doc.title)
    )
