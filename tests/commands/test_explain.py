"""`pullcord explain`."""

from __future__ import annotations

import pytest
from click.testing import CliRunner

from pullcord.commands.explain import explain


@pytest.mark.parametrize("word", ["unknown-target", "[unknown-target]"])
def test_a_rule_is_explained(word: str) -> None:
    """As it stands behind a finding, with or without its brackets."""
    done = CliRunner().invoke(explain, [word])
    assert done.exit_code == 0
    assert done.stdout.startswith("unknown-target  error\nEvery answer leads to a step")
    assert "\nWrong: no-prime.yaml\n    procedure: no-prime\n" in done.stdout


def test_alone_it_lists_them_all() -> None:
    """One line a rule."""
    done = CliRunner().invoke(explain, [])
    assert done.exit_code == 0
    assert "\nunused-tool " in done.stdout


def test_a_slip_is_answered_with_the_nearest() -> None:
    """It ends with 2, as every wrong usage does."""
    done = CliRunner().invoke(explain, ["unknown-tarjet"])
    assert (done.exit_code, done.stdout) == (2, "")
    assert "did you mean `unknown-target`?" in done.stderr
    assert "lists them all" in CliRunner().invoke(explain, ["zzzz"]).stderr
