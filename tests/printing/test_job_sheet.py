"""A job's sheet says on paper what its page says, and can be read, bound and written on."""

from __future__ import annotations

from functools import cache
from itertools import pairwise
from pathlib import Path

import pytest

from pullcord.analysis.job.read import read_job_report
from pullcord.pages.job_page import JobParts, job_parts
from pullcord.printing.output import print_sheets
from pullcord.printing.paper import PaperName, upright
from pullcord.printing.press import Press, UnknownNameError, read_press, subject_named
from pullcord.project import Project, load_project
from tests.outside.test_paper_pdf import nodes, root_of, walk
from tests.printing.sheets import (
    BUILT,
    ROOT,
    SETTINGS,
    Printed,
    margin_faults,
    read,
    squeezed,
    text_colours,
)

JOBS = ("bullace-tiller", "damson-spring", "medlar-pump", "quince-lights")


@cache
def project() -> Project:
    """Read the shipped procedures and the demo with its jobs."""
    demo = ROOT / "demo"
    return load_project([ROOT / "procedures", demo / "machines", demo / "jobs"])


@cache
def job_press(paper: PaperName = "a4") -> Press:
    """Return what the sheets are made with."""
    return read_press(project(), SETTINGS, paper)


@cache
def sheets(name: str, paper: PaperName = "a4") -> Printed:
    """Print a job once, and read it back."""
    return read(print_sheets(job_press(paper), "job", name))


def parts(name: str) -> JobParts:
    """Return what the job's page says."""
    press = job_press()
    read_log = press.project.jobs[name]
    report = read_job_report(read_log.job, press.project.library)
    subject = subject_named(press, read_log.job.machine)
    return job_parts(press.kit, press.project, read_log, report, subject)


@pytest.mark.parametrize("name", JOBS)
def test_the_sheet_says_what_the_page_says(name: str) -> None:
    """How it was left before all else, then checks, stages, money, parts, readings and the log."""
    held = parts(name)
    said = [held.left.box.word, held.left.says, *held.left.before]
    said += [text for check in held.next.checks for text in (check.title, check.facts, check.why)]
    said += [text for one in held.stages.stages for text in (one.title, one.proof, one.why)]
    said += [
        *held.next.first,
        held.parts.first,
        held.money.why,
        *(amount for _, amount, _ in held.money.facts),
    ]
    wants = [want for group in held.parts.groups for want in group.wanted]
    said += [text for want in wants for text in (want.title, want.price, want.why, *want.facts)]
    said += [text for one in held.stages.proofs for text in (one.title, one.cost, one.why)]
    for one in held.series:
        said += [one.title, one.limits, *(f"{each.day}: {each.text}" for each in one.points)]
        said += [one.drift]
    said += [text for each in held.parts.paid for text in (each.title, each.price)]
    said += [held.parts.total if held.parts.paid else job_press().kit.job["parts_none"]]
    for entry in held.log:
        said += [entry.date, entry.title, *entry.did, *entry.lines, *entry.note, entry.photo_path]
    text = sheets(name).text
    assert [words for words in said if squeezed(words) not in text] == []
    places = [text.index(squeezed(words)) for words in (held.left.says, held.stages.count)]
    assert places == sorted(places)


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("name", ["damson-spring", "quince-lights"])
def test_the_sheet_can_be_read_and_bound(name: str, paper: PaperName) -> None:
    """Type of 7 points and more, nothing where the holes are punched, the paper's own size."""
    printed = sheets(name, paper)
    sizes = [size for sheet in printed.sheets for size in sheet.sizes_pt]
    assert min(sizes) >= 6.99
    assert text_colours(printed.content) == {(0, 0, 0)}
    assert margin_faults(printed) == []
    size = upright(paper)
    found = {(round(sheet.width_mm, 1), round(sheet.height_mm, 1)) for sheet in printed.sheets}
    assert found == {(size.width_mm, size.height_mm)}


@pytest.mark.parametrize("name", JOBS)
def test_every_sheet_says_what_it_is_and_how_old(name: str) -> None:
    """Title, machine, purpose, day of the build, revisions of log and machine sheet, count."""
    printed, read_log = sheets(name), project().jobs[name]
    machine = project().machines[read_log.job.machine]
    said = [parts(name).title, machine.machine.title, read_log.job.purpose, BUILT]
    said += [read_log.digest, machine.digest, job_press().kit.words["sheet_deferral"]]
    for number, sheet in enumerate(printed.sheets, start=1):
        text = squeezed(sheet.text)
        counted = f"sheet {number} of {len(printed.sheets)}"
        assert [words for words in (*said, counted) if squeezed(words) not in text] == []


def test_it_is_tagged_by_pdf_ua() -> None:
    """ISO 14289-1: every figure has a text in its place (7.3), no heading is skipped (7.4.2)."""
    held = parts("quince-lights")
    tree = root_of(sheets("quince-lights"))["/StructTreeRoot"]
    drawn = [one for one in held.series if len(one.points) > 1]
    texts = [str(node.get("/Alt")) for node in nodes(tree) if node["/S"] == "/Figure"]
    assert len(drawn) == 3
    for one in (*drawn, held.money):
        assert f"{one.plot.title}. {one.plot.summary}" in texts
    levels = [int(tag[2:]) for tag in walk(tree) if tag[1] == "H"]
    assert levels[0] == 1
    assert all(after - before <= 1 for before, after in pairwise(levels))


def test_an_unknown_job_is_said_with_the_nearest() -> None:
    """A slip of the pen is met with the name that was meant."""
    with pytest.raises(UnknownNameError, match="damson-spring"):
        print_sheets(job_press(), "job", "damson-sprig")


def test_a_sheet_is_the_same_every_time() -> None:
    """The same log gives the same bytes."""
    again = read_press(project(), SETTINGS, "a4")
    assert print_sheets(again, "job", "medlar-pump") == sheets("medlar-pump").content


def test_a_machine_without_a_sheet_has_a_job_sheet(tmp_path: Path) -> None:
    """Its name stands where the title would; nothing of it is invented."""
    log = "job: lost\nmachine: lost-one\ntaken-in: 2026-02-14\npurpose: To run.\nmost: 10\n"
    (tmp_path / "lost.yaml").write_text(log, encoding="utf-8")
    press = read_press(load_project([ROOT / "procedures", tmp_path]), SETTINGS, "a4")
    assert "lost-one:thejob" in read(print_sheets(press, "job", "lost")).text
