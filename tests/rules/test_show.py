"""A finding as it stands in a terminal."""

from __future__ import annotations

from pullcord.finding import Finding, Severity
from pullcord.rules.show import count_findings, show_finding

FOUND = Finding("a.yaml", 2, 8, "cycle", Severity.ERROR, "first line\nsecond", "mend it")


def test_all_its_parts() -> None:
    """Place, severity, message and rule; the rest indented; the line itself with a caret."""
    assert show_finding(FOUND, b"a: b\r\ncd: ef gh\r\n").splitlines() == [
        "a.yaml:2:8: error: first line [cycle]",
        "    second",
        "cd: ef gh",
        "       ^",
        "  mend: mend it",
    ]


def test_without_the_file() -> None:
    """Where the file is gone meanwhile, what is known is still said."""
    assert show_finding(FOUND).splitlines() == [
        "a.yaml:2:8: error: first line [cycle]",
        "    second",
        "  mend: mend it",
    ]


def test_a_long_line_is_shown_around_its_place() -> None:
    """The caret stands below the letter it means."""
    finding = Finding("a.yaml", 1, 500, "cycle", Severity.ERROR, "x")
    raw = ("." * 499 + "!" + "." * 499).encode()
    _, line, caret = show_finding(finding, raw).splitlines()
    assert len(line) <= 102
    assert line.startswith("…")
    assert line.endswith("…")
    assert line[caret.index("^")] == "!"


def test_characters_that_move_a_cursor_are_replaced() -> None:
    """Wherever they come from, and the caret still fits."""
    finding = Finding("a\x1b.yaml", 1, 4, "cycle", Severity.ERROR, "x\u202ey", "z\0")
    assert show_finding(finding, b"\t\x07\x1b!").splitlines() == [
        "a\ufffd.yaml:1:4: error: x\ufffdy [cycle]",
        " \ufffd\ufffd!",
        "   ^",
        "  mend: z\ufffd",
    ]


def test_findings_are_counted() -> None:
    """Singular and plural, and no word of what there is none of."""
    warning = Finding("b.yaml", 1, 1, "unused-tool", Severity.WARNING, "x")
    assert count_findings((FOUND,)) == "1 error in 1 file"
    assert count_findings((FOUND, FOUND, warning)) == "2 errors, 1 warning in 2 files"
    assert count_findings((warning,)) == "1 warning in 1 file"
