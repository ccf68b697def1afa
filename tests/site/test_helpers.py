"""A large build on several cores: the same site, whatever becomes of the helpers."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

import pytest
from mkdocs.config import load_config

from pullcord.errors import PullcordError
from pullcord.printing import typeset
from pullcord.site import helpers
from pullcord.site.helpers import LEAST_SHARE, make_ahead, missing
from pullcord.site.made import make_site
from pullcord.site.read import ReadSite, read_site
from tests.shed import write_shed

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
    make_ahead(read(tmp_path / "helped"), NAMES, cores=2)
    here = len(ours)
    helped = made(tmp_path / "helped")
    assert (here > 0, len(ours)) == (True, here)
    read(tmp_path / "alone")
    assert made(tmp_path / "alone") == helped
    assert len(ours) - here == 2 * here


@pytest.mark.usefixtures("_small_shares")
@pytest.mark.parametrize("program", ["no such program", "/bin/false"])
def test_a_helper_that_fails_costs_time_only(
    program: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """What it should have made is made by the build itself."""
    monkeypatch.setattr(helpers, "PYTHON", program)
    make_ahead(read(tmp_path / "helped"), NAMES, cores=2)
    read(tmp_path / "alone")
    assert made(tmp_path / "helped") == made(tmp_path / "alone")


@pytest.mark.usefixtures("_small_shares")
def test_no_helper_outlives_a_build_that_fails(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A mistake in a template ends them, too."""
    told = tmp_path / "told"
    program = tmp_path / "helper"
    program.write_text(f"#!/bin/sh\necho $$ > {told}.part\nmv {told}.part {told}\nexec sleep 60\n")
    program.chmod(0o755)
    monkeypatch.setattr(helpers, "PYTHON", str(program))

    def fail(*_: object) -> None:
        while not told.exists():
            pass
        raise PullcordError("a template cannot be used")

    monkeypatch.setattr(helpers, "make_share", fail)
    with pytest.raises(PullcordError):
        make_ahead(read(tmp_path / "shed"), NAMES, cores=2)
    with pytest.raises(ProcessLookupError):
        os.kill(int(told.read_text()), 0)


def test_how_much_is_missing(tmp_path: Path) -> None:
    """All of a library that was never built, none of one that was, nor of a small one."""
    many = tuple(f"lamp-{number}" for number in range(2 * LEAST_SHARE))
    site = read(tmp_path / "many", many)
    assert missing(site, many) == len(many)
    assert missing(read(tmp_path / "few"), NAMES) == 0


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

    def refuse(*_: object) -> None:
        raise AssertionError

    monkeypatch.setattr(helpers, "make_share", refuse)
    make_ahead(site, NAMES, cores)
