"""`pullcord log`: what it takes, what it says, how it ends."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result

from pullcord.cli import main
from pullcord.rules.example import example

LOG = """\
job: pump-spring
machine: pump  # the one by the well
taken-in: 2026-03-01
purpose: To fill the trough.
most: 60
wanted:
  washer: {title: Hose washer, price: 2, serves: runs, number: HW-3}
log:
  - {date: 2026-03-01, did: Brought in}
"""
STAGES = "stages: own\nstage:\n  runs: {title: Runs, means: It runs.}\n"


@pytest.fixture
def shed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Stand in a small project with one job."""
    files = {
        "mkdocs.yml": "plugins:\n  - pullcord: {library: false}\n",
        "procedures/no-prime.yaml": example(""),
        "procedures/own.yaml": STAGES,
        "machines/pump.yaml": "machine: pump\ntitle: Pump\nkind: pump\n",
        "jobs/pump-spring.yaml": LOG,
    }
    for name, text in files.items():
        (tmp_path / name).parent.mkdir(exist_ok=True)
        (tmp_path / name).write_text(text, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    return tmp_path


def run(*words: str) -> Result:
    """Run `pullcord log` with some words."""
    return CliRunner().invoke(main, ["log", *words])


def log_text() -> str:
    """Return the log as it is."""
    return Path("jobs/pump-spring.yaml").read_text(encoding="utf-8")


def test_an_entry_is_added_and_shown(shed: Path) -> None:
    """One reads what has been written, and where."""
    words = ["--date", "2026-03-02", "--did", "New washer, tap shut.", "--part", "washer=2.20"]
    done = run("pump-spring", *words, "--minutes", "15")
    entry = (
        "  - date: 2026-03-02\n"
        "    did: New washer, tap shut.\n"
        "    parts:\n"
        "      - {title: Hose washer, price: 2.20, number: HW-3, serves: runs, wanted: washer}\n"
        "    minutes: 15\n"
    )
    assert (done.exit_code, done.stderr) == (0, "")
    assert done.stdout == f"1 entry added to jobs/pump-spring.yaml:\n{entry}"
    assert log_text() == LOG + entry


def test_effects_are_written_in_the_order_they_were_typed(shed: Path) -> None:
    """What happened first stands first."""
    words = ["--takes-off", "bypass", "--drains", "petrol", "--opens", "petrol,guard"]
    assert run("pump-spring", "--date", "2026-03-02", *words).exit_code == 0
    assert log_text().endswith(
        "    takes-off: bypass\n    drains: petrol\n    opens: [petrol, guard]\n"
    )


def test_an_entry_without_a_date_is_of_today(shed: Path) -> None:
    """By the clock of the computer."""
    assert run("pump-spring", "--did", "x").exit_code == 0
    assert log_text().splitlines()[-2].startswith("  - date: 20")


def walk(**given: Any) -> str:
    """Write what the guided walk exports, and return its name."""
    answer = {"step": "casing", "answer": "not full", "when": "2026-03-04 19:05"}
    again = {"step": "casing", "answer": "full", "when": "2026-03-04 20:05"}
    record = {
        "walk": "no-prime",
        "format": 1,
        "revision": "0" * 12,
        "machine": "pump",
        "rounds": [
            {
                "began": "2026-03-04 19:00",
                "left": "2026-03-04 19:05",
                "at": "cause dry-casing",
                "answers": [answer],
            },
            {
                "began": "2026-03-04 20:00",
                "left": "2026-03-04 20:05",
                "at": "cause air-leak",
                "answers": [again],
            },
        ],
    }
    Path("walk.json").write_text(json.dumps(record | given, indent=1), encoding="utf-8")
    return "walk.json"


def test_a_walk_is_taken_in_once(shed: Path) -> None:
    """A second time it is skipped, and how much of it is said."""
    done = run("pump-spring", "--walk", walk())
    assert done.exit_code == 0
    assert done.stdout.startswith("2 entries added to jobs/pump-spring.yaml:\n")
    assert "`no-prime` was changed since this walk" in done.stderr
    assert log_text() == LOG + (
        "  - date: 2026-03-04 19:05\n"
        "    procedure: no-prime\n"
        "    step: casing\n"
        "    answer: not full\n"
        "    cause: dry-casing\n"
        "  - date: 2026-03-04 20:05\n"
        "    procedure: no-prime\n"
        "    step: casing\n"
        "    answer: full\n"
        "    cause: air-leak\n"
    )
    before = log_text()
    done = run("pump-spring", "--walk", "walk.json")
    assert done.exit_code == 0
    assert done.stdout == "jobs/pump-spring.yaml stays as it is: there is nothing new\n"
    assert "note: 2 answers are in the log already, and skipped\n" in done.stderr
    assert log_text() == before


def test_an_older_walk_goes_before_later_entries(shed: Path) -> None:
    """And that is told."""
    assert run("pump-spring", "--date", "2026-03-09", "--did", "x").exit_code == 0
    done = run("pump-spring", "--walk", walk())
    assert "note: entries of a later date stand behind it\n" in done.stderr
    assert log_text().endswith("  - date: 2026-03-09\n    did: x\n")


REFUSED = {
    "a machine it was not made on": ({"machine": "plough"}, "made on `plough`"),
    "a procedure nobody has": ({"walk": "no-prim"}, "did you mean `no-prime`?"),
    "no walk at all": ({"rounds": []}, "a record has from 1 to 40 rounds"),
    "a key nobody knows": ({"colour": "red"}, "no key called `colour`"),
}


@pytest.mark.parametrize(("given", "said"), REFUSED.values(), ids=REFUSED)
def test_a_walk_that_cannot_be_taken_in(shed: Path, given: dict[str, Any], said: str) -> None:
    """It says why, and that nothing was written."""
    done = run("pump-spring", "--walk", walk(**given))
    assert done.exit_code == 1
    assert said in done.output
    assert "nothing was written" in done.stderr
    assert log_text() == LOG


TYPED = {
    "a day there is not": (["--date", "2026-02-30"], "--date: `2026-02-30` cannot stand here"),
    "a word nobody knows": (["--drains", "petrl"], "--drains: `petrl`", "did you mean `petrol`?"),
    "a number that is none": (["--minutes", "an hour"], "--minutes: `an hour` is not a number"),
    "a price with a comma": (["--part", "Plug=4,50"], "--part: the price `4,50` has a comma"),
    "a picture elsewhere": (["--photo", "../x.jpg"], "--photo: `../x.jpg` cannot stand here"),
    "a character nobody sees": (["--note", "a\x07b"], "--note: an invisible character"),
    "two things at once": (["--date", "x", "--drains", "y"], "--date:", "--drains:"),
}


@pytest.mark.parametrize(("words", "said"), [(w, s) for w, *s in TYPED.values()], ids=list(TYPED))
def test_what_is_typed_wrong_is_told_by_its_option(
    shed: Path, words: list[str], said: list[str]
) -> None:
    """All of it at once, with what would mend it; nothing is written."""
    done = run("pump-spring", *words, "--did", "x")
    assert (done.exit_code, done.stdout) == (1, "")
    assert done.stderr.startswith("error: nothing was written:\n  - ")
    assert [words for words in said if words not in done.stderr] == []
    assert log_text() == LOG


NAMES = {
    "a step without its procedure": (["--step", "casing"], "[step-without-procedure]"),
    "an answer nobody can give": (
        ["--procedure", "no-prime", "--step", "casing", "--answer", "ful"],
        "did you mean `full`?",
    ),
    "a procedure nobody has": (["--procedure", "no-prim"], "did you mean `no-prime`?"),
    "a value not on the sheet": (["--value", "gap", "--reading", "1 mm"], "[unknown-log-value]"),
    "a stage nobody has": (["--shows", "rins"], "did you mean `runs`?"),
}


@pytest.mark.parametrize(("words", "said"), NAMES.values(), ids=NAMES)
def test_a_name_nobody_has_is_told_as_check_does(shed: Path, words: list[str], said: str) -> None:
    """With the line as it would be; nothing is written."""
    done = run("pump-spring", "--date", "2026-03-02", *words)
    assert done.exit_code == 1
    assert "jobs/pump-spring.yaml:1" in done.stdout
    assert said in done.stdout
    assert done.stderr == "nothing was written: this is how the log would read\n"
    assert log_text() == LOG


USAGE = {
    "no such job": (["pump-sprng", "--did", "x"], "did you mean `pump-spring`?"),
    "nothing to say": (["pump-spring"], "say what was done"),
    "a date alone": (["pump-spring", "--date", "2026-03-02"], "say what was done"),
    "a walk and more": (["pump-spring", "--walk", "mkdocs.yml", "--did", "x"], "by itself"),
    "a walk that is not there": (["pump-spring", "--walk", "zebra.json"], "does not exist"),
}


@pytest.mark.parametrize(("words", "said"), USAGE.values(), ids=USAGE)
def test_wrong_usage(shed: Path, words: list[str], said: str) -> None:
    """It ends with 2."""
    done = run(*words)
    assert done.exit_code == 2
    assert said in done.stderr
    assert log_text() == LOG


def test_a_log_with_errors_is_told_with_its_lines(shed: Path) -> None:
    """As `check` shows them."""
    text = LOG.replace("most: 60", "most: lots")
    Path("jobs/pump-spring.yaml").write_text(text, encoding="utf-8")
    done = run("pump-spring", "--did", "x")
    assert done.exit_code == 1
    assert done.stdout.startswith("jobs/pump-spring.yaml:5:7: error: `lots` is not a number")
    assert "most: lots\n      ^" in done.stdout
    assert "nothing was written: mend this first\n" in done.stderr
    assert log_text() == text


def test_what_the_new_entry_would_spoil_is_told(shed: Path) -> None:
    """With the line as it would be."""
    rows = "".join(f"  - {{date: 2026-03-01, did: {'x' * 900}}}\n" for _ in range(281))
    Path("jobs/pump-spring.yaml").write_text(LOG + rows, encoding="utf-8")
    done = run("pump-spring", "--did", "y" * 1190)
    assert done.exit_code == 1
    assert "[file-too-large]" in done.stdout
    assert done.stderr == "nothing was written: this is how the log would read\n"
    assert log_text() == LOG + rows


def test_help_names_every_key(shed: Path) -> None:
    """What can be written by hand can be typed."""
    text = run("-h").output
    for option in ("--walk", "--takes-off", "--part", "--unproves", "--photo", "--celsius"):
        assert option in text
    assert 'pullcord log damson-spring --did "Cleaned the tank" --drains petrol' in text
