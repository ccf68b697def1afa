"""Where a job's log lies."""

from __future__ import annotations

from pathlib import Path

import pytest

from pullcord.site.find_job import UnknownJobError, find_job

SETTINGS = "plugins: [pullcord]\n"
ELSEWHERE = "plugins:\n  - pullcord: {jobs: [logs]}\n"


@pytest.fixture
def shed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Stand in a project with two logs."""
    for name in ("jobs/plough.yaml", "jobs/pump.yml", "logs/cart.yaml", "machines/plough.yaml"):
        path = tmp_path / name
        path.parent.mkdir(exist_ok=True)
        path.write_text("job: x\n", encoding="utf-8")
    (tmp_path / "mkdocs.yml").write_text(SETTINGS, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    return tmp_path


FOUND = {
    "a name": ("plough", "jobs/plough.yaml"),
    "the other ending": ("pump", "jobs/pump.yml"),
    "a path": ("jobs/plough.yaml", "jobs/plough.yaml"),
    "a path beside the project's folders": ("logs/cart.yaml", "logs/cart.yaml"),
}


@pytest.mark.parametrize(("word", "path"), FOUND.values(), ids=FOUND)
def test_a_log_is_found(shed: Path, word: str, path: str) -> None:
    """In the folder of jobs, or where the path says; its project is the one around it."""
    place = find_job(word)
    assert (place.path, place.project) == (Path(path), shed)
    assert place.folder.resolve() == (shed / path).parent


def test_settings_may_name_other_folders(shed: Path) -> None:
    """Then the folder `jobs` is not looked into."""
    (shed / "mkdocs.yml").write_text(ELSEWHERE, encoding="utf-8")
    assert find_job("cart").path == Path("logs/cart.yaml")
    with pytest.raises(UnknownJobError):
        find_job("plough")


def test_the_project_is_found_from_within(shed: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """As long as one stands somewhere in it."""
    monkeypatch.chdir(shed / "machines")
    place = find_job("plough")
    assert (place.path, place.project) == (shed / "jobs" / "plough.yaml", shed)


def test_without_settings_the_present_folder_is_the_project(shed: Path) -> None:
    """A folder `jobs` is enough."""
    (shed / "mkdocs.yml").unlink()
    assert find_job("plough").project == shed


UNKNOWN = {
    "a slip": ("plouhg", "did you mean `plough`?"),
    "nothing like it": ("zebra", "there are: `plough`, `pump`"),
    "a path that is not there": ("jobs/zebra.yaml", "there is no file jobs/zebra.yaml"),
    "a folder": ("jobs/", "there is no file jobs"),
    "another kind of file": ("./mkdocs.txt", "no YAML file"),
    "out of the folder": ("../plough", "there is no file"),
}


@pytest.mark.parametrize(("word", "said"), UNKNOWN.values(), ids=UNKNOWN)
def test_what_is_not_there_is_told(shed: Path, word: str, said: str) -> None:
    """With the nearest name, or all of them."""
    (shed / "mkdocs.txt").touch()
    with pytest.raises(UnknownJobError) as told:
        find_job(word)
    assert said in str(told.value)


def test_before_the_first_log(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """It says how to begin one."""
    monkeypatch.chdir(tmp_path)
    with pytest.raises(UnknownJobError, match="no log yet in jobs\n`pullcord new job NAME` begins"):
        find_job("plough")
