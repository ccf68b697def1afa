"""`pullcord diff`."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from pullcord.commands.diff import diff
from pullcord.rules.example import example

OLD = example("title: Pump will not prime\n")
NEW = OLD.replace("not full:", "half full: done\n      not full:")


@pytest.fixture
def shed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Stand in a folder that holds two states of a procedure, side by side and apart."""
    monkeypatch.chdir(tmp_path)
    for path, text in {
        "old.yaml": OLD,
        "new.yaml": NEW,
        "a/no-prime.yaml": OLD,
        "b/no-prime.yaml": NEW,
        "shop/mkdocs.yml": "plugins: [pullcord]\n",
        "shop/procedures/no-prime.yaml": NEW,
        "bad/no-prime.yaml": NEW.replace("title: Pump", "titel: Pump"),
        "empty/notes.txt": "x",
    }.items():
        Path(path).parent.mkdir(exist_ok=True, parents=True)
        Path(path).write_text(text, encoding="utf-8")
    return tmp_path


def run(*words: str) -> Result:
    """Run the command."""
    return CliRunner().invoke(diff, words)


SIDES = {
    "two files in one folder": ("old.yaml", "new.yaml"),
    "two folders": ("a", "b"),
    "a file and a folder": ("old.yaml", "b"),
    "a folder and a project": ("a", "shop"),
}


@pytest.mark.parametrize(("old", "new"), SIDES.values(), ids=SIDES)
def test_two_states_are_compared(shed: Path, old: str, new: str) -> None:
    """Whatever holds them, and although both have the same name."""
    done = run(old, new)
    assert (done.exit_code, done.stderr) == (0, "")
    assert '      answer "half full": new: done\n' in done.stdout
    assert "    done\n      can be reached now; checks on the shortest way, 1\n" in done.stdout
    back = run(new, old, "--format", "json")
    assert json.loads(back.stdout)["differences"][0]["state"] == "changed"
    assert run(old, old).stdout == "Nothing differs in meaning.\n"


def test_what_cannot_be_compared(shed: Path) -> None:
    """A file with an error is told with its line; a path without YAML is wrong usage."""
    done = run("a", "bad")
    assert done.exit_code == 1
    assert done.stdout.startswith("bad/no-prime.yaml:")
    assert "mend this first" in done.stderr
    assert run("a", "empty").exit_code == 2
    assert run("a", "nowhere").exit_code == 2
