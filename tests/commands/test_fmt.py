"""`pullcord fmt`: what it writes, what it says, how it ends."""

from __future__ import annotations

import errno
import os
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from pullcord.cli import main
from pullcord.project import load_project
from pullcord.rules.example import example
from pullcord.source.files import find_files

GOOD = example("")
ODD = "# A pump.\n\nkind: pump\nmachine: pump\ntitle: 'Pump'   # by the well\n"
TIDY = "# A pump.\n\nmachine: pump\ntitle: 'Pump'  # by the well\nkind: pump\n"
ROOT = Path(__file__).parents[2]


@pytest.fixture
def shed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Stand in a project with one file in order and one that is not."""
    files = {
        "mkdocs.yml": "plugins:   [pullcord]\n",
        "procedures/no-prime.yaml": GOOD,
        "machines/pump.yaml": ODD,
        "notes/other.yaml": ODD,
    }
    for name, text in files.items():
        (tmp_path / name).parent.mkdir(exist_ok=True)
        (tmp_path / name).write_text(text, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    return tmp_path


def run(*words: str) -> Result:
    """Run `pullcord fmt` with some words."""
    return CliRunner().invoke(main, ["fmt", *words])


def test_the_project_is_put_in_order(shed: Path) -> None:
    """Its own files and no others; a second time there is nothing to do."""
    done = run()
    assert (done.exit_code, done.stdout) == (0, "machines/pump.yaml: changed\n")
    assert done.stderr == "1 in order, 1 changed\n"
    assert Path("machines/pump.yaml").read_text() == TIDY
    assert Path("notes/other.yaml").read_text() == ODD
    assert Path("mkdocs.yml").read_text() == "plugins:   [pullcord]\n"
    done = run()
    assert (done.exit_code, done.stdout, done.stderr) == (0, "", "2 in order, 0 changed\n")


def test_a_check_writes_nothing(shed: Path) -> None:
    """It ends with 1, for whatever runs it."""
    done = run("--check")
    assert (done.exit_code, done.stdout) == (1, "machines/pump.yaml: would change\n")
    assert done.stderr == "1 in order, 1 would change\n"
    assert Path("machines/pump.yaml").read_text() == ODD
    assert run("--check", "procedures").exit_code == 0


def test_what_is_named_is_put_in_order(shed: Path) -> None:
    """A file, wherever it is, or a folder; one that is named twice, once."""
    done = run("notes/other.yaml", "notes", "procedures")
    assert done.stdout == "notes/other.yaml: changed\n"
    assert done.stderr == "1 in order, 1 changed\n"
    assert Path("machines/pump.yaml").read_text() == ODD


def test_what_cannot_be_read_is_left_and_the_rest_done(shed: Path) -> None:
    """With the finding, as `check` shows it."""
    Path("machines/bad.yaml").write_text("machine: a\nmachine: b\n")
    Path("machines/braces.yaml").write_text("{machine: a}\n")
    done = run()
    assert done.exit_code == 1
    assert "machines/bad.yaml:2:1: error: the key `machine` is given twice" in done.stdout
    assert "machines/braces.yaml: the file is written between braces" in done.stderr
    assert "2 left as they are" in done.stderr
    assert Path("machines/bad.yaml").read_text() == "machine: a\nmachine: b\n"
    assert Path("machines/pump.yaml").read_text() == TIDY


def test_a_link_out_of_the_folder_is_not_followed(shed: Path) -> None:
    """What lies elsewhere is not written."""
    Path("machines/link.yaml").symlink_to(Path("notes/other.yaml").resolve())
    done = run("machines")
    assert done.exit_code == 1
    assert "a link to a file outside of the folder" in done.stdout
    assert Path("notes/other.yaml").read_text() == ODD


def test_a_full_disk_leaves_the_old_file(shed: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """And says so."""

    def full(*_: object) -> None:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr(os, "fsync", full)
    done = run()
    assert done.exit_code == 1
    assert "No space left on device" in done.stderr
    assert Path("machines/pump.yaml").read_text() == ODD


def test_where_there_is_nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The shipped procedures are not anybody's to write: nothing means nothing."""
    monkeypatch.chdir(tmp_path)
    done = run()
    assert done.exit_code == 2
    assert "there is no YAML file at this place" in done.stderr


OURS = ["procedures", "demo"]


@pytest.mark.parametrize("folder", OURS)
def test_our_own_files_are_in_order(folder: str) -> None:
    """What we ship shows how a file looks: run `pullcord fmt` after writing one."""
    done = run("--check", str(ROOT / folder))
    assert done.stdout == ""
    assert done.exit_code == 0, done.stderr


@pytest.mark.parametrize("folder", OURS)
def test_nothing_changes_in_meaning(tmp_path: Path, folder: str) -> None:
    """Shaken out of order and put back, our own files give the same procedures and sheets."""
    for path in find_files(ROOT / folder):
        copy = tmp_path / path.relative_to(ROOT / folder)
        copy.parent.mkdir(parents=True, exist_ok=True)
        blocks = shaken(path.read_text(encoding="utf-8"))
        copy.write_text(blocks, encoding="utf-8")
    before = load_project([tmp_path])
    assert run(str(tmp_path)).exit_code == 0
    after = load_project([tmp_path])
    assert before.library == after.library
    for path in find_files(ROOT / folder):
        head = path.read_text(encoding="utf-8").split("\n", 1)[0]
        if not head.startswith("#"):
            copy = tmp_path / path.relative_to(ROOT / folder)
            assert copy.read_text(encoding="utf-8") == path.read_text(encoding="utf-8")


def shaken(text: str) -> str:
    """Return a file with its first-level keys the other way round."""
    lines = text.splitlines(keepends=True)
    starts = [at for at, line in enumerate(lines) if line[0] not in " \n#-"]
    blocks = [
        "".join(lines[start:end])
        for start, end in zip(starts, [*starts[1:], len(lines)], strict=True)
    ]
    return "".join(lines[: starts[0]]) + "".join(reversed(blocks))
