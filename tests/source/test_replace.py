"""A file changed in one go: killed, with a full disk, by two at once."""

from __future__ import annotations

import errno
import os
import stat
import subprocess
import sys
from pathlib import Path

import pytest

from pullcord.source.decode import MOST_BYTES
from pullcord.source.replace import WriteError, replace_file, write_new


@pytest.fixture
def file(tmp_path: Path) -> Path:
    """Make a small file."""
    path = tmp_path / "a.yaml"
    path.write_bytes(b"old\n")
    return path


def grow(old: bytes) -> bytes:
    """Add a line."""
    return old + b"new\n"


def names(folder: Path) -> set[str]:
    """Return what lies in a folder."""
    return {path.name for path in folder.iterdir()}


def test_the_new_bytes_are_there(file: Path) -> None:
    """They are given back too, and nothing else is left."""
    assert replace_file(file, file.parent, grow) == b"old\nnew\n"
    assert file.read_bytes() == b"old\nnew\n"
    assert names(file.parent) == {"a.yaml"}


@pytest.mark.parametrize("mode", [0o600, 0o644, 0o664])
def test_the_mode_stays(file: Path, mode: int) -> None:
    """Who might read and write it may do so still."""
    file.chmod(mode)
    replace_file(file, file.parent, grow)
    assert stat.S_IMODE(file.stat().st_mode) == mode


def test_the_same_bytes_are_not_written(file: Path) -> None:
    """The file's date stays."""
    before = file.stat().st_mtime_ns, file.stat().st_ino
    replace_file(file, file.parent, lambda old: old)
    assert (file.stat().st_mtime_ns, file.stat().st_ino) == before


def test_a_link_inside_stays_a_link(file: Path) -> None:
    """The file it stands for is written."""
    link = file.with_name("b.yaml")
    link.symlink_to(file)
    replace_file(link, file.parent, grow)
    assert link.is_symlink()
    assert file.read_bytes() == b"old\nnew\n"


def no_such_file(path: Path) -> None:
    """Leave nothing."""
    path.unlink()


def link_out(path: Path) -> None:
    """Put a link in its place that leads out of the folder."""
    outside = path.parent.parent / "outside.yaml"
    path.rename(outside)
    path.symlink_to(outside)


def protect(path: Path) -> None:
    """Take away the right to write it."""
    path.chmod(0o444)


def fill(path: Path) -> None:
    """Make it larger than what is read."""
    path.write_bytes(b"x" * (MOST_BYTES + 1))


def circle(path: Path) -> None:
    """Have a link lead to itself."""
    path.unlink()
    path.symlink_to(path)


REFUSED = {
    "not there": (no_such_file, "not an ordinary file"),
    "a link out of the folder": (link_out, "a link to a file outside"),
    "a link in a circle": (circle, "[Ll]oop|circle|symbolic links"),
    "write-protected": (protect, "write-protected"),
    "too large": (fill, "is not touched"),
}


@pytest.mark.parametrize(("spoil", "said"), REFUSED.values(), ids=REFUSED)
def test_what_is_not_written(tmp_path: Path, spoil: object, said: str) -> None:
    """It says why, and nothing has changed."""
    folder = tmp_path / "jobs"
    folder.mkdir()
    path = folder / "a.yaml"
    path.write_bytes(b"old\n")
    assert callable(spoil)
    spoil(path)
    before = {p: p.read_bytes() for p in tmp_path.rglob("*.yaml") if p.is_file()}
    with pytest.raises(WriteError, match=said):
        replace_file(path, folder, grow)
    assert {p: p.read_bytes() for p in tmp_path.rglob("*.yaml") if p.is_file()} == before


def test_what_the_change_raises_comes_through(file: Path) -> None:
    """The file stays, and the next writer is let in."""

    def fail(old: bytes) -> bytes:
        raise ValueError("no")

    with pytest.raises(ValueError, match="no"):
        replace_file(file, file.parent, fail)
    assert file.read_bytes() == b"old\n"
    replace_file(file, file.parent, grow, patience_seconds=0.1)


@pytest.mark.parametrize("call", ["fsync", "replace"])
def test_a_full_disk_leaves_the_old_file(
    file: Path, monkeypatch: pytest.MonkeyPatch, call: str
) -> None:
    """Wherever the disk says so, it is told, and no part is left."""

    def full(*_: object) -> None:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    owner = os if call == "fsync" else Path
    monkeypatch.setattr(owner, call, full)
    with pytest.raises(WriteError, match=r"No space left on device.*untouched"):
        replace_file(file, file.parent, grow)
    assert file.read_bytes() == b"old\n"
    assert names(file.parent) == {"a.yaml"}


LIMITED = """
import resource, signal, sys
from pathlib import Path
from pullcord.source.replace import WriteError, replace_file
signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
resource.setrlimit(resource.RLIMIT_FSIZE, (4096, 4096))
path = Path(sys.argv[1])
try:
    replace_file(path, path.parent, lambda old: old + b"x" * 100_000)
except WriteError as error:
    print(error)
"""


def test_a_system_that_stops_the_writing_leaves_the_old_file(file: Path) -> None:
    """The system itself cuts a write short; what is there stays whole."""
    command = [sys.executable, "-c", LIMITED, str(file)]
    done = subprocess.run(command, capture_output=True, text=True, check=True, timeout=60)
    assert "File too large" in done.stdout
    assert file.read_bytes() == b"old\n"
    assert names(file.parent) == {"a.yaml"}


def test_what_a_killed_writer_left_is_cleared(file: Path) -> None:
    """A part of another run's is nobody's any more."""
    file.with_name(".a.yaml.part").write_bytes(b"half of i")
    replace_file(file, file.parent, grow)
    assert names(file.parent) == {"a.yaml"}


def test_another_writer_is_waited_for_but_not_for_ever(file: Path) -> None:
    """The message says what to do."""

    def meanwhile(old: bytes) -> bytes:
        command = [sys.executable, "-c", WAITING, str(file)]
        done = subprocess.run(command, capture_output=True, text=True, check=True, timeout=60)
        assert "is being written by another run" in done.stdout
        return grow(old)

    assert replace_file(file, file.parent, meanwhile) == b"old\nnew\n"


WAITING = """
import sys
from pathlib import Path
from pullcord.source.replace import WriteError, replace_file
path = Path(sys.argv[1])
try:
    replace_file(path, path.parent, lambda old: b"", patience_seconds=0.05)
except WriteError as error:
    print(error)
"""


def test_a_new_file_never_takes_the_place_of_one(file: Path) -> None:
    """What is there stays; what is not is written with its folders."""
    with pytest.raises(WriteError, match="is there already"):
        write_new(file, b"new\n")
    assert file.read_bytes() == b"old\n"
    write_new(file.parent / "deep" / "b.yaml", b"new\n")
    assert (file.parent / "deep" / "b.yaml").read_bytes() == b"new\n"
