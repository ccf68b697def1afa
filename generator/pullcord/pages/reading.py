"""A reading as a step prints it: where to measure, what it should read, what the meter can tell."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from markupsafe import Markup

from pullcord.model.procedure import Reading, Step
from pullcord.pages.address import anchor
from pullcord.pages.kit import Kit
from pullcord.pages.probe import ProbeView, probe_charts, probe_views
from pullcord.pages.prose import paragraphs
from pullcord.pages.subject import Subject
from pullcord.pages.verdict import BandView, band_views
from pullcord.pages.way import Way
from pullcord.readings import NOT_KNOWN, Resolved, limits_both


@dataclass(frozen=True)
class TemperatureView:
    """A copper winding's limits in a shop of one temperature."""

    celsius: str
    limits: str


@dataclass(frozen=True)
class ReadingView:
    """What to measure, where, and what it should read, every word decided."""

    quantity: str
    probes: tuple[ProbeView, ...]
    charts: tuple[Markup, ...]
    """The plugs the probes go into; none on the general page."""
    dial: str
    """Where to set the dial; empty when that does not apply."""
    limits: str
    origin: str
    """Where the limits stand, and whether they are this machine's own."""
    source: str
    missing: str
    """That the machine's sheet has no figure, and room to write it; empty when it has one."""
    sheet_note: tuple[str, ...]
    """What the sheet says besides."""
    keep_in_mind: tuple[str, ...]
    bands: tuple[BandView, ...]
    bands_title: str
    close_says: str
    """What to do when it is too close to call; empty when that cannot happen."""
    temperatures: tuple[TemperatureView, ...]
    temperatures_say: str
    stated_celsius: str
    """For scripts: the temperature a copper winding's bands hold at; empty for anything else."""
    kind: str
    """For scripts: the quantity's name."""


def resolve(step: Step, reading: Reading, subject: Subject) -> Resolved:
    """Return what a step's reading should show."""
    return subject.resolve(step, reading)


def reading_view(
    kit: Kit, name: str, reading: Reading, resolved: Resolved, subject: Subject,
    ways: Mapping[str, Way],
) -> ReadingView:  # fmt: skip
    """Return a step's reading as it is printed; `ways` are its answers with where they lead."""
    words = kit.words
    bands = band_views(words, resolved, ways)
    dirs = kit.settings.template_dirs
    celsius = f"{resolved.at_celsius.normalize():f}"
    return ReadingView(
        quantity=words[f"quantity_{reading.quantity}"],
        probes=probe_views(words, reading, subject),
        charts=probe_charts(words, reading, subject, anchor(f"step:{name}"), dirs),
        dial=words["reading_dial"].format(dial=resolved.dial) if resolved.dial else "",
        limits=_limits(words, resolved),
        origin=resolved.origin_words,
        source=resolved.source,
        missing=_missing(reading, resolved, subject),
        sheet_note=_sheet_note(reading, subject),
        keep_in_mind=resolved.notes,
        bands=bands,
        bands_title=_bands_title(words, resolved, subject),
        close_says=words["close_says"] if any(band.kind == "close" for band in bands) else "",
        temperatures=tuple(
            TemperatureView(_celsius(row.celsius), row.limits.short)
            for row in resolved.temperatures
        ),
        temperatures_say=words["temperatures_say"].format(celsius=celsius),
        stated_celsius=celsius if resolved.temperatures else "",
        kind=reading.quantity,
    )


def chart_limits(words: Mapping[str, str], step: Step, reading: Reading, subject: Subject) -> str:
    """Return the limits as the flowchart shows them; empty when nobody knows them."""
    resolved = resolve(step, reading, subject)
    if resolved.limits is None:
        return ""
    is_fallback = subject.machine is not None and resolved.origin == "general"
    key = "chart_limits_general" if is_fallback else "chart_limits"
    return words[key].format(limits=resolved.limits.short)


def _limits(words: Mapping[str, str], resolved: Resolved) -> str:
    if resolved.limits:
        return limits_both(resolved.limits)
    return words["reading_by_answer" if resolved.origin == "answers" else "reading_ask_sheet"]


def _missing(reading: Reading, resolved: Resolved, subject: Subject) -> str:
    if resolved.origin == "sheet" or subject.machine is None or reading.limits is None:
        return ""
    return NOT_KNOWN


def _sheet_note(reading: Reading, subject: Subject) -> tuple[str, ...]:
    values = subject.machine.values if subject.machine else {}
    value = values.get(reading.limits) if reading.limits else None
    return paragraphs(value.note) if value else ()


def _bands_title(words: Mapping[str, str], resolved: Resolved, subject: Subject) -> str:
    if resolved.is_at_face_value:
        return words["bands_at_face_value"]
    return words["bands_title"].format(meter=subject.meter.title)


def _celsius(celsius: int) -> str:
    return f"{celsius} °C".replace("-", "\N{MINUS SIGN}")
