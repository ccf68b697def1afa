"""What must hold for any bytes: our own errors or findings, and nothing else; soon, and in bounds.

Each target takes the bytes of one input, returns when the property holds, and raises when not.
"""

from __future__ import annotations

import os
import re
import tempfile
from collections.abc import Callable, Iterable, Mapping
from contextlib import ExitStack, suppress
from decimal import Decimal
from functools import cache
from pathlib import Path
from unittest.mock import patch
from zlib import crc32

from mkdocs.config import load_config
from mkdocs.exceptions import Abort, ConfigurationError, PluginError

from pullcord.analysis.job.read import read_job_report
from pullcord.finding import Finding
from pullcord.model.job import Job
from pullcord.model.machine import Machine
from pullcord.model.meter import MeterSheet
from pullcord.model.parse import parse_record
from pullcord.model.procedure import Library, Procedure, Reading
from pullcord.model.quantity import QUANTITIES, Quantity
from pullcord.model.shared import Shared
from pullcord.model.stage import StageList
from pullcord.model.taking import take_walk
from pullcord.model.walk_record import WalkRecord
from pullcord.readings import (
    ReadingError,
    check_cover,
    for_machine,
    limits_both,
    parse_amount,
    parse_limits,
    parse_meter,
    shares_of,
)
from pullcord.readings.answers import fault_words
from pullcord.readings.limits import Limits
from pullcord.rules.document import locate, model_of, read_document
from pullcord.rules.run import check_job, check_library
from pullcord.rules.show import show_finding
from pullcord.site import origin
from pullcord.site.made import Made
from pullcord.site.report import our_error
from pullcord.source.append import NewItem, NoPlaceError, add_items
from pullcord.source.decode import UNSEEN
from pullcord.source.flaw import MOST_FLAWS
from pullcord.source.settings import read_folder_settings
from pullcord.source.tree import read_tree
from tests.fuzz.beside import FILES, JOB, library_of, read_all

Target = Callable[[bytes], None]
NAME = "fuzz.yaml"
BESIDE = {name: text.encode() for name, text in FILES.items()}


def hold_loader(raw: bytes) -> None:
    """A file of any kind is read, or refused with findings that point into it."""
    documents = read_all({NAME: raw})
    library = library_of(documents)
    findings = check_library(
        documents[Procedure],
        library,
        documents[Machine],
        documents[StageList],
        documents[Job],
        documents[Shared],
    )
    (document,) = (each for kind in documents.values() for each in kind)
    assert findings or document.record is not None
    hold_findings(findings, raw)


def hold_findings(findings: Iterable[Finding], raw: bytes) -> None:
    """Every finding says something, at a place that is there, and can be shown on a terminal."""
    count = raw.decode("utf-8", "replace").replace("\r\n", "\n").replace("\r", "\n").count("\n")
    listed = tuple(findings)
    assert len(listed) <= 20 * MOST_FLAWS
    for finding in listed:
        assert finding.rule
        assert finding.message
        assert 1 <= finding.line <= count + 1
        assert finding.column >= 1
    for finding in listed[:20]:
        assert not UNSEEN.search(show_finding(finding, raw).replace("\n", ""))


def hold_limits(raw: bytes) -> None:
    """Limits, amounts and answers are read or refused with a reason; what is read can be said.

    An input is a line each: limits, a measured quantity, then answers.
    """
    first, *rest = raw.decode("utf-8", "replace").split("\n")
    with suppress(ReadingError):
        _say(parse_limits(first))
    with suppress(ReadingError):
        assert str(parse_amount(first))
    if rest:
        _hold_answers(first, _quantity(rest[0]), tuple(dict.fromkeys(rest[1:9])))


def _say(limits: Limits) -> None:
    assert not limits.interval.is_empty
    assert limits.words
    assert limits.short
    assert limits_both(limits)


def _quantity(word: str) -> Quantity:
    return next((each for each in QUANTITIES if each == word), "resistance")


def _hold_answers(text: str, quantity: Quantity, answers: tuple[str, ...]) -> None:
    reading = parse_record(
        Reading,
        {"quantity": quantity, "at": "plug.lead", "general": text, "source": "common practice"},
    )
    if isinstance(reading, Reading):
        for band in for_machine(reading, answers, None, _meter()).bands:
            assert band.words
    with suppress(ReadingError):
        limits = parse_limits(text, quantity)
        _say(limits)
        for fault in check_cover(shares_of(answers, limits, quantity), quantity):
            assert fault_words(fault, limits.unit)


def hold_log(raw: bytes) -> None:
    """A job log, or a saved walk, is read, checked, reported on and written to, or refused."""
    if re.search(rb"^walk:", raw, re.MULTILINE):
        _hold_walk(raw)
        return
    document = read_document("jobs/plough-autumn.yaml", raw, Job)
    job = document.record
    if job is None:
        found = locate(document, ())
        assert found
        hold_findings(found, raw)
        return
    library = _with(job)
    hold_findings(locate(document, check_job(job, library)), raw)
    report = read_job_report(job, library, "EUR")
    assert len(report.newest_first) == len(job.log)
    assert report.money.spent >= Decimal(0)
    with suppress(NoPlaceError):
        new = add_items(raw, "log", [NewItem(len(job.log), {"date": "2999-01-01", "did": "x"})])
        assert read_tree(new).text


def _hold_walk(raw: bytes) -> None:
    document = read_document("walk.json", raw, WalkRecord)
    hold_findings(locate(document, ()), raw)
    if document.record:
        job = read_document("plough.yaml", JOB.encode(), Job).record
        assert job
        taken = take_walk(document.record, job, _library(), "0" * 12, "2026-03-09 19:20")
        assert len(taken.entries) <= 16000


def _with(job: Job) -> Library:
    return _library().model_copy(update={"jobs": {job.job: job}})


@cache
def _library() -> Library:
    documents = read_all(BESIDE)
    assert all(each.record for kind in documents.values() for each in kind)
    return library_of(documents)


@cache
def _meter() -> object:
    return parse_meter(MeterSheet())


def hold_plugin(raw: bytes) -> None:
    """A project with this file stops in MkDocs's words, or makes its pages.

    What names the plugin is the settings; anything else takes the place of the file of its kind.
    """
    with tempfile.TemporaryDirectory(prefix="pullcord-fuzz-") as folder:
        _write_project(Path(folder), raw)
        read_folder_settings(raw)
        # The shipped procedures take half a minute to draw, and are no input; what is printed
        # takes a second, and is made for one in eight.
        with ExitStack() as changed:
            shipped = patch.object(origin, "shipped_procedures", lambda: Path(folder, "shipped"))
            changed.enter_context(shipped)
            if crc32(raw) % 8:
                changed.enter_context(patch.object(Made, "whole", lambda made: made))
            hold_stages_of_a_build(Path(folder))


SETTINGS = b"site_name: Fuzz\ntheme: material\nplugins:\n  - pullcord: {library: false}\n"


def _write_project(folder: Path, raw: bytes) -> None:
    files = {"mkdocs.yml": SETTINGS, "docs/bench.md": b"# Bench\n", **BESIDE}
    files["shipped/no-fuel.yaml"] = BESIDE["procedures/no-prime.yaml"].replace(
        b"procedure: no-prime", b"procedure: no-fuel"
    )
    files[_place_of(raw)] = raw
    for name, content in files.items():
        (folder / name).parent.mkdir(exist_ok=True)
        (folder / name).write_bytes(content)
    (folder / ".cache").symlink_to(_cache().name)


@cache
def _cache() -> tempfile.TemporaryDirectory[str]:
    """Return a folder for what every build would make alike, such as the font of the charts."""
    return tempfile.TemporaryDirectory(prefix="pullcord-fuzz-cache-")


def _place_of(raw: bytes) -> str:
    if re.search(rb"^(plugins|site_name|theme):", raw, re.MULTILINE):
        return "mkdocs.yml"
    return _PLACES.get(model_of(raw), "procedures/no-prime.yaml")


_PLACES = {
    Job: "jobs/plough-autumn.yaml",
    StageList: "procedures/own.yaml",
    Machine: "machines/plough.yaml",
}


def hold_stages_of_a_build(folder: Path) -> None:
    """Take the steps of a build up to the first that writes the site."""
    before = Path.cwd()
    os.chdir(folder)
    try:
        try:
            config = load_config("mkdocs.yml")
        except Exception as error:
            # MkDocs reads its settings before any plugin is asked, and `build_site` says it.
            hold_told(error)
            return
        config.plugins.on_startup(command="build", dirty=False)
        try:
            config.plugins.on_config(config)
            config.plugins.on_pre_build(config=config)
        finally:
            config.plugins.on_shutdown()
    except (Abort, ConfigurationError, PluginError):
        return  # MkDocs prints these without a traceback.
    finally:
        os.chdir(before)


def hold_told(error: Exception) -> None:
    """Whatever is raised while settings are read has words for whoever asked for a build."""
    assert str(our_error(error, ()))


TARGETS: Mapping[str, Target] = {
    "loader": hold_loader,
    "limits": hold_limits,
    "plugin": hold_plugin,
    "log": hold_log,
}
"""By name, as `python -m tests.fuzz` takes them."""
