"""What is wrong with a file, on top of a previewed page."""

from __future__ import annotations

from pathlib import Path

import pytest

from pullcord.errors import FindingsError, LayoutError
from pullcord.finding import Finding, Severity
from pullcord.site.trouble import put_on_top, trouble_box


def finding(file: Path | str, message: str = "there is no key `titel`") -> Finding:
    """Return a finding at the second line of a file."""
    return Finding(str(file), 2, 3, "unknown-key", Severity.ERROR, message, "write `title`")


def test_the_line_stands_there_with_a_caret(tmp_path: Path) -> None:
    """File, line and column, the line itself, a caret below the word, and how to mend it."""
    file = tmp_path / "no-spark.yaml"
    file.write_text("procedure: no-spark\n  titel: No spark\n", encoding="utf-8")
    box = trouble_box(FindingsError((finding(file),)))
    assert f"{file}:2:3: error: there is no key `titel` [unknown-key]" in box
    assert "\n  titel: No spark\n  ^\n" in box
    assert "mend: write `title`" in box
    assert "1 error in 1 file" in box


def test_all_findings_are_there(tmp_path: Path) -> None:
    """As many as there are, whether or not their files can be read."""
    found = (finding(tmp_path / "gone.yaml", "first"), finding(tmp_path / "gone.yaml", "second"))
    box = trouble_box(FindingsError(found))
    assert "first" in box
    assert "second" in box


@pytest.mark.parametrize("error", ["findings", "other"])
def test_hostile_words_stay_words(tmp_path: Path, error: str) -> None:
    """Nothing from a file becomes an element, and nothing moves out of the box."""
    evil = "</pre><script>alert(1)</script>\x1b[2J"
    file = tmp_path / "a.yaml"
    file.write_text(f"a\n{evil}\n", encoding="utf-8")
    wrong = FindingsError((finding(file, evil),)) if error == "findings" else LayoutError(evil)
    box = trouble_box(wrong)
    assert "<script" not in box
    assert "\x1b" not in box
    assert box.count("</pre>") == 1


PAGES = {
    "on top of the text": (
        b"<body><nav></nav><article class='x'><h1>",
        b"<body><nav></nav><article class='x'>BOX<h1>",
    ),
    "on top of the page": (b"<body class=x><p>", b"<body class=x>BOX<p>"),
    "where there is no page": (b"404 Not Found", b"BOX404 Not Found"),
}


@pytest.mark.parametrize(("page", "shown"), PAGES.values(), ids=PAGES)
def test_it_stands_on_top(page: bytes, shown: bytes) -> None:
    """It is the first thing read, and what was there stays below it."""
    assert put_on_top(page, "BOX") == shown
