"""Which files of a folder are read, and what is said about those that are not."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from pullcord.source.decode import MOST_BYTES
from pullcord.source.files import find_files, read_file
from pullcord.source.flaw import TextFlaw


def test_yaml_files_are_found_sorted_and_hidden_ones_are_not(tmp_path: Path) -> None:
    """Every YAML file below the folder, in an order that no disk decides."""
    for name in ("b.yaml", "a.yml", "C.YAML", "notes.txt", ".hidden.yaml", "yaml", "mkdocs.yml"):
        (tmp_path / name).write_text("a: b\n")
    for folder in ("sub/deep", ".git"):
        (tmp_path / folder).mkdir(parents=True)
        (tmp_path / folder / "x.yaml").write_text("a: b\n")
    names = [path.relative_to(tmp_path).as_posix() for path in find_files(tmp_path)]
    assert names == ["C.YAML", "a.yml", "b.yaml", "sub/deep/x.yaml"]


def test_a_missing_folder_is_an_error_of_the_system(tmp_path: Path) -> None:
    """Nothing is not the same as an empty folder."""
    with pytest.raises(OSError, match="nowhere"):
        find_files(tmp_path / "nowhere")


def test_a_linked_folder_is_not_entered(tmp_path: Path) -> None:
    """A link to a parent would be read for ever, one to elsewhere is not part of the site."""
    (tmp_path / "in").mkdir()
    (tmp_path / "in" / "loop").symlink_to(tmp_path / "in")
    (tmp_path / "in" / "a.yaml").write_text("a: b\n")
    assert [path.name for path in find_files(tmp_path / "in")] == ["a.yaml"]


def said(path: Path, folder: Path) -> str:
    """Read a file that cannot be read, and return what is said about it."""
    flaw = read_file(path, folder)
    assert isinstance(flaw, TextFlaw)
    assert (flaw.rule, flaw.mark.line, flaw.mark.column) == ("unreadable-file", 1, 1)
    assert flaw.mend
    return flaw.message


def test_a_link_within_the_folder_is_read_and_one_out_of_it_is_not(tmp_path: Path) -> None:
    """What a link leads to must lie in the folder too."""
    folder = tmp_path / "in"
    folder.mkdir()
    (tmp_path / "secret.yaml").write_text("a: b\n")
    (folder / "real.yaml").write_text("c: d\n")
    (folder / "near.yaml").symlink_to("real.yaml")
    (folder / "far.yaml").symlink_to(tmp_path / "secret.yaml")
    (folder / "gone.yaml").symlink_to("nowhere.yaml")
    (folder / "round.yaml").symlink_to("round.yaml")
    assert read_file(folder / "near.yaml", folder) == b"c: d\n"
    assert "outside of the folder" in said(folder / "far.yaml", folder)
    assert "not an ordinary file" in said(folder / "gone.yaml", folder)
    assert said(folder / "round.yaml", folder)


def test_what_is_no_ordinary_file_is_not_waited_for(tmp_path: Path) -> None:
    """A pipe would keep a reader waiting for ever, and a folder may be called x.yaml too."""
    os.mkfifo(tmp_path / "pipe.yaml")
    (tmp_path / "folder.yaml").mkdir()
    for path in (tmp_path / "pipe.yaml", tmp_path / "folder.yaml"):
        assert "not an ordinary file" in said(path, tmp_path)


def test_only_one_byte_too_many_is_read_of_a_large_file(tmp_path: Path) -> None:
    """Enough to say that it is too large, whatever its size."""
    path = tmp_path / "large.yaml"
    with path.open("wb") as file:
        file.truncate(10 * 1024 * 1024)
    assert read_file(path, tmp_path) == b"\0" * (MOST_BYTES + 1)
