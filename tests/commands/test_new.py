"""`pullcord new` and `pullcord init`: what they ask, what they write, that they never overwrite."""

from __future__ import annotations

import errno
import os
import re
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result

import pullcord.source.choice
from pullcord.cli import main
from pullcord.rules.example import example
from pullcord.source.tree import read_tree

STAGES = """\
stages: small
stage:
  taken-in: {title: Taken in, means: It is here.}
  runs: {title: Runs, means: It runs., after: taken-in}
"""


@pytest.fixture
def shed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Stand in an empty folder; the shipped library is a small one, so that it is read quickly."""
    library = tmp_path / "library"
    library.mkdir()
    spark = example("procedure: no-spark\nsigns:\n  seen: no spark\n")
    (library / "no-spark.yaml").write_text(spark, encoding="utf-8")
    (library / "small.yaml").write_text(STAGES, encoding="utf-8")
    monkeypatch.setattr(pullcord.source.choice, "shipped_procedures", lambda: library)
    folder = tmp_path / "shed"
    folder.mkdir()
    monkeypatch.chdir(folder)
    return folder


def run(*words: str, answers: str = "") -> Result:
    """Run `pullcord` with some words, and type some answers."""
    return CliRunner().invoke(main, words, input=answers)


PROCEDURE = ("procedure", "wont-charge", "--title", "No charge", "--symptom", "It is flat.")
MACHINE = ("machine", "old-pump", "--title", "Old pump", "--kind", "pump")
IGNITION = ("--ignition", "magneto", "--strokes", "two")
JOB = ("job", "pump-spring", "--machine", "old-pump", "--purpose", "To pump.", "--most", "80")
EACH = {
    "procedure": (PROCEDURE, "procedures/wont-charge.yaml"),
    "machine": ((*MACHINE, *IGNITION), "machines/old-pump.yaml"),
    "job": (JOB, "jobs/pump-spring.yaml"),
}


def begin_all() -> None:
    """Begin one of each."""
    for words, path in EACH.values():
        done = run("new", *words)
        assert (done.exit_code, done.stderr) == (0, "")
        assert done.stdout.startswith(f"Written: {path}\n")


@pytest.mark.parametrize("has_project", [True, False], ids=["in a project", "in an empty folder"])
def test_what_is_begun_is_sound_and_in_order(shed: Path, has_project: bool) -> None:
    """No finding, not even a warning, and nothing for `fmt` to do."""
    if has_project:
        assert run("init", ".").exit_code == 0
    begin_all()
    folders = [] if has_project else ["procedures", "machines", "jobs"]
    # Without settings nobody knows that the three folders are one project: each is checked.
    for path in [[]] if has_project else [["procedures"], ["machines"]]:
        done = run("check", "--strict", *path)
        assert (done.exit_code, done.stdout) == (0, "")
    done = run("fmt", "--check", *folders)
    assert (done.exit_code, done.stdout) == (0, "")


def test_what_is_not_given_is_asked(shed: Path) -> None:
    """In plain words; what nobody knows may stay unknown."""
    done = run("new", "procedure", "wont-charge", answers="No charge\nIt is flat.\n")
    assert "What is wrong, in a few words: " in done.stdout
    assert "What does the owner see or hear, in one sentence: " in done.stdout
    done = run("new", "machine", "old-pump", answers="Old pump\nWater pump\n\n\n")
    assert done.exit_code == 0
    done = run("new", "job", "pump-spring", answers="To pump.\n80\n\n")
    assert "Which machine (old-pump) [old-pump]: " in done.stdout
    assert done.exit_code == 0
    sheet = read_tree(Path("machines/old-pump.yaml").read_bytes()).data
    assert isinstance(sheet, dict)
    assert (sheet["title"], sheet["kind"]) == ("Old pump", "water-pump")
    assert "ignition" not in sheet
    log = read_tree(Path("jobs/pump-spring.yaml").read_bytes()).data
    assert isinstance(log, dict)
    assert (log["machine"], log["purpose"], log["most"]) == ("old-pump", "To pump.", "80")


def test_answers_that_do_not_come_end_it(shed: Path) -> None:
    """Nothing is written, and nothing is said twice."""
    done = run("new", "procedure", "wont-charge")
    assert done.exit_code == 1
    assert "Aborted!" in done.stderr
    assert list(shed.rglob("*.yaml")) == []


@pytest.mark.parametrize(("words", "path"), EACH.values(), ids=EACH)
def test_nothing_is_written_over(shed: Path, words: tuple[str, ...], path: str) -> None:
    """Not what was begun before, nor a file that does not even hold what its name says."""
    begin_all()
    before = Path(path).read_bytes()
    done = run("new", *words)
    assert done.exit_code == 1
    assert "already" in done.stderr
    assert Path(path).read_bytes() == before
    Path(path).write_text("mine")
    done = run("new", *words)
    assert done.exit_code == 1
    assert f"{path} is there already and is not written over" in done.stderr
    assert Path(path).read_text() == "mine"


REFUSED = {
    "a name with capitals": (("procedure", "Wont Charge"), 1, "such as `wont-charge`"),
    "a name that leads away": (("procedure", "../x"), 1, "such as `x`"),
    "a name without a letter": (("procedure", "2026"), 1, "`2026` cannot be a name"),
    "a device": (("procedure", "aux"), 1, "the name of a device"),
    "a name of 300 letters": (("procedure", "x" * 300), 1, "48 at most"),
    "a shipped procedure": (("procedure", "no-spark"), 1, "name it under `replaces`"),
    "a machine nobody has": (("job", "a", "--machine", "olt-pump"), 1, "did you mean `old-pump`?"),
    "a limit that is no number": (
        ("job", "a", "--machine", "old-pump", "--most", "lots"),
        1,
        "lots",
    ),
    "a title that is too long": (("procedure", "a", "--title", "x" * 121), 1, "[text-too-long]"),
    "a symptom nobody sees": (("procedure", "a", "--symptom", "a\x07"), 1, "[control-character]"),
    "an ignition nobody has": (("machine", "a", "--ignition", "steam"), 2, "'steam' is not one of"),
}
OTHERS = {
    "procedure": {"--title": "x", "--symptom": "y"},
    "machine": {"--title": "x", "--kind": "y", "--ignition": "unknown", "--strokes": "unknown"},
    "job": {"--purpose": "x", "--most": "8"},
}


@pytest.mark.parametrize(("words", "code", "said"), REFUSED.values(), ids=REFUSED)
def test_what_cannot_be_begun_is_told(
    shed: Path, words: tuple[str, ...], code: int, said: str
) -> None:
    """With what would do; nothing is written."""
    run("new", *MACHINE, *IGNITION)
    before = set(shed.rglob("*.yaml"))
    rest = [part for pair in OTHERS[words[0]].items() if pair[0] not in words for part in pair]
    done = run("new", *words, *rest)
    assert done.exit_code == code
    assert said in done.output
    assert set(shed.rglob("*.yaml")) == before


def test_a_job_before_the_first_machine(shed: Path) -> None:
    """It says what to begin first."""
    done = run("new", "job", "a", "--purpose", "x", "--most", "8")
    assert done.exit_code == 2
    assert "`pullcord new machine NAME`" in done.stderr


def test_a_project_is_begun(shed: Path) -> None:
    """Each file is named, then what to do next; the site's name is that of the folder."""
    done = run("init", "old-shed")
    assert (done.exit_code, done.stderr) == (0, "")
    assert done.stdout == (
        "Written: old-shed/mkdocs.yml\n"
        "Written: old-shed/docs/our-shop.md\n"
        "Written: old-shed/.gitignore\n"
        "Written: old-shed/procedures/lamp-stays-dark.yaml\n"
        "Written: old-shed/machines/first-machine.yaml\n"
        "Written: old-shed/jobs/first-job.yaml\n"
        "Written: old-shed/schemas, by which an editor helps while you type\n"
        "\n"
        "Next:\n"
        "  cd old-shed\n"
        "  pullcord check\n"
        "  pullcord build\n"
        "and open site/index.html in a browser.\n"
        "`pullcord new procedure NAME` begins a procedure of your own.\n"
    )
    settings_text = Path("old-shed/mkdocs.yml").read_text()
    assert "site_name: Old shed\n" in settings_text
    assert "site/" in Path("old-shed/.gitignore").read_text()
    head = Path("old-shed/jobs/first-job.yaml").read_text()
    assert head.startswith("# yaml-language-server: $schema=../schemas/job.json\n")
    assert re.search(r"^taken-in: 20\d\d-\d\d-\d\d$", head, re.MULTILINE)


def test_the_examples_have_no_findings_and_are_in_order(
    shed: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Warnings included."""
    run("init", "old-shed", "--title", "The shed: by the gate")
    monkeypatch.chdir(shed / "old-shed")
    done = run("check", "--strict")
    assert (done.exit_code, done.stdout) == (0, "")
    done = run("fmt", "--check")
    assert (done.exit_code, done.stdout) == (0, "")
    assert done.stderr == "3 in order, 0 would change\n"
    assert 'site_name: "The shed: by the gate"\n' in Path("mkdocs.yml").read_text()


def test_a_log_is_added_to_what_was_begun(shed: Path) -> None:
    """The first thing that happens to a log."""
    run("init", ".")
    done = run("log", "first-job", "--date", "2099-01-01", "--did", "Looked.")
    assert (done.exit_code, done.stderr) == (0, "")
    assert (
        Path("jobs/first-job.yaml").read_text().endswith("  - date: 2099-01-01\n    did: Looked.\n")
    )


TAKEN: dict[str, Any] = {
    "the settings": "mkdocs.yml",
    "an example": "jobs/first-job.yaml",
    "a schema": "schemas/job.json",
    "a file that is hidden": ".gitignore",
}


@pytest.mark.parametrize("name", TAKEN.values(), ids=TAKEN)
def test_a_project_is_not_begun_over_another(shed: Path, name: str) -> None:
    """One file that is there already is enough: nothing is written."""
    path = shed / "old-shed" / name
    path.parent.mkdir(parents=True)
    path.write_text("mine")
    done = run("init", "old-shed")
    assert done.exit_code == 1
    assert f"old-shed/{name} is there already: name a new or an empty folder" in done.stderr
    assert [p for p in shed.rglob("*") if p.is_file()] == [path]
    assert path.read_text() == "mine"


def test_a_full_disk_is_told(shed: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Without a traceback."""

    def full(*_: object) -> None:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr(os, "fsync", full)
    done = run("init", "old-shed")
    assert done.exit_code == 1
    assert done.stderr.startswith("error: old-shed/mkdocs.yml cannot be written: No space left")
