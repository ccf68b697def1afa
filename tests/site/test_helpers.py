"""A large build on several cores: the same site, whatever becomes of the helpers."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from signal import SIGTERM

import pytest
from mkdocs.config import load_config

from pullcord.errors import PullcordError
from pullcord.printing import typeset
from pullcord.site import helpers
from pullcord.site.helpers import LEAST_SHARE, TASK, Task, make_ahead, missing
from pullcord.site.made import make_site
from pullcord.site.read import ReadSite, read_site
from pullcord.site.share import share_of
from tests.shed import write_files, write_shed

NAMES = ("dark-lamp", "dim-lamp", "hot-lamp", "loud-lamp")


def read(folder: Path, names: tuple[str, ...] = NAMES) -> ReadSite:
    """Write a project and read it."""
    config = load_config(str(write_shed(folder, names)))
    return read_site(config, config.plugins["pullcord"].config)


def made(folder: Path) -> dict[str, bytes]:
    """Return what is made for a written project."""
    config = load_config(str(folder / "mkdocs.yml"))
    site = make_site(config, config.plugins["pullcord"].config)
    pages = {uri: page.html.encode() for uri, page in site.pages.items()}
    return pages | {uri: make() for uri, make in site.later.items()}


def refuse(*_: object) -> None:
    """Stand in for what must not be called."""
    raise AssertionError


@pytest.fixture
def _small_shares(monkeypatch: pytest.MonkeyPatch) -> None:
    """Have two processes share four procedures."""
    monkeypatch.setattr(helpers, "LEAST_SHARE", 2)


@pytest.mark.usefixtures("_small_shares")
def test_all_that_is_costly_is_made_ahead(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """By two processes, half each: no sheet is left to be set, and all are what they would be."""
    ours: list[str] = []
    set_now = typeset._run

    def set_and_tell(files: dict[str, bytes], *given: object) -> bytes:
        ours.append("a sheet")
        return set_now(files, *given)  # type: ignore[arg-type]

    monkeypatch.setattr(typeset, "_run", set_and_tell)
    # A file of the project is no module, though a helper begins in the project's folder.
    monkeypatch.chdir(write_files(tmp_path / "here", {"typst.py": "raise SystemExit"}))
    make_ahead(read(tmp_path / "helped"), NAMES, cores=2)
    here = len(ours)
    kept = set((tmp_path / "helped" / ".cache" / "pullcord").iterdir())
    for make in share_of(read(tmp_path / "helped"), NAMES).later.values():
        make()
    assert set((tmp_path / "helped" / ".cache" / "pullcord").iterdir()) == kept
    helped = made(tmp_path / "helped")
    assert (here > 0, len(ours)) == (True, here)
    read(tmp_path / "alone")
    assert made(tmp_path / "alone") == helped
    assert len(ours) - here == 2 * here


@pytest.mark.usefixtures("_small_shares")
@pytest.mark.parametrize("program", [None, "no such program", "/bin/false"])
def test_a_helper_that_fails_costs_time_only(
    program: str | None, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """What it should have made is made by the build itself."""
    asked: list[Path] = []
    begin = helpers._begin
    monkeypatch.setattr(helpers, "_begin", lambda task: asked.append(task) or begin(task))
    monkeypatch.setattr(helpers, "PYTHON", program)
    make_ahead(read(tmp_path / "helped"), NAMES, cores=2)
    assert len(asked) == 1
    read(tmp_path / "alone")
    assert made(tmp_path / "helped") == made(tmp_path / "alone")


@pytest.mark.usefixtures("_small_shares")
def test_no_helper_outlives_a_build_that_fails(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A mistake in a template ends them, too."""
    begun: list[subprocess.Popen[bytes]] = []

    def begin(_: Path) -> subprocess.Popen[bytes]:
        waiting = [sys.executable, "-c", "import time; time.sleep(60)"]
        begun.append(subprocess.Popen(waiting, stdin=subprocess.PIPE))
        return begun[-1]

    def fail(*_: object) -> None:
        raise PullcordError("a template cannot be used")

    monkeypatch.setattr(helpers, "_begin", begin)
    monkeypatch.setattr(helpers, "make_share", fail)
    with pytest.raises(PullcordError):
        make_ahead(read(tmp_path), NAMES, cores=2)
    assert [process.returncode for process in begun] == [-SIGTERM]


def test_a_helper_ends_with_the_build(tmp_path: Path) -> None:
    """One that is killed closes nothing itself: the system does, and the helper hears of it."""
    names = tuple(f"lamp-{number}" for number in range(60))
    task = tmp_path / "task"
    task.write_bytes(TASK.dump_json(Task(read(tmp_path / "shed", names).inputs, names)))
    helper = helpers._begin(task)
    assert helper.stdin
    helper.stdin.close()
    assert helper.wait(timeout=60) not in (None, 0)


def test_how_much_is_missing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """All of a library that was never built; none of a small one, or where most is kept."""
    many = tuple(f"lamp-{number}" for number in range(2 * LEAST_SHARE))
    site = read(tmp_path / "many", many)
    assert missing(site, many) == len(many)
    assert missing(site, many[1:]) == 0
    monkeypatch.setattr(helpers, "is_kept", lambda order: order.procedure != "lamp-0")
    assert missing(site, many) == 0


@pytest.mark.usefixtures("_small_shares")
def test_a_folder_that_keeps_nothing_gets_no_helper(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """All they made would be made again."""
    (tmp_path / "file").write_text("no folder", encoding="utf-8")
    site = read(tmp_path)
    settings = replace(site.inputs.settings, cache_folder=tmp_path / "file" / "cache")
    site = replace(site, inputs=replace(site.inputs, settings=settings))
    monkeypatch.setattr(helpers, "make_share", refuse)
    make_ahead(site, NAMES, cores=2)


@pytest.mark.usefixtures("_small_shares")
@pytest.mark.parametrize(
    ("cores", "before"),
    [(1, lambda _: None), (2, made)],
    ids=["a single core", "everything is kept"],
)
def test_no_helper_is_called_for_nothing(
    cores: int, before: Callable[[Path], object], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Its start would cost more than it saves."""
    site = read(tmp_path)
    before(tmp_path)
    monkeypatch.setattr(helpers, "make_share", refuse)
    make_ahead(site, NAMES, cores)
