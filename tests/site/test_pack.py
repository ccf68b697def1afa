"""A packed site is whole, the same every time, and survives a stick."""

from __future__ import annotations

import os
import zipfile
from pathlib import Path

import pytest

from pullcord.errors import SiteError
from pullcord.site.pack import pack_site, unsafe_names

FILES = {"index.html": "start", "procedures/no-spark.html": "spark", "assets/a.css": "x" * 999}


@pytest.fixture
def site(tmp_path: Path) -> Path:
    """A small built site."""
    return write_site(tmp_path / "site")


def write_site(folder: Path) -> Path:
    """Write FILES into a folder."""
    for name, text in FILES.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return folder


def test_every_file_is_in_it(site: Path, tmp_path: Path) -> None:
    """Unpacking gives the folder back."""
    with zipfile.ZipFile(pack_site(site, tmp_path / "site.zip")) as pack:
        assert {name: pack.read(f"site/{name}").decode() for name in FILES} == FILES
        assert len(pack.namelist()) == len(FILES)


def test_the_same_site_packs_to_the_same_bytes(site: Path, tmp_path: Path) -> None:
    """Neither the time nor the order of writing shows."""
    first = pack_site(site, tmp_path / "a.zip").read_bytes()
    other = tmp_path / "later" / "site"
    write_site(other)
    os.utime(other / "index.html", (1, 1))
    assert pack_site(other, tmp_path / "b.zip").read_bytes() == first


UNSAFE = {
    "colon": ["a:b.html"],
    "device": ["x/CON.html"],
    "trailing dot": ["name./x.html"],
    "capitals": ["A.html", "a.html"],
    "long": ["x" * 241],
}


@pytest.mark.parametrize("names", UNSAFE.values(), ids=UNSAFE)
def test_unsafe_names_are_told(names: list[str]) -> None:
    """Each name that a stick would lose or mix up is named once."""
    assert len(list(unsafe_names(names))) == 1


def test_safe_names_pass() -> None:
    """Nothing is said of the names Pullcord makes."""
    assert list(unsafe_names(FILES)) == []


def test_a_folder_that_is_no_site_is_refused(tmp_path: Path) -> None:
    """The message says what to do first, and nothing is written."""
    with pytest.raises(SiteError, match="pullcord build"):
        pack_site(tmp_path, tmp_path / "out.zip")
    assert list(tmp_path.iterdir()) == []


def test_a_failed_pack_leaves_the_last_one(site: Path, tmp_path: Path) -> None:
    """A name that cannot be packed costs nothing."""
    target = pack_site(site, tmp_path / "site.zip")
    before = target.read_bytes()
    (site / "AUX.txt").write_text("x", encoding="utf-8")
    with pytest.raises(SiteError):
        pack_site(site, target)
    assert target.read_bytes() == before
