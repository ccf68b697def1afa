"""Hostile and broken files of every kind, on a real disk: findings, and the others stand."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from pullcord.project import Project, load_project
from pullcord.source.decode import UNSEEN
from tests.fuzz.beside import JOB, MACHINE, PROCEDURE, STAGES

KINDS = {
    "procedure": ("no-prime.yaml", PROCEDURE),
    "machine sheet": ("plough.yaml", MACHINE),
    "stages": ("own.yaml", STAGES),
    "job log": ("plough-autumn.yaml", JOB),
}
"""A faultless file of each kind, with its name."""


def load(folder: Path, **changed: bytes) -> Project:
    """Write one file of each kind, some of them changed, and read the folder."""
    for kind, (name, text) in KINDS.items():
        (folder / name).write_bytes(changed.get(kind, text.encode()))
    return load_project([folder])


def rules_of(project: Project, file: str) -> set[str]:
    """Return the rules of a file's findings."""
    return {each.rule for each in project.findings if Path(each.file).name == file}


SPOILT = {
    "NUL in the middle": (lambda raw: raw[:40] + b"\0" + raw[40:], "control-character"),
    "NUL at the end": (lambda raw: raw + b"\0" * 512, "control-character"),
    "a terminal's escape": (lambda raw: raw[:40] + b"\x1b[2J" + raw[40:], "control-character"),
    "written backwards": (
        lambda raw: raw[:40] + "\u202e".encode() + raw[40:],
        "control-character",
    ),
    "a byte order mark inside": (
        lambda raw: raw[:40] + b"\xef\xbb\xbf" + raw[40:],
        "control-character",
    ),
    "UTF-16": (lambda raw: raw.decode().encode("utf-16"), "not-utf8"),
    "UTF-16 without a mark": (lambda raw: raw.decode().encode("utf-16-le"), "control-character"),
    "Latin-1": (lambda raw: raw + "note: é\n".encode("latin-1"), "not-utf8"),
    "10 MB of comments": (lambda raw: raw + b"# x\n" * (10 * 2**18), "file-too-large"),
    "10 MB of nothing": (lambda raw: raw + b"\0" * 10 * 2**20, "file-too-large"),
    "aliases of aliases": (
        lambda raw: (
            raw
            + b"a0: &a0 [x, x]\n"
            + b"".join(b"a%d: &a%d [*a%d, *a%d]\n" % (n, n, n - 1, n - 1) for n in range(1, 40))
        ),
        "alias",
    ),
    "nested brackets": (lambda raw: raw + b"note: " + b"[" * 100_000, "too-deep"),
    "a tag that would run code": (
        lambda raw: raw + b"note: !!python/object/apply:os.system [ls]\n",
        "tag",
    ),
}


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize(("spoil", "rule"), SPOILT.values(), ids=SPOILT)
def test_a_spoilt_file_is_found_and_the_others_stand(
    tmp_path: Path, kind: str, spoil: object, rule: str
) -> None:
    """Whatever kind of file it is: its own rule says it, and nothing else is lost."""
    name, text = KINDS[kind]
    assert callable(spoil)
    project = load(tmp_path, **{kind: spoil(text.encode())})
    assert rule in rules_of(project, name)
    read = {
        "procedure": project.library.procedures,
        "machine sheet": project.library.machines,
        "stages": project.library.stages,
        "job log": project.library.jobs,
    }
    assert [each for each in read if not read[each]] in ([kind], [])
    assert not any(UNSEEN.search(each.message) for each in project.findings)


CLEAN = {
    "a byte order mark": lambda raw: b"\xef\xbb\xbf" + raw,
    "CRLF": lambda raw: raw.replace(b"\n", b"\r\n"),
    "old line ends": lambda raw: raw.replace(b"\n", b"\r"),
    "old line ends below a comment": lambda raw: (b"# x\n" + raw).replace(b"\n", b"\r"),
    "a mark before a comment": lambda raw: b"\xef\xbb\xbf# x\n" + raw,
    "no last line end": lambda raw: raw.rstrip(b"\n"),
}


@pytest.mark.parametrize("change", CLEAN.values(), ids=CLEAN)
def test_what_editors_do_changes_nothing(tmp_path: Path, change: object) -> None:
    """Marks and line ends are read as if they were not there."""
    assert callable(change)
    (tmp_path / "plain").mkdir()
    (tmp_path / "changed").mkdir()
    changed = {kind: change(text.encode()) for kind, (_, text) in KINDS.items()}
    assert load(tmp_path / "changed", **changed).library == load(tmp_path / "plain").library


NAMES = {
    "upward": "../x",
    "from the root": "/etc/passwd",
    "a device, in capitals": "CON",
    "300 characters": "a" * 300,
    "a drive": "c:x",
    "a backslash": "..\\x",
    "written backwards": '"\\u202Enosrep"',
    "right to left": "שלום",
    "a dot": ".",
    "markup": "<b>",
    "a blank": "a b",
}
NAMED = {
    "a procedure": ("procedure", "procedure: no-prime"),
    "its first step": ("procedure", "start: casing"),
    "a machine": ("machine sheet", "machine: plough"),
    "its kind": ("machine sheet", "kind: plough"),
    "stages": ("stages", "stages: own"),
    "a job": ("job log", "job: plough-autumn"),
    "its machine": ("job log", "machine: plough"),
    "a step in a log": ("job log", "    step: lead"),
    "a photo": ("job log", "    celsius: 9.5\n    photo: x.jpg"),
}


@pytest.mark.parametrize("name", NAMES.values(), ids=NAMES)
@pytest.mark.parametrize(("kind", "line"), NAMED.values(), ids=NAMED)
def test_a_name_that_leads_elsewhere_is_refused(
    tmp_path: Path, kind: str, line: str, name: str
) -> None:
    """No name can leave the folder, be a device, or be longer than a disk takes."""
    file, text = KINDS[kind]
    key, _, value = line.rpartition(": ")
    changed = text.replace("    celsius: 9.5", line) if "photo" in line else text
    assert f"{key}: {value}\n" in changed
    changed = changed.replace(f"{key}: {value}\n", f"{key}: {name}\n", 1)
    project = load(tmp_path, **{kind: changed.encode()})
    if line.endswith("x.jpg") and name in ("CON", "a" * 300):
        # A photo keeps the name its camera gave it; one that is not there is left out.
        assert len(name) == 3 or rules_of(project, file)
        return
    assert rules_of(project, file)
    assert name not in {*project.files, *project.machines, *project.jobs}


FILE_NAMES = {
    "a device": "CON.yaml",
    "250 characters": "a" * 250 + ".yaml",
    "a line end": "a\nb.yaml",
    "a terminal's escape": "a\x1b[2Jb.yaml",
    "written backwards": "a\u202eb.yaml",
    "bytes that are no letters": os.fsdecode(b"a\xff\xfeb.yaml"),
    "markup": "<img src=x onerror=alert(1)>.yaml",
    "a beginning like an option": "--help.yaml",
}


def test_hostile_file_names_are_shown_in_plain_letters(tmp_path: Path) -> None:
    """The command that checks names each, with no traceback and nothing that moves a terminal."""
    (tmp_path / "in").mkdir()
    for name in FILE_NAMES.values():
        (tmp_path / "in" / name).write_text("titel: x\n", encoding="utf-8")
    done = subprocess.run(
        [sys.executable, "-c", "from pullcord.cli import main; main()", "check", "in"],
        cwd=tmp_path,
        capture_output=True,
        check=False,
        timeout=120,
    )
    assert done.returncode == 1
    assert b"Traceback" not in done.stdout + done.stderr
    shown = done.stdout.decode()
    assert not UNSEEN.search(shown.replace("\n", ""))
    assert shown.count("there is no key called `titel` here") == len(FILE_NAMES)


def test_links_out_of_the_tree_are_not_followed(tmp_path: Path) -> None:
    """To a file, to a folder, to a device, in a circle: none is read, and none is waited for."""
    (tmp_path / "out").mkdir()
    (tmp_path / "out" / "secret.yaml").write_text(MACHINE.replace("plough", "secret"))
    folder = tmp_path / "in"
    folder.mkdir()
    (folder / "secret.yaml").symlink_to(tmp_path / "out" / "secret.yaml")
    (folder / "more").symlink_to(tmp_path / "out")
    (folder / "zero.yaml").symlink_to("/dev/zero")
    (folder / "round.yaml").symlink_to("round.yaml")
    (folder / "up.yaml").symlink_to("..")
    project = load(folder)
    found = {Path(each.file).name: each.rule for each in project.findings}
    names = {"secret.yaml", "zero.yaml", "round.yaml"}
    assert {name: found.get(name) for name in names} == dict.fromkeys(names, "unreadable-file")
    assert list(project.machines) == ["plough"]
