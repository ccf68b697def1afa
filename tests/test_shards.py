"""A site joined of its shards is the site one build makes, byte for byte."""

from __future__ import annotations

import shutil
from collections.abc import Iterator, Sequence
from pathlib import Path

import pytest

from pullcord.errors import SiteError
from pullcord.plugin import build_shard, build_site, join_site
from pullcord.site.shards.number import Shard
from tests.shed import procedure, write_shed
from tests.site.shards.shed import OWN_NAV, write_project
from tests.test_plugin import site_bytes

DAY = "1772323200"


@pytest.fixture(autouse=True, scope="module")
def same_day() -> Iterator[None]:
    """Build everything on one day, also around midnight."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("SOURCE_DATE_EPOCH", DAY)
        yield


def build_shards(config: Path, count: int) -> list[Path]:
    """Build every shard of a project."""
    shards = (Shard(number, count) for number in range(1, count + 1))
    return [build_shard(config, None, strict=False, shard=shard) for shard in shards]


def joined(config: Path, shards: Sequence[Path]) -> dict[str, bytes]:
    """Join shards, and give every file of the site."""
    return site_bytes(join_site(config, None, strict=False, shards=shards))


@pytest.fixture(scope="module")
def whole(tmp_path_factory: pytest.TempPathFactory) -> dict[str, bytes]:
    """Give every file of a site that was built in one go."""
    config = write_project(tmp_path_factory.mktemp("whole") / "shed")
    return site_bytes(build_site(config, None, strict=False))


@pytest.fixture(scope="module")
def halves(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Build two shards of the same project elsewhere, and give its folder."""
    config = write_project(tmp_path_factory.mktemp("halves") / "shed")
    build_shards(config, 2)
    return config.parent


@pytest.fixture
def shed(halves: Path, tmp_path: Path) -> Path:
    """Give a copy of the project with its shards."""
    return Path(shutil.copytree(halves, tmp_path / "shed"))


@pytest.mark.parametrize("count", [1, 3])
def test_joined_is_whole(count: int, whole: dict[str, bytes], tmp_path: Path) -> None:
    """Every file, whatever the number of shards, in another folder and with nothing kept."""
    config = write_project(tmp_path / "shed")
    assert joined(config, build_shards(config, count)) == whole


def test_the_order_of_the_folders_does_not_matter(shed: Path, whole: dict[str, bytes]) -> None:
    """Two shards named the wrong way round make the same site, and can make it again."""
    shards = [shed / "site.shard-2-of-2", shed / "site.shard-1-of-2"]
    assert joined(shed / "mkdocs.yml", shards) == whole
    assert joined(shed / "mkdocs.yml", shards[::-1]) == whole


def test_a_navigation_of_ones_own(tmp_path: Path) -> None:
    """Titles of pages that another shard makes, and MkDocs's map of the site, come out alike."""
    one, other = (write_project(tmp_path / name, OWN_NAV) for name in ("one", "other"))
    whole = site_bytes(build_site(one, None, strict=False))
    assert "sitemap.xml" in whole
    assert joined(other, build_shards(other, 2)) == whole


def test_a_shard_without_procedures(tmp_path: Path) -> None:
    """One procedure in three shards leaves two of them empty, and the site whole."""
    one, other = (write_shed(tmp_path / name) for name in ("one", "other"))
    shards = build_shards(other, 3)
    sizes = sorted(len(site_bytes(shard)) for shard in shards)
    assert sizes[0] == sizes[1] < sizes[2]
    assert joined(other, shards) == site_bytes(build_site(one, None, strict=False))


def test_a_shard_holds_only_its_own(halves: Path, whole: dict[str, bytes]) -> None:
    """The files of the shards are files of the site, each in one shard, with nothing else."""
    files = [
        {name for name in site_bytes(halves / f"site.shard-{number}-of-2") if "/" in name}
        for number in (1, 2)
    ]
    assert files[0]
    assert files[1]
    assert files[0].isdisjoint(files[1])
    assert files[0] | files[1] < whole.keys()
    rest = whole.keys() - files[0] - files[1]
    assert {name for name in rest if name.startswith(("procedures/", "one-file/"))} == set()


def test_a_shard_is_built_again_in_its_place(shed: Path) -> None:
    """A second run replaces the first one's folder with the same bytes."""
    before = site_bytes(shed / "site.shard-1-of-2")
    again = build_shard(shed / "mkdocs.yml", None, strict=False, shard=Shard(1, 2))
    assert again == shed / "site.shard-1-of-2"
    assert site_bytes(again) == before


def refusal(shed: Path, *shards: str) -> str:
    """Return why a join of these shards is refused."""
    with pytest.raises(SiteError) as caught:
        join_site(shed / "mkdocs.yml", None, strict=False, shards=[shed / name for name in shards])
    assert not (shed / "site").exists()
    return str(caught.value)


ONE, TWO = "site.shard-1-of-2", "site.shard-2-of-2"


def test_a_missing_shard_is_named(shed: Path) -> None:
    """With the command that makes it."""
    why = refusal(shed, ONE)
    assert "of 2 shards these are missing: 2/2" in why
    assert "pullcord build --shard 2/2" in why


def test_a_shard_given_twice_is_named(shed: Path) -> None:
    """Also when it lies in two folders."""
    shutil.copytree(shed / ONE, shed / "copy")
    why = refusal(shed, ONE, "copy", TWO)
    assert f"{shed / ONE} and {shed / 'copy'} are both shard 1/2" in why


def test_shards_of_two_builds(shed: Path) -> None:
    """One of two and one of three are no whole, and each is named."""
    third = build_shard(shed / "mkdocs.yml", None, strict=False, shard=Shard(1, 3))
    why = refusal(shed, TWO, third.name)
    assert f"{third} is shard 1/3" in why
    assert f"{shed / TWO} is shard 2/2" in why


def test_shards_of_different_files(shed: Path) -> None:
    """A procedure that changed between two shards is not put beside its old hand-overs."""
    path = shed / "procedures" / "dark-lamp.yaml"
    path.write_text(procedure("dark-lamp", "Lamp gone dark"), encoding="utf-8")
    build_shard(shed / "mkdocs.yml", None, strict=False, shard=Shard(2, 2))
    why = refusal(shed, ONE, TWO)
    assert f"{shed / ONE} and {shed / TWO} do not go together" in why
    assert "files that differ in `procedures`: build every shard from the same files" in why


def test_a_change_after_the_shards(shed: Path) -> None:
    """The join reads the library too: what changed since the shards were built is refused."""
    (shed / "docs" / "bench.md").write_text("# Our new bench\n", encoding="utf-8")
    why = refusal(shed, ONE, TWO)
    assert "this run and " in why
    assert "files that differ in `docs`" in why


def test_shards_of_two_days(shed: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Every page says its day, so all shards must have one."""
    monkeypatch.setenv("SOURCE_DATE_EPOCH", str(int(DAY) + 86400))
    why = refusal(shed, ONE, TWO)
    assert "the days 2026-03-02 and 2026-03-01, which every page shows" in why
    assert "set SOURCE_DATE_EPOCH" in why
    assert "templates" not in why


@pytest.mark.parametrize("how", ["cut short", "missing"])
def test_a_folder_that_was_not_copied_whole(shed: Path, how: str) -> None:
    """No page is lost silently on the way from one computer to another."""
    page = next((shed / TWO).rglob("procedures/*.html"))
    if how == "missing":
        page.unlink()
    else:
        page.write_bytes(page.read_bytes()[:1000])
    why = refusal(shed, ONE, TWO)
    assert str(page) in why
    assert "copy the shard's folder again" in why


def test_a_folder_that_is_no_shard(shed: Path) -> None:
    """It is named, with what to name instead."""
    why = refusal(shed, ONE, "docs")
    assert f"{shed / 'docs'} is not a shard" in why
