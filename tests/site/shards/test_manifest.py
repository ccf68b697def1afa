"""What a shard says of itself is written, read, and not believed blindly."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from pullcord.errors import SiteError
from pullcord.pages.page import Heading, Page
from pullcord.pages.search.entry import Entry
from pullcord.site.shards.manifest import (
    MANIFEST,
    read_found,
    read_manifest,
    read_pages,
    read_part,
    write_manifest,
)
from pullcord.site.shards.number import Shard
from pullcord.site.shards.stamp import Stamp

STAMP = Stamp({"pullcord": "1.0"}, "2026-03-01", "", {"procedures": "1"})
PAGE = Page("procedures/a.md", "A", "<p>Ω</p>", (Heading("x", "X", 2, (Heading("y", "Y", 3),)),))
FOUND = {"procedures/a.md": (Entry("procedures/a.html#x", "X", "A", "Ω", {"ω": 9}),)}


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """Write a shard of one page."""
    (tmp_path / "procedures").mkdir()
    (tmp_path / "procedures" / "a.html").write_bytes(b"page")
    write_manifest(tmp_path, Shard(1, 2), STAMP, ["procedures/a.html"], [PAGE], FOUND)
    return tmp_path


def test_what_is_written_is_read(folder: Path) -> None:
    """Pages, what is found on them, files and stamp come back as they were."""
    manifest = read_manifest(folder)
    assert (manifest.shard, manifest.stamp) == (Shard(1, 2), STAMP)
    assert read_pages(folder, manifest) == (PAGE,)
    assert read_found(folder, manifest) == FOUND
    assert read_part(folder, manifest, "procedures/a.html") == b"page"


@pytest.mark.parametrize("name", ["shard-pages.json", "shard-found.json"])
def test_what_is_beside_the_pages_is_held_too(folder: Path, name: str) -> None:
    """A changed part is not read as if it were whole."""
    manifest = read_manifest(folder)
    (folder / name).write_bytes(b"[]")
    with pytest.raises(SiteError, match="not as it was written"):
        read_part(folder, manifest, name)


@pytest.mark.parametrize("uri", ["../../outside.html", "/outside.html", "a/../../outside.html"])
def test_no_file_outside_of_the_folder_is_taken(folder: Path, uri: str) -> None:
    """A shard comes from another computer: it may name its own files only."""
    said = json.loads((folder / MANIFEST).read_text("utf-8"))
    said["files"][uri] = "0"
    (folder / MANIFEST).write_text(json.dumps(said), encoding="utf-8")
    with pytest.raises(SiteError, match="names a file outside of its folder"):
        read_manifest(folder)


@pytest.mark.parametrize("text", ["", "{}", "[1]", '{"shard": 1}'])
def test_what_is_no_manifest(folder: Path, text: str) -> None:
    """No input gives a traceback."""
    (folder / MANIFEST).write_text(text, encoding="utf-8")
    with pytest.raises(SiteError, match="is not a shard"):
        read_manifest(folder)
