"""What is kept between builds."""

from __future__ import annotations

import os
import time
from collections.abc import Callable
from pathlib import Path

import pytest
from pydantic import TypeAdapter

from pullcord.drawing.cache import keep, keep_value, trim


def counting(content: bytes) -> tuple[list[int], Callable[[], bytes]]:
    """Return a maker and the list that grows when it is called."""
    calls: list[int] = []

    def make() -> bytes:
        calls.append(1)
        return content

    return calls, make


def test_makes_once_and_keeps(tmp_path: Path) -> None:
    """The second time nothing is made, and the bytes are the same."""
    calls, make = counting(b"line\nline\x00")
    folder = tmp_path / "not" / "yet"
    assert [keep(folder, ["a"], make) for _ in range(3)] == [b"line\nline\x00"] * 3
    assert len(calls) == 1
    assert len(list(folder.iterdir())) == 1


def test_a_folder_that_cannot_be_is_no_harm() -> None:
    """A name no disk takes: nothing is kept, and there is nothing to trim."""
    calls, make = counting(b"x")
    assert keep(Path("a\0b"), ["a"], make) == keep(Path("a\0b"), ["a"], make) == b"x"
    assert len(calls) == 2
    trim(Path("a\0b"), time.time())


def test_without_a_folder_makes_every_time() -> None:
    """None keeps nothing."""
    calls, make = counting(b"x")
    assert keep(None, ["a"], make) == keep(None, ["a"], make) == b"x"
    assert len(calls) == 2


@pytest.mark.parametrize(
    "spoil", [b"", b"x", b"x\ncontent", b"\xff" * 100], ids=["empty", "short", "wrong", "noise"]
)
def test_a_spoilt_entry_is_made_again(tmp_path: Path, spoil: bytes) -> None:
    """A half-written or altered entry is ignored and put right."""
    calls, make = counting(b"content")
    keep(tmp_path, ["a"], make)
    (entry,) = tmp_path.iterdir()
    entry.write_bytes(spoil)
    assert keep(tmp_path, ["a"], make) == b"content"
    assert keep(tmp_path, ["a"], make) == b"content"
    assert len(calls) == 2


def test_an_entry_that_is_a_folder_is_no_harm(tmp_path: Path) -> None:
    """What cannot be read or written is made every time."""
    _, make = counting(b"content")
    keep(tmp_path, ["a"], make)
    (entry,) = tmp_path.iterdir()
    entry.unlink()
    (entry / "in").mkdir(parents=True)
    assert keep(tmp_path, ["a"], make) == b"content"
    assert [path for path in tmp_path.iterdir() if path != entry] == []


def test_a_folder_that_cannot_be_written_is_no_harm(tmp_path: Path) -> None:
    """A file where the folder should be leaves the build as it was."""
    (tmp_path / "file").write_text("", encoding="ascii")
    _, make = counting(b"content")
    assert keep(tmp_path / "file", ["a"], make) == b"content"


@pytest.mark.parametrize("other", [["b"], ["a", ""], ["a", "b"], []])
def test_another_key_is_another_entry(tmp_path: Path, other: list[str]) -> None:
    """Keys that differ in any part never meet."""
    assert keep(tmp_path, ["a"], lambda: b"one") == b"one"
    assert keep(tmp_path, other, lambda: b"two") == b"two"
    assert keep(tmp_path, ["a"], lambda: b"three") == b"one"


def test_plain_data_comes_back_as_it_was(tmp_path: Path) -> None:
    """What is kept as JSON is equal to what was made, tuples and all."""
    kind = TypeAdapter(tuple[tuple[str, float], ...])
    value = (("Ω", 0.1), ("", 1e-9))
    made = [keep_value(tmp_path, ["a"], kind, lambda: value) for _ in range(2)]
    assert made == [value, value]
    assert keep_value(None, ["a"], kind, lambda: value) is value


def test_trimming_takes_what_was_used_longest_ago(tmp_path: Path) -> None:
    """Entries go until the rest is no larger than it may be; the last used stay."""
    for number in range(4):
        keep(tmp_path, [str(number)], lambda: os.urandom(1000))
        entry = max(tmp_path.iterdir(), key=lambda path: path.stat().st_mtime_ns)
        os.utime(entry, (number + 1, number + 1))
    keep(tmp_path, ["0"], lambda: b"never")
    trim(tmp_path, time.time() + 60, 2500)
    made: list[int] = []
    for number in range(4):
        keep(tmp_path, [str(number)], lambda number=number: made.append(number) or b"")
    assert made == [1, 2]


def test_trimming_leaves_what_this_build_used(tmp_path: Path) -> None:
    """However much that is, and whoever read it last; only what is older makes room."""
    begun = time.time()
    for name in ("used", "old"):
        keep(tmp_path, [name], lambda: os.urandom(1000))
    for entry in tmp_path.iterdir():
        os.utime(entry, (begun - 60, begun - 60))
    keep(tmp_path, ["new"], lambda: os.urandom(1000))
    keep(tmp_path, ["used"], lambda: b"never")
    trim(tmp_path, begun, 500)
    made: list[str] = []
    for name in ("used", "new", "old"):
        keep(tmp_path, [name], lambda name=name: made.append(name) or b"")
    assert made == ["old"]


def test_trimming_sweeps_up_what_a_killed_build_left(tmp_path: Path) -> None:
    """A half-written file goes when it is old; one being written by another build stays."""
    keep(tmp_path, ["a"], lambda: b"content")
    for name, age in (("tmp-old", 1), ("tmp-new", 4_000_000_000)):
        (tmp_path / name).write_bytes(b"half")
        os.utime(tmp_path / name, (age, age))
    (tmp_path / "folder").mkdir()
    trim(tmp_path, time.time())
    assert sorted(p.name for p in tmp_path.iterdir() if len(p.name) < 64) == ["folder", "tmp-new"]
    assert keep(tmp_path, ["a"], lambda: b"never") == b"content"


def test_there_may_be_nothing_to_trim(tmp_path: Path) -> None:
    """No folder, or none yet, is no harm."""
    trim(None, time.time())
    trim(tmp_path / "not yet", time.time())
