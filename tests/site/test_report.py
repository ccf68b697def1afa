"""What a person reads when something is wrong."""

from __future__ import annotations

import errno
import logging
import os

import pytest
from mkdocs.exceptions import Abort, PluginError

from pullcord.errors import FindingsError, PullcordError, SiteError
from pullcord.finding import Finding, Severity
from pullcord.site.report import FAULT, disk_fault, heard, list_findings, our_error, told_as

TYPO = Finding(
    file="procedures/no-spark.yaml",
    line=12,
    column=7,
    rule="unknown-target",
    severity=Severity.ERROR,
    message="step `plug` leads to step `coul`, which does not exist",
    mend="did you mean `coil`?",
)
LOOP = Finding("a.yaml", 3, 1, "cycle", Severity.ERROR, "goes round in a circle\na -> b\nb -> a")


def test_all_findings_come_at_once() -> None:
    """They are counted, each with file, line, column, rule and mend, in their order."""
    text = list_findings((TYPO, LOOP))
    assert text.startswith("2 errors in 2 files\nprocedures/no-spark.yaml:12:7: ")
    assert "did you mean `coil`?" in text
    assert "    a -> b\n    b -> a" in text
    assert text.index("[unknown-target]") < text.index("[cycle]")


@pytest.mark.parametrize(
    ("error", "words"),
    [
        pytest.param(FindingsError((TYPO,)), "1 error in 1 file", id="findings"),
        pytest.param(SiteError("The disk is full."), "The disk is full.", id="anything else"),
    ],
)
def test_errors_are_told_in_the_words_of_a_face(error: PullcordError, words: str) -> None:
    """A face gets its own kind of error, with our text in it."""
    with pytest.raises(RuntimeError, match=words), told_as(RuntimeError):
        raise error


def test_our_own_error_is_found_behind_others() -> None:
    """Whoever called the build gets the findings themselves, not a text about them."""
    findings = FindingsError((TYPO,))
    outer = RuntimeError("aborted")
    outer.__context__ = ValueError("plugin")
    outer.__context__.__cause__ = findings
    assert our_error(outer, ["said"]) is findings


@pytest.mark.parametrize(
    ("error", "said", "text"),
    [
        pytest.param(Abort("aborted"), ["no docs", "no docs"], "no docs", id="what was said"),
        pytest.param(Abort("aborted"), [], "aborted", id="the error's own words"),
        pytest.param(
            PluginError("Free some room."), ["page a"], "page a\nFree some room.", id="both"
        ),
        pytest.param(KeyError("x"), [], f"KeyError: 'x'\n{FAULT}", id="a fault"),
        pytest.param(KeyError("x"), ["page a"], f"page a\nKeyError: 'x'\n{FAULT}", id="its place"),
    ],
)
def test_other_errors_become_ours(error: Exception, said: list[str], text: str) -> None:
    """An error of MkDocs's keeps its words; a fault says that it is one and where to look."""
    assert str(our_error(error, said)) == text


@pytest.mark.parametrize(
    ("number", "words"),
    [
        pytest.param(errno.ENOSPC, "Free some room", id="full"),
        pytest.param(errno.EROFS, "Allow writing there", id="read-only"),
        pytest.param(errno.EIO, "name another folder", id="anything else"),
    ],
)
def test_what_to_do_about_a_disk(number: int, words: str) -> None:
    """It goes by what is wrong, names what could not be written, and ends in another build."""
    text = disk_fault(OSError(number, os.strerror(number), "theme.css", None, "site/theme.css"))
    assert text.startswith(f"{os.strerror(number)} (site/theme.css). ")
    assert words in text
    assert text.endswith("then build again.")


def test_hearing(caplog: pytest.LogCaptureFixture) -> None:
    """Errors below MkDocs's logger are kept; warnings and what others say are not."""
    with heard() as lines:
        logging.getLogger("mkdocs.plugins.pullcord").error("no such step")
        logging.getLogger("mkdocs.plugins.pullcord").warning("long step")
        logging.getLogger("elsewhere").error("something else")
    logging.getLogger("mkdocs").error("too late")
    assert lines == ["no such step"]
