"""Where procedures, dates and edit links come from."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

import pytest

from pullcord.errors import SiteError
from pullcord.site.origin import build_date, edit_uris, folders_to_read
from pullcord.source.places import shipped_procedures


@dataclass(frozen=True)
class Chosen:
    """A project's options."""

    procedures: list[str] | None = None
    machines: list[str] | None = None
    jobs: list[str] | None = None
    replaces: tuple[str, ...] = ()
    library: bool = True
    layout_engine: str = "built-in"
    cache: str = ".cache/pullcord"
    templates: tuple[str, ...] = ()
    currency: str = ""


@pytest.mark.parametrize(
    ("epoch", "day"),
    [
        # POSIX: seconds since 1970-01-01T00:00:00Z, every day having 86,400 of them.
        pytest.param("0", "1970-01-01", id="the epoch itself"),
        pytest.param("86399", "1970-01-01", id="last second of the day"),
        pytest.param("86400", "1970-01-02", id="first second of the next"),
        pytest.param("951782400", "2000-02-29", id="leap day (11016 days)"),
    ],
)
def test_build_date_from_the_source(epoch: str, day: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """SOURCE_DATE_EPOCH decides, in UTC wherever the machine stands."""
    monkeypatch.setenv("TZ", "Pacific/Auckland")
    assert build_date({"SOURCE_DATE_EPOCH": epoch}) == day


def test_build_date_from_the_clock() -> None:
    """Without it the day is today."""
    before = datetime.now(UTC).date().isoformat()
    assert before <= build_date({}) <= datetime.now(UTC).date().isoformat()


@pytest.mark.parametrize("epoch", ["", "soon", "1e9", "²", "9" * 20, "9" * 13])
def test_no_date_in_the_source(epoch: str) -> None:
    """What is no number of seconds is said in words, for MkDocs itself stumbles over it."""
    with pytest.raises(SiteError, match="take it out of the environment"):
        build_date({"SOURCE_DATE_EPOCH": epoch})


@pytest.mark.parametrize(
    ("options", "expected"),
    [
        pytest.param(Chosen(), ["LIBRARY", "procedures", "machines", "jobs"], id="all there is"),
        pytest.param(Chosen(library=False), ["procedures", "machines", "jobs"], id="own alone"),
        pytest.param(
            Chosen(["other"], jobs=[]), ["LIBRARY", "other", "machines"], id="a named one"
        ),
        pytest.param(Chosen([], [], []), ["LIBRARY"], id="none wanted"),
        pytest.param(Chosen(["other", "other/../other"], [], []), ["LIBRARY", "other"], id="twice"),
        pytest.param(Chosen([], ["other"], []), ["LIBRARY", "other"], id="named for machines"),
    ],
)
def test_folders_to_read(
    options: Chosen, expected: list[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A project reads the library and the folder beside its settings unless it says otherwise."""
    for name in ("procedures", "machines", "jobs", "other"):
        (tmp_path / name).mkdir()
    monkeypatch.chdir(tmp_path)
    found = folders_to_read(str(tmp_path / "mkdocs.yml"), options)
    named = ["LIBRARY" if folder == shipped_procedures() else folder.name for folder in found]
    assert named == expected


def test_library_is_read_once_by_its_own_project() -> None:
    """Where the project's folder is the library itself, nothing is read twice."""
    root = shipped_procedures().parent
    assert folders_to_read(str(root / "mkdocs.yml"), Chosen()) == (shipped_procedures(),)


def test_library_ships_procedures() -> None:
    """The folder that is read holds the files that were written for it."""
    assert list(shipped_procedures().glob("*.yaml"))


@pytest.mark.parametrize(
    ("source", "expected"),
    [
        pytest.param("repo/shed/procedures/a.yaml", "../procedures/a.yaml", id="beside the pages"),
        pytest.param("repo/library/b.yaml", "../../library/b.yaml", id="in the same repository"),
        pytest.param("elsewhere/c.yaml", None, id="in another place"),
    ],
)
def test_edit_link(source: str, expected: str | None, tmp_path: Path) -> None:
    """The link leads to the file that was written by hand, if it can be edited there."""
    docs = tmp_path / "repo" / "shed" / "docs"
    docs.mkdir(parents=True)
    (tmp_path / "repo" / ".git").mkdir()
    assert edit_uris(str(docs))(tmp_path / source) == expected


def test_page_without_a_source_has_no_edit_link(tmp_path: Path) -> None:
    """A page made from many files is edited in none."""
    assert edit_uris(str(tmp_path))(None) is None
