"""What is read, and of that what is reported on, for the paths somebody names."""

from __future__ import annotations

from pathlib import Path

import pytest

from pullcord.errors import PullcordError
from pullcord.source.choice import choose, choose_side, is_asked
from pullcord.source.places import shipped_procedures

LISTED = "plugins: [pullcord]\n"
NAMED = "plugins:\n  - pullcord:\n      procedures: [ours]\n      machines: [../yard]\n"
OWN_ALONE = "plugins:\n  - pullcord: {library: false, replaces: [no-spark], currency: EUR}\n"

FILES = {
    "shed/mkdocs.yml": LISTED,
    "shed/procedures/a.yaml": "procedure: a\n",
    "shed/machines/b.yaml": "machine: b\n",
    "shed/docs/notes.yaml": "not: ours\n",
    "barn/mkdocs.yml": NAMED,
    "barn/ours/c.yaml": "procedure: c\n",
    "yard/d.yaml": "machine: d\n",
    "byre/mkdocs.yaml": OWN_ALONE,
    "byre/procedures/e.yaml": "procedure: e\n",
    "other/mkdocs.yml": "site_name: no plugin\n",
    "other/f.yaml": "procedure: f\n",
    "empty/mkdocs.yml": "site_name: no plugin\n",
}


@pytest.fixture(autouse=True)
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Stand above some projects and plain folders."""
    for name, text in FILES.items():
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_text(text, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    return tmp_path


LIBRARY = "LIBRARY"
CASES = {
    "a project's folder": (["shed"], [LIBRARY, "shed/procedures", "shed/machines"]),
    "its settings": (["shed/mkdocs.yml"], [LIBRARY, "shed/procedures", "shed/machines"]),
    "folders it names, from where it lies": (["barn"], [LIBRARY, "barn/ours", "barn/../yard"]),
    "the other ending, no library": (["byre"], ["byre/procedures"]),
    "settings without the plugin": (["other"], [LIBRARY, "other"]),
    "two projects": (["byre", "barn"], [LIBRARY, "byre/procedures", "barn/ours", "barn/../yard"]),
    "a project and a file": (["byre", "other/f.yaml"], ["byre/procedures", "other"]),
}


@pytest.mark.parametrize(("paths", "folders"), CASES.values(), ids=CASES)
def test_what_is_read(paths: list[str], folders: list[str]) -> None:
    """A folder whose settings list the plugin is that project; any other is its files."""
    found = choose([Path(path) for path in paths]).folders
    named = [LIBRARY if each == shipped_procedures() else each.as_posix() for each in found]
    assert sorted(named) == sorted(folders)


def test_the_settings_of_a_named_project_count() -> None:
    """What it replaces and where its settings stand, as if one stood in its folder."""
    choice = choose([Path("byre")])
    assert (choice.replaces, choice.settings) == (("no-spark",), Path("byre/mkdocs.yaml"))
    assert choose([Path("other")]).settings is None


def test_a_named_project_is_what_it_is_from_within(monkeypatch: pytest.MonkeyPatch) -> None:
    """Nothing depends on where one stands."""
    named = {each.resolve() for each in choose([Path("barn")]).folders}
    monkeypatch.chdir("barn")
    assert {each.resolve() for each in choose(()).folders} == named
    assert {each.resolve() for each in choose([Path()]).folders} == named


def test_only_what_was_named_is_reported_on() -> None:
    """Of a project, its folders; beside a project, the one file."""
    choice = choose([Path("byre"), Path("other/f.yaml")])
    asked = [name for name in FILES if is_asked(name, choice)]
    assert asked == ["byre/procedures/e.yaml", "other/f.yaml"]


def test_one_side_of_a_comparison_goes_before_its_neighbours() -> None:
    """The first of two files with the same name counts, so what was named stands first."""
    assert choose_side(Path("other/f.yaml")).folders == (
        Path("other/f.yaml"),
        Path("other"),
        shipped_procedures(),
    )
    assert choose_side(Path("other")).folders == (Path("other"), shipped_procedures())
    project = choose_side(Path("shed"))
    assert project.folders == choose([Path("shed")]).folders
    assert project.asked == (Path("shed/procedures"), Path("shed/machines"))


REFUSED = {
    "no YAML but settings": ("empty", "there is no YAML file at empty"),
    "settings without the plugin": ("other/mkdocs.yml", "does not list the plugin `pullcord`"),
}


@pytest.mark.parametrize(("path", "says"), REFUSED.values(), ids=REFUSED)
def test_what_cannot_be_checked_is_said(path: str, says: str) -> None:
    """Settings are never read as if they were a procedure."""
    with pytest.raises(PullcordError, match=says):
        choose([Path(path)])
