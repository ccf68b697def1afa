"""The job sheet: where a machine was left, what to do tonight, how far it is, what it costs."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import asdict
from typing import Any

from pullcord.analysis.job.read import read_job_report
from pullcord.drawing.plot import TYPE_PX, Plot
from pullcord.pages.imprint import printed_lines
from pullcord.pages.job.left import LeftView
from pullcord.pages.job.log import EntryView
from pullcord.pages.job.parts import PartsView
from pullcord.pages.job.stages import StagesView
from pullcord.pages.job_page import job_parts
from pullcord.pages.subject import Subject
from pullcord.printing.frame import Frame, Said
from pullcord.printing.press import Press, frames_for, job_named, subject_named

Data = Mapping[str, Any]
PLOT_TYPE_PT = 7.5
"""Type size on the drawings as they are printed."""
LINES_TO_WRITE = 6
"""Empty lines at the end, for the evening."""


def job_part(press: Press, name: str) -> Data:
    """Return the sheet of a job as data for the template. Raises UnknownNameError."""
    read, project, kit = job_named(press, name), press.project, press.kit
    has_sheet = read.job.machine in project.machines
    subject = subject_named(press, read.job.machine) if has_sheet else Subject(press.meter)
    report = read_job_report(read.job, project.library, kit.settings.currency)
    parts = job_parts(kit, project, read, report, subject)
    words = kit.job
    frame = _frame(press, subject, parts.title, " ".join(parts.purpose), read.digest)
    return {
        "kind": "job",
        **frame.data(),
        "said": {key: words[key] for key in _SAID},
        "facts": [*parts.facts],
        "given_up": parts.given_up,
        "note": [*parts.note],
        "left": _left(parts.left),
        "first": [*parts.next.first],
        "checks": [asdict(check) for check in parts.next.checks],
        "stages": _stages(parts.stages),
        "money": {
            "is_past_stop": parts.money.is_past_stop,
            "why": parts.money.why,
            "facts": [*parts.money.facts],
            "plot": plot_data(parts.money.plot),
        },
        "parts": _parts(parts.parts),
        "series": [
            {
                "title": each.title,
                "limits": each.limits,
                "drift": each.drift,
                "points": [(point.day, point.text, point.verdict) for point in each.points],
                "plot": plot_data(each.plot),
            }
            for each in parts.series
        ],
        "log": [_entry(each) for each in parts.log],
        "notice": kit.words["signal_notice"],
        "tonight": press.words["job_tonight"],
        "write_lines": LINES_TO_WRITE,
    }


_SAID = (
    "left_title", "left_before", "next_title", "next_none", "stages_title",
    "money_title", "money_stop", "buy_title", "buy_nothing", "proofs_title", "readings_title",
    "readings_says", "drift", "parts_title", "parts_total", "parts_none", "log_title", "log_none",
)  # fmt: skip
"""The keys of the job's texts that the template prints itself."""


def plot_data(plot: Plot) -> Data:
    """Return a drawing as data for the template, with the scale that makes its type readable."""
    return {**asdict(plot), "pt_per_px": PLOT_TYPE_PT / TYPE_PX}


def _frame(press: Press, subject: Subject, title: str, below: str, digest: str) -> Frame:
    said = Said(
        title=press.words["job_title"].format(title=title),
        below=below,
        machine=subject.title,
        imprint=printed_lines(press.kit, sheet=subject.digest, job=digest),
        deferral=(press.kit.words["sheet_deferral"],),
    )
    frame, _ = frames_for(press, said)
    return frame


def _left(left: LeftView) -> Data:
    return {
        "level": left.box.level,
        "word": left.box.word,
        "has_alert_symbol": left.box.has_alert_symbol,
        "signs": [{"file": sign.file, "means": sign.means} for sign in left.box.signs],
        "says": left.says,
        "is_safe": left.is_safe,
        "before": [*left.before],
        "facts": [*left.facts],
    }


def _stages(stages: StagesView) -> Data:
    return {
        "count": stages.count,
        "stages": [asdict(stage) for stage in stages.stages],
        "proofs": [asdict(proof) for proof in stages.proofs],
    }


def _parts(parts: PartsView) -> Data:
    return {
        "first": parts.first,
        "groups": [asdict(group) for group in parts.groups],
        "paid": [asdict(each) for each in parts.paid],
        "total": parts.total,
    }


def _entry(entry: EntryView) -> Data:
    return {
        "date": entry.date,
        "title": entry.title,
        "did": [*entry.did],
        "lines": [*entry.lines],
        "note": [*entry.note, *([entry.photo_path] if entry.photo_path else [])],
    }
