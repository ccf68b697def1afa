"""A machine's plugs: each drawn face-on, with the same in a table below it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from markupsafe import Markup

from pullcord.drawing.pin_chart import render_pin_chart
from pullcord.pages.kit import Kit
from pullcord.pages.prose import paragraphs
from pullcord.pages.subject import Subject
from pullcord.readings import NOT_KNOWN, ConnectorView
from pullcord.readings.pins import PinReading, PinRow


@dataclass(frozen=True)
class PinLine:
    """One thing to read at a pin; a pin without any has one line all the same."""

    spot: str
    wire: str
    function: str
    note: str
    against: str
    should: str
    good: str
    """What the shop's meter must show; empty when it cannot prove it, or nobody knows."""
    source: str


@dataclass(frozen=True)
class PlugView:
    """One plug."""

    id: str
    title: str
    note: tuple[str, ...]
    svg: Markup
    lines: tuple[PinLine, ...]


def plug_views(kit: Kit, subject: Subject) -> tuple[PlugView, ...]:
    """Return every plug of a machine, in the order of its sheet."""
    return tuple(_plug(kit, view) for view in subject.plugs.values())


def _plug(kit: Kit, view: ConnectorView) -> PlugView:
    svg = render_pin_chart(view, kit.settings.template_dirs)
    return PlugView(
        id=f"plug-{view.name}",
        title=view.connector.title,
        note=paragraphs(view.connector.note),
        svg=Markup(svg),  # noqa: S704 (escaped by the drawing's own template)
        lines=tuple(line for pin in view.pins for line in _lines(kit.words, pin)),
    )


def _lines(words: Mapping[str, str], pin: PinRow) -> Iterator[PinLine]:
    nothing = PinReading(against="", key="", short="", words=NOT_KNOWN, good="", source="")
    for reading in pin.readings or (nothing,):
        good = words["pin_good"].format(shows=reading.good) if reading.good else ""
        yield PinLine(
            spot=pin.spot.label,
            wire=f"{pin.wire.code}: {pin.wire.words}" if pin.wire else words["wire_unknown"],
            function=pin.function,
            note=pin.note,
            against=", ".join(part for part in (reading.against, reading.key) if part),
            should=reading.words,
            good=good,
            source=reading.source,
        )
