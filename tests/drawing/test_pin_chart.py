"""A connector drawn face-on."""

from __future__ import annotations

import re
from itertools import product
from xml.etree import ElementTree

import pytest

from pullcord.drawing.pin_chart import WIRE_FILL, render_pin_chart, render_probes
from pullcord.drawing.pin_geometry import Box, PinGeometry
from pullcord.drawing.pin_layout import HALF_SHEET_PX, LEAST_PRINTED_PX, lay_out_pins
from pullcord.model.machine import Machine
from pullcord.model.meter import MeterSheet
from pullcord.model.spot import Spot
from pullcord.model.wire import COLOURS
from pullcord.readings.meter import parse_meter
from pullcord.readings.pins import ConnectorView, connector_views

SVG = "{http://www.w3.org/2000/svg}"
METER = parse_meter(MeterSheet())


def view(**connector: object) -> ConnectorView:
    """Return one connector of a machine with a source coil on its sheet."""
    machine = Machine.model_validate(
        {
            "machine": "old-bike",
            "title": "Old bike",
            "kind": "farm-bike",
            "values": {"source-coil": {"limits": "200-300 ohm", "source": "common practice"}},
            "connectors": {"unit": {"title": "Unit plug", "rows": 2, "columns": 3, **connector}},
        }
    )
    (found,) = connector_views(machine, METER)
    return found


PINS = {
    "stop": {
        "at": "a1",
        "wire": "BK/WH",
        "function": "Stop wire",
        "expect": [
            {"against": "ground", "limits": "under 8 ohm", "key": "off", "source": "x"},
            {"against": "ground", "limits": "open", "key": "on", "source": "x"},
        ],
    },
    "source": {
        "at": "1,3",
        "wire": "BK/RD",
        "function": "Source coil",
        "expect": [{"against": "unit.ground", "value": "source-coil"}],
    },
    "ground": {"at": "b1", "function": "Ground", "wire": "GN"},
}
UNIT = view(pins=PINS, blanks=["b3"], latch="left")


def texts(svg: str) -> list[str]:
    """Return the text elements of a chart."""
    root = ElementTree.fromstring(svg)  # noqa: S314 our own output
    return [element.text or "" for element in root.iter(f"{SVG}text")]


def test_each_pin_shows_place_code_function_value_and_where() -> None:
    """What to look for, and what it should read against what, stands in the cell itself."""
    shown = texts(render_pin_chart(UNIT))
    for text in (
        "a1", "BK/WH", "Stop wire", "< 8 Ω", "to ground, key off", "open", "to ground, key on",
        "a3", "BK/RD", "Source coil", "200–300 Ω", "to b1",
    ):  # fmt: skip
        assert text in shown


def test_the_side_looked_at_is_said() -> None:
    """Left and right swap on the other side, so the chart says which it shows."""
    into = " ".join(texts(render_pin_chart(UNIT)))
    assert "Seen looking into the harness plug, latch at the left." in into
    behind = " ".join(texts(render_pin_chart(view(pins=PINS, seen="from the wire side"))))
    assert "Seen from the wire side of the harness plug, latch at the top." in behind
    assert "From the other side left and right are swapped." in behind


PROBES = {"source": "1st probe", "ground": "2nd probe"}


def test_the_pins_of_a_reading_are_marked_by_frame_and_word() -> None:
    """Two cells of a class of their own, each with the words for its probe on it."""
    root = ElementTree.fromstring(render_probes(UNIT, PROBES, "step-coil"))  # noqa: S314 our own
    cells = [g for g in root.iter(f"{SVG}g") if "pc-cell-probe" in g.get("class", "").split()]
    marked = [[text.text for text in cell.iter(f"{SVG}text")] for cell in cells]
    assert [(texts_[0], texts_[-1]) for texts_ in marked] == [
        ("a3", "1st probe"), ("b1", "2nd probe")
    ]  # fmt: skip
    assert len(root.findall(f".//{SVG}rect[@class='pc-badge']")) == 2
    assert root.get("id") == "pc-pins-old-bike-unit-step-coil"


def test_a_chart_of_probes_leaves_the_readings_to_the_page() -> None:
    """Smaller than the whole chart, without values and boxes; its description says the same."""
    svg = render_probes(UNIT, PROBES, "step-coil")
    assert len(svg) < len(render_pin_chart(UNIT))
    assert "200–300 Ω" not in texts(svg)
    assert "pc-write" not in svg
    assert "dashed" not in svg
    assert "1st probe: a3. 2nd probe: b1." in svg
    assert "Seen looking into the harness plug" in " ".join(texts(svg))


def test_every_pin_has_an_empty_box_for_each_reading() -> None:
    """One to write into for every expectation, and one for a pin without any."""
    cells = lay_out_pins(UNIT).cells
    assert [(cell.kind, len(cell.boxes)) for cell in cells] == [
        ("pin", 2), ("unknown", 0), ("pin", 1), ("pin", 1), ("unknown", 0), ("blank", 0),
    ]  # fmt: skip


def test_a_colour_never_stands_alone() -> None:
    """Wherever a wire is painted, its letter code is written in the same cell."""
    for cell in lay_out_pins(UNIT).cells:
        codes = [line.text for line in cell.lines if line.role == "code"]
        if cell.chip:
            assert codes == ["/".join(filter(None, (cell.chip.base_code, cell.chip.second_code)))]


def test_an_unknown_wire_is_a_question_mark() -> None:
    """A wire nobody has looked at yet is not painted."""
    (cell, *_) = lay_out_pins(view(pins={"x": {"at": "a1", "function": "Some wire"}})).cells
    assert cell.chip is None
    assert "?" in [line.text for line in cell.lines]


def test_stripes_lie_along_the_wire() -> None:
    """A stripe is a band inside the base colour; a second colour takes the right half."""
    pins = {
        "a": {"at": "a1", "wire": "BK/WH", "function": "A"},
        "b": {"at": "a2", "wire": "RDBU", "function": "B"},
    }
    striped, joined, *_ = (cell.chip for cell in lay_out_pins(view(pins=pins)).cells)
    assert striped is not None
    assert striped.second is not None
    assert striped.base.y < striped.second.y
    assert striped.second.width == striped.base.width
    assert joined is not None
    assert joined.second is not None
    assert joined.second.width == joined.base.width / 2


def test_every_colour_has_a_paint_of_its_own() -> None:
    """No two codes are painted alike."""
    assert set(WIRE_FILL) == set(COLOURS)
    assert len(set(WIRE_FILL.values())) == len(COLOURS)


def inside(inner: Box, outer: Box) -> bool:
    """Say whether a rectangle lies inside another, to a hundredth."""
    return (
        outer.x - 0.01 <= inner.x
        and outer.y - 0.01 <= inner.y
        and inner.x + inner.width <= outer.x + outer.width + 0.01
        and inner.y + inner.height <= outer.y + outer.height + 0.01
    )


def check_geometry(chart: PinGeometry) -> None:
    """Assert that nothing sticks out of its cell, the housing or the chart."""
    sheet = Box(0, 0, chart.width, chart.height)
    assert inside(chart.housing, sheet)
    assert inside(chart.latch, sheet)
    for line in chart.lines:
        assert inside(Box(line.x, line.y - line.size, line.width, line.size), sheet)
    for cell in chart.cells:
        assert inside(cell.frame, chart.housing)
        for box in (*cell.boxes, *((cell.chip.base,) if cell.chip else ())):
            assert inside(box, cell.frame)
        for line in cell.lines:
            assert inside(Box(line.x, line.y - line.size * 0.9, line.width, line.size), cell.frame)


LONG = "A function whose words go on for much longer than anyone would wish, and-then-some"


def packed(rows: int, columns: int, function: str, latch: str) -> ConnectorView:
    """Return a connector with a pin in every place."""
    pins = {
        f"p{row}-{column}": {
            "at": f"{row},{column}",
            "wire": "BK/WH",
            "function": function,
            "expect": [{"against": "ground", "limits": "200-300 ohm", "source": "x"}],
        }
        for row, column in product(range(1, rows + 1), range(1, columns + 1))
    }
    return view(pins=pins, rows=rows, columns=columns, latch=latch)


@pytest.mark.parametrize("latch", ["top", "right", "bottom", "left"])
@pytest.mark.parametrize("size", [(1, 1), (1, 2), (2, 3), (2, 6), (3, 4), (8, 12)], ids=str)
@pytest.mark.parametrize("function", ["Stop", LONG], ids=["short", "long"])
def test_nothing_sticks_out(size: tuple[int, int], function: str, latch: str) -> None:
    """Whatever an author writes, text stays in its cell and cells in the housing."""
    check_geometry(lay_out_pins(packed(*size, function, latch)))


@pytest.mark.parametrize("size", [(1, 1), (1, 6), (2, 2), (2, 3), (2, 4), (3, 3), (2, 6), (1, 12)])
def test_usual_plugs_print_on_half_a_sheet(size: tuple[int, int]) -> None:
    """Scaled down to half an A4 sheet, the smallest type is still 7 points."""
    chart = lay_out_pins(packed(*size, "To the coil", "top"))
    across, down = HALF_SHEET_PX
    smallest = min(line.size for cell in chart.cells for line in cell.lines)
    scale = min(1, across / chart.width, down / chart.height)
    assert chart.width <= across
    assert smallest * scale >= LEAST_PRINTED_PX


def test_small_plugs_are_drawn_large() -> None:
    """A plug of six is read at arm's length: 16 px and up for what matters."""
    sizes = {
        line.size
        for cell in lay_out_pins(UNIT).cells
        for line in cell.lines
        if line.role in {"value", "code", "function"}
    }
    assert min(sizes) >= 16


def test_text_is_never_markup() -> None:
    """What an author writes is shown as written."""
    hostile = {"x": {"at": "a1", "function": "<script>&\"'"}}
    svg = render_pin_chart(view(pins=hostile, title='<b onload="x">'))
    assert "<script" not in svg
    assert "<b " not in svg
    assert "<script>&\"'" in " ".join(texts(svg))


def test_it_names_itself() -> None:
    """A reader of the page's structure hears what it is and where the same stands in words."""
    svg = render_pin_chart(UNIT)
    assert re.search(r'role="img" aria-labelledby="pc-pins-old-bike-unit-title"', svg)
    assert '<title id="pc-pins-old-bike-unit-title">Pin chart: Unit plug</title>' in svg
    assert "The table below says the same." in svg


def test_same_sheet_same_bytes() -> None:
    """Nothing of the machine it is built on is in it."""
    assert render_pin_chart(UNIT) == render_pin_chart(view(pins=PINS, blanks="b3", latch="left"))


def test_pins_come_in_reading_order() -> None:
    """The table under the chart goes row by row, whatever the order in the file."""
    assert [row.spot for row in UNIT.pins] == [Spot(1, 1), Spot(1, 3), Spot(2, 1)]


def test_a_row_says_what_the_meter_must_show() -> None:
    """The table has the words, the proof on the shop's own meter, and the source."""
    stop, source, ground = UNIT.pins
    assert [(each.words, each.key, each.good) for each in stop.readings] == [
        ("under 8 ohm", "key off", "7.6 ohm or less"),
        ("open (over-range)", "key on", "open (over-range)"),
    ]
    (reading,) = source.readings
    assert (reading.against, reading.good) == ("b1", "204 to 295 ohm")
    assert reading.source == "common practice"
    assert ground.readings == ()


def test_what_is_not_known_says_so() -> None:
    """An expectation without a figure leaves room to write it in."""
    pins = {"x": {"at": "a1", "function": "X", "expect": [{"against": "ground"}]}}
    (row,) = view(pins=pins).pins
    assert row.readings[0].words == "not known: write it here when you find it"
    assert row.readings[0].short == "?"


def test_pins_without_a_place_are_left_out() -> None:
    """They are findings; the chart draws what it can."""
    pins = {**PINS, "lost": {"at": "c9", "function": "Lost"}, "odd": {"at": "?", "function": "Odd"}}
    assert len(view(pins=pins, blanks=["z9"]).pins) == 3
