"""What is kept between builds."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from pullcord.drawing.cache import keep


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
