"""Findings for a person at a terminal."""

from __future__ import annotations

from pullcord.rules.report.text import text_report
from pullcord.rules.show import Role
from tests.rules.report.found import AGAIN, ERROR

RAW = b"x\n" * 18 + b"full: cause air-leek\n"


def test_why_is_said_once_a_rule() -> None:
    """The first finding says what the rule is for and where more stands; the next one need not."""
    lines = list(text_report([(ERROR, RAW), (AGAIN, b"")], lambda role, text: text))
    assert lines == [
        "procedures/no-prime.yaml:19:7: error: there is no cause called `air-leek` "
        "[unknown-target]",
        "full: cause air-leek",
        "      ^",
        "  mend: did you mean `air-leak`?",
        "  why: An answer that points to a name nobody defined is mostly a slip of the finger; on "
        "the page it would be a link to nowhere.",
        "  more: `pullcord explain unknown-target`, or rules.html#rule-unknown-target in the site",
        "procedures/no-prime.yaml:23:7: error: nor `x` [unknown-target]",
    ]


def test_every_piece_is_painted_by_its_role() -> None:
    """Whoever paints sees what each piece is for, and no text gets lost."""

    def paint(role: Role, text: str) -> str:
        return f"<{role}|{text}>"

    first, source, caret, mend, *_ = text_report([(ERROR, RAW)], paint)
    assert first == (
        "<place|procedures/no-prime.yaml:19:7: ><error|error: >"
        "<plain|there is no cause called `air-leek` ><rule|[unknown-target]>"
    )
    assert (source, caret) == ("<plain|full: cause air-leek>", "<caret|      ^>")
    assert mend == "<label|  mend: ><plain|did you mean `air-leak`?>"
