"""Kept pages: never other than those made anew, and made anew only where something changed."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from pathlib import Path

import pytest

from pullcord.model.job import Job
from pullcord.model.meter import MeterSheet
from pullcord.pages import site_pages, versions
from pullcord.pages.page import Page
from tests.pages.make import BIKE, NO_SPARK, PUMP, SETTINGS, WONT_IDLE, Shelf, shelf
from tests.pages.make import machine as machine_of
from tests.pages.make import procedure as procedure_of

PROCEDURES = ("/no-spark.md", "/wont-idle.md")
FOUND_COIL = {
    "job": "bike-in-may",
    "machine": "old-bike",
    "taken-in": "2026-05-01",
    "purpose": "To carry ladders.",
    "most": "100",
    "log": [
        {"date": "2026-05-02", "procedure": "no-spark", "step": "plug", "answer": "nothing"},
        {"date": "2026-05-02", "procedure": "no-spark", "cause": "coil"},
    ],
}


def project(
    no_spark: str = NO_SPARK,
    wont_idle: str = WONT_IDLE,
    bike: str = BIKE,
    more: tuple[str, ...] = (),
    meter: MeterSheet | None = None,
    jobs: tuple[Mapping[str, object], ...] = (),
) -> Shelf:
    """Make the two procedures, the first of which hands over to the second, and a machine."""
    procedures = (procedure_of(no_spark), procedure_of(wont_idle))
    made = shelf(*procedures, machines=tuple(map(machine_of, (bike, *more))), meter=meter)
    logs = {str(job["job"]): Job.model_validate(job) for job in jobs}
    return replace(made, library=made.library.model_copy(update={"jobs": logs}))


def pages(given: Shelf, folder: Path | None, **settings: object) -> dict[str, Page]:
    """Make the procedures' pages, general, for machines and for authors, by address."""
    decided = replace(SETTINGS, cache_folder=folder, **settings)
    made = {page.src_uri: page for page in site_pages(given, decided)}
    return {uri: page for uri, page in made.items() if uri.endswith(PROCEDURES)}


CHANGES: Mapping[str, Callable[[], Shelf]] = {
    "nothing": project,
    "a step": lambda: project(NO_SPARK.replace("Look at the leads.", "Feel the leads.")),
    "odds": lambda: project(NO_SPARK.replace("odds: 6", "odds: 60")),
    "what it hands over to": lambda: project(
        wont_idle=WONT_IDLE.replace("title: Will not idle", "title: Dies at idle")
    ),
    "which machines that fits": lambda: project(
        wont_idle=WONT_IDLE.replace("start: jet", "fits: {strokes: four}\nstart: jet")
    ),
    "what it leaves behind": lambda: project(
        NO_SPARK.replace("    needs: meter\n", "    needs: meter\n    fits: test-lead\n")
    ),
    "a machine's figure": lambda: project(bike=BIKE.replace("225-275 ohm", "235-265 ohm")),
    "one machine more": lambda: project(more=(PUMP,)),
    "the meter": lambda: project(
        meter=MeterSheet.model_validate(
            {
                "title": "A better one",
                "leads": "0.1 ohm",
                "ranges": [{"up-to": "2 kohm", "step": "0.1 ohm", "percent": "0.1", "digits": "1"}],
            }
        )
    ),
    "what the shop has found": lambda: project(jobs=(FOUND_COIL,)),
}


@pytest.mark.parametrize("change", CHANGES.values(), ids=CHANGES)
def test_what_was_kept_is_what_would_be_made(tmp_path: Path, change: Callable[[], Shelf]) -> None:
    """Whatever changed since, pages from a full cache are those made without one."""
    pages(project(), tmp_path)
    assert pages(change(), tmp_path) == pages(change(), None)


@pytest.mark.parametrize("change", [c for name, c in CHANGES.items() if name != "nothing"])
def test_each_of_these_changes_shows(change: Callable[[], Shelf]) -> None:
    """The cases above are no empty ones: every change is seen on some procedure's page."""
    assert pages(change(), None) != pages(project(), None)


SETTING = {
    "the money": {"currency": "EUR"},
    "the home page's place": {"home_uri": "start.md"},
}


@pytest.mark.parametrize("setting", SETTING.values(), ids=SETTING)
def test_a_setting_makes_other_pages(tmp_path: Path, setting: Mapping[str, object]) -> None:
    """What a project decides is on its pages at once."""
    pages(project(), tmp_path)
    made = pages(project(), tmp_path, **setting)
    assert made == pages(project(), None, **setting)
    assert made != pages(project(), tmp_path)


@pytest.mark.parametrize("setting", [{"build_date": "2026-03-02"}, {"revision": "fffffff"}])
def test_another_day_or_revision_makes_no_other_pages(setting: Mapping[str, object]) -> None:
    """Pages are dated when they are finished, so what is kept holds for as long as it is right."""
    assert pages(project(), None, **setting) == pages(project(), None)


def test_a_template_or_a_text_of_the_projects_own_makes_other_pages(tmp_path: Path) -> None:
    """A file that is put into a template folder, and one that is changed there, show at once."""
    folder = tmp_path / "own"
    (folder / "texts").mkdir(parents=True)
    kept: dict[str, object] = {"template_dirs": (folder,)}
    pages(project(), tmp_path / "cache", **kept)
    for text in ("Go on", "And on"):
        (folder / "texts" / "words.yaml").write_text(f"go_on: {text}\n", encoding="utf-8")
        made = pages(project(), tmp_path / "cache", **kept)
        assert made == pages(project(), None, **kept)
        assert text in made["procedures/no-spark.md"].html


def test_only_what_changed_is_made_anew(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A procedure that nothing leads to and nothing changed at is not made again."""
    pages(project(), tmp_path)
    made: list[str] = []
    make = versions.procedure_page

    def counted(kit, read, posts, *rest):
        made.append(posts.uri)
        return make(kit, read, posts, *rest)

    monkeypatch.setattr(versions, "procedure_page", counted)
    pages(project(NO_SPARK.replace("Look at the leads.", "Feel the leads.")), tmp_path)
    assert made == ["procedures/no-spark.md", "machines/old-bike/no-spark.md"]


def test_a_page_knows_its_file_wherever_it_was_kept_from(tmp_path: Path) -> None:
    """The link to the source leads to where the file lies now."""
    pages(project(), tmp_path)
    here = project()
    moved = {n: replace(read, path=Path("elsewhere") / read.path) for n, read in here.files.items()}
    made = pages(replace(here, files=moved), tmp_path)
    assert made["procedures/no-spark.md"].source == Path("elsewhere/procedures/no-spark.yaml")
