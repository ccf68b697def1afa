"""Where the probes go: in words, and on the plugs of a machine whose sheet has the pins."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from markupsafe import Markup

from pullcord.drawing.pin_chart import render_probes
from pullcord.model.procedure import Reading
from pullcord.pages.subject import Subject
from pullcord.readings import ConnectorView, find_pin, place_words
from pullcord.readings.pins import PinRow


@dataclass(frozen=True)
class ProbeView:
    """One probe and its place."""

    label: str
    place: str
    plug: str
    """The plug the pin is in; empty when there is no pin."""
    wire: str
    """The wire on the pin, by code and in words; empty when there is no pin or nobody knows."""


@dataclass(frozen=True)
class _Probe:
    key: str
    """`at` or `against`."""
    place: str
    found: tuple[ConnectorView, PinRow] | None


def probe_views(
    words: Mapping[str, str], reading: Reading, subject: Subject
) -> tuple[ProbeView, ...]:
    """Return where each probe goes, the first one first; a feeler or a clip goes to one place."""
    labels = ("reading_at", "reading_against") if reading.against else ("reading_where",)
    probes = _probes(reading, subject)
    return tuple(
        _view(words[label], words, probe) for label, probe in zip(labels, probes, strict=True)
    )


def probe_charts(
    words: Mapping[str, str],
    reading: Reading,
    subject: Subject,
    node: str,
    template_dirs: tuple[Path, ...],
) -> tuple[Markup, ...]:
    """Return a chart of every plug that a probe goes into, its pins marked; mostly none or one.

    `node` is the step's anchor: it tells charts of the same plug on one page apart.
    """
    marked: dict[str, dict[str, str]] = {}
    for probe in _probes(reading, subject):
        if probe.found:
            plug, pin = probe.found
            marked.setdefault(plug.name, {})[pin.name] = words[f"probe_{probe.key}"]
    return tuple(
        Markup(render_probes(subject.plugs[plug], probes, node, template_dirs))  # noqa: S704 (escaped by the drawing's own template)
        for plug, probes in marked.items()
    )


def _probes(reading: Reading, subject: Subject) -> Iterator[_Probe]:
    for key, place in (("at", reading.at), ("against", reading.against)):
        if place:
            yield _Probe(key, place, _find(place, subject))


def _find(place: str, subject: Subject) -> tuple[ConnectorView, PinRow] | None:
    found = find_pin(subject.machine, place) if subject.machine else None
    if found is None:
        return None
    plug = subject.plugs[found.connector_name]
    # A pin whose place cannot be read is in no chart.
    return next(((plug, row) for row in plug.pins if row.name == found.name), None)


def _view(label: str, words: Mapping[str, str], probe: _Probe) -> ProbeView:
    if probe.found is None:
        return ProbeView(label, place_words(probe.place), "", "")
    plug, pin = probe.found
    place = words["probe_pin"].format(spot=pin.spot.label, function=pin.function)
    wire = f"{pin.wire.code}: {pin.wire.words}" if pin.wire else ""
    return ProbeView(label, place, plug.connector.title, wire)
