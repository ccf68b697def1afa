"""A site is replaced whole or not at all."""

from __future__ import annotations

import os
import shutil
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path
from types import FrameType
from typing import Any

import pytest

from pullcord.errors import SiteError
from pullcord.site import beside as beside_file
from pullcord.site import exchange as exchange_file
from pullcord.site.beside import Beside, claim, discard, swap
from pullcord.site.exchange import exchange


def write_site(folder: Path, text: str) -> Path:
    """Write a site of one page."""
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "index.html").write_text(text, encoding="utf-8")
    return folder


def read_site(folder: Path) -> dict[str, str]:
    """Return every file below a folder with its text."""
    files = (path for path in sorted(folder.rglob("*")) if path.is_file())
    return {path.relative_to(folder).as_posix(): path.read_text("utf-8") for path in files}


@pytest.fixture
def site(tmp_path: Path) -> Path:
    """Give the folder of a last good site."""
    return write_site(tmp_path / "site", "old")


def test_first_site(tmp_path: Path) -> None:
    """Where there was no site, folders above it are made and nothing is left beside it."""
    beside = claim(tmp_path / "shed" / "site")
    write_site(beside.new, "new")
    swap(beside)
    assert read_site(tmp_path) == {"shed/site/index.html": "new"}
    assert os.listdir(tmp_path / "shed") == ["site"]


def test_old_site_stands_until_the_swap(site: Path) -> None:
    """While the new site is being built, readers see the whole old one; then the whole new one."""
    write_site(site / "gone", "only in the old one")
    beside = claim(site)
    write_site(beside.new, "new")
    assert read_site(site) == {"index.html": "old", "gone/index.html": "only in the old one"}
    swap(beside)
    assert read_site(site) == {"index.html": "new"}
    assert os.listdir(site.parent) == ["site"]


def test_discard_leaves_the_old_site(site: Path) -> None:
    """A build given up leaves the old site and nothing else; giving up twice does no harm."""
    beside = claim(site)
    write_site(beside.new, "half")
    discard(beside)
    discard(beside)
    assert read_site(site.parent) == {"site/index.html": "old"}
    assert os.listdir(site.parent) == ["site"]


def test_second_build_at_once_is_refused(site: Path) -> None:
    """Only one build at a time may work on a site; the first is not disturbed by the second."""
    first = claim(site)
    write_site(first.new, "first")
    with pytest.raises(SiteError, match="being built by another run"):
        claim(site)
    swap(first)
    assert read_site(site) == {"index.html": "first"}
    discard(claim(site))


@pytest.mark.parametrize(
    ("left", "stands"),
    [
        pytest.param({"site": "old", "new": "half"}, "old", id="killed while building"),
        pytest.param({"old": "old", "new": "whole"}, "old", id="killed between two renames"),
        pytest.param({"site": "new", "old": "old"}, "new", id="killed after the swap"),
    ],
)
def test_leftovers_of_a_killed_build(tmp_path: Path, left: dict[str, str], stands: str) -> None:
    """The next build puts back the last whole site, clears the rest and starts empty."""
    site, holder = tmp_path / "site", tmp_path / ".site.building"
    places = {"site": site, "new": holder / "new", "old": holder / "old"}
    holder.mkdir()
    (holder / "lock").touch()
    for name, text in left.items():
        write_site(places[name], text)
    beside = claim(site)
    assert read_site(site) == {"index.html": stands}
    assert read_site(beside.new) == {}
    discard(beside)
    assert os.listdir(tmp_path) == ["site"]


OLD = {"index.html": "old", "gone/index.html": "old", ".kept": "a shop's own"}
NEW = {"index.html": "new", "come/index.html": "new", ".kept": "a shop's own"}
WATCHED = {beside_file.__file__, exchange_file.__file__, shutil.__file__}


class Moments:
    """Copies of a folder as it was before each line of a swap that changed something."""

    def __init__(self, watched: Path, copies: Path) -> None:
        """Note which folder is copied where."""
        self.watched, self.copies = watched, copies
        self.count = 0
        self._last: list[tuple[str, float]] = []

    def look(self, frame: FrameType, event: str, argument: object) -> Any:
        """Be called by the interpreter before each line; a kill would leave what is there then."""
        if frame.f_code.co_filename not in WATCHED:
            return None
        seen = sorted((str(p), p.lstat().st_ino) for p in self.watched.rglob("*"))
        if seen != self._last:
            self._last = seen
            shutil.copytree(self.watched, self.copies / str(self.count))
            self.count += 1
        return self.look

    def of_a_swap(self) -> list[Path]:
        """Build a site anew, and return the copies."""
        site = self.watched / "site"
        for name, text in OLD.items():
            write_text(site / name, text)
        beside = claim(site)
        for name, text in NEW.items():
            if name != ".kept":
                write_text(beside.new / name, text)
        before = sys.gettrace()
        sys.settrace(self.look)
        try:
            swap(beside)
        finally:
            sys.settrace(before)
        assert read_site(self.watched) == {f"site/{name}": text for name, text in NEW.items()}
        return [self.copies / str(number) for number in range(self.count)]


def write_text(path: Path, text: str) -> None:
    """Write a file and the folders above it."""
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, encoding="utf-8")


@pytest.fixture
def moments(tmp_path: Path) -> Moments:
    """Give an empty folder to be watched."""
    (tmp_path / "shed").mkdir()
    return Moments(tmp_path / "shed", tmp_path / "copies")


def test_there_is_a_whole_site_at_every_moment(moments: Moments) -> None:
    """Killed before any line of the swap, or read then, the site is the old one or the new one."""
    copies = moments.of_a_swap()
    sites = [read_site(copy / "site") for copy in copies]
    assert all(site in (OLD, NEW) for site in sites)
    assert OLD in sites
    assert len(copies) > 5
    for copy in copies:
        discard(claim(copy / "site"))
        assert os.listdir(copy) == ["site"]


def test_without_an_exchange_the_next_build_has_a_whole_site(
    moments: Moments, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Where folders cannot change places, a kill between two renames is put right."""
    monkeypatch.setattr(beside_file, "exchange", lambda one, other: False)
    copies = moments.of_a_swap()
    assert [copy for copy in copies if not (copy / "site").exists()]
    for copy in copies:
        site = copy / "site"
        assert not site.exists() or read_site(site) in (OLD, NEW)
        discard(claim(site))
        assert read_site(site) in (OLD, NEW)
        assert os.listdir(copy) == ["site"]


def test_interrupted_between_two_renames(site: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Whoever presses Ctrl+C in that moment finds the old site where it was."""

    def rename(self: Path, target: Path) -> Path:
        if self.name == "new":
            raise KeyboardInterrupt
        return Path(shutil.move(self, target))

    monkeypatch.setattr(beside_file, "exchange", lambda one, other: False)
    beside = claim(site)
    monkeypatch.setattr(Path, "rename", rename)
    with pytest.raises(KeyboardInterrupt):
        swap(beside)
    assert read_site(site.parent) == {"site/index.html": "old"}
    assert os.listdir(site.parent) == ["site"]


def test_exchange_says_what_is_wrong(tmp_path: Path) -> None:
    """Two folders change places; where one is missing nothing moves, and the error names it."""
    one, other = write_site(tmp_path / "one", "1"), write_site(tmp_path / "other", "2")
    if exchange(one, other):
        assert (read_site(one), read_site(other)) == ({"index.html": "2"}, {"index.html": "1"})
        with pytest.raises(FileNotFoundError, match="nowhere"):
            exchange(one, tmp_path / "nowhere")
    assert {*read_site(one).values(), *read_site(other).values()} == {"1", "2"}


def test_the_place_is_cleared_away_while_another_claims_it(
    site: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Whoever comes in the moment in which a run ends is told to try again, in the same words."""
    mkdir = Path.mkdir

    def gone_again(self: Path, *given: Any, **options: Any) -> None:
        mkdir(self, *given, **options)
        if self.name == ".site.building":
            self.rmdir()

    monkeypatch.setattr(Path, "mkdir", gone_again)
    with pytest.raises(SiteError, match="then build again"):
        claim(site)
    assert read_site(site.parent) == {"site/index.html": "old"}


def test_failed_swap_puts_the_old_site_back(site: Path) -> None:
    """When the new site cannot be moved in, the old one is there again and the words are plain."""
    beside = claim(site)
    beside.new.rmdir()
    with pytest.raises(SiteError, match=r"cannot be written to .*site"):
        swap(Beside(beside.final, beside.lock))
    assert read_site(site.parent) == {"site/index.html": "old"}
    assert os.listdir(site.parent) == ["site"]


def test_link_to_a_site_stays_a_link(tmp_path: Path) -> None:
    """A symbolic link keeps pointing at the place where the site is."""
    real = write_site(tmp_path / "disk" / "shed", "old")
    link = tmp_path / "site"
    link.symlink_to(real)
    beside = claim(link)
    write_site(beside.new, "new")
    swap(beside)
    assert link.is_symlink()
    assert read_site(real) == {"index.html": "new"}


def test_hidden_files_are_taken_along(site: Path) -> None:
    """What a shop keeps under a name with a dot survives, as in any MkDocs build."""
    (site / ".nojekyll").write_text("", encoding="utf-8")
    write_site(site / ".well-known", "kept")
    beside = claim(site)
    write_site(beside.new, "new")
    swap(beside)
    assert read_site(site) == {
        ".nojekyll": "", ".well-known/index.html": "kept", "index.html": "new"
    }  # fmt: skip


@pytest.mark.parametrize("kind", ["folder", "file"])
def test_what_is_no_site_is_never_replaced(tmp_path: Path, kind: str) -> None:
    """Naming the wrong folder must not cost anybody its content."""
    place = tmp_path / "pictures"
    if kind == "folder":
        place.mkdir()
    target = place / "pump.jpg" if kind == "folder" else place
    target.write_text("a photograph", encoding="utf-8")
    with pytest.raises(SiteError, match="not a built site"):
        claim(place)
    assert target.read_text("utf-8") == "a photograph"
    assert os.listdir(tmp_path) == ["pictures"]


def test_folder_that_cannot_exist(tmp_path: Path) -> None:
    """A file where a folder is needed gives a plain message."""
    (tmp_path / "file").write_text("", encoding="utf-8")
    with pytest.raises(SiteError, match="cannot be written to"):
        claim(tmp_path / "file" / "site")


@pytest.mark.parametrize("name", ["a\0b", "a\ud800b"], ids=["NUL", "half a letter"])
def test_name_no_disk_takes(tmp_path: Path, name: str) -> None:
    """It is said in plain words, and the name in letters that can be printed."""
    with pytest.raises(SiteError, match="no disk takes") as told:
        claim(tmp_path / name)
    assert str(told.value).isprintable()


@pytest.fixture
def read_only_site() -> Iterator[Path]:
    """Give a site in a folder that this process may read and not write, even when run as root."""
    with tempfile.TemporaryDirectory() as folder:
        site = write_site(Path(folder) / "site", "old")
        Path(folder).chmod(0o555)
        site.chmod(0o555)
        if os.geteuid() == 0:
            os.seteuid(65534)
            try:
                yield site
            finally:
                os.seteuid(0)
        else:
            yield site
        Path(folder).chmod(0o755)
        site.chmod(0o755)


def test_read_only_place(read_only_site: Path) -> None:
    """Where nothing may be written, the message says so and the site stays."""
    with pytest.raises(SiteError, match="Permission denied"):
        claim(read_only_site)
    assert read_site(read_only_site) == {"index.html": "old"}
    assert os.listdir(read_only_site.parent) == ["site"]
