"""A reading says where to measure, what it should be here, and what this meter can tell."""

from __future__ import annotations

import pytest

from pullcord.model.meter import MeterRange, MeterSheet
from pullcord.readings import NOT_KNOWN
from tests.pages.make import (
    BIKE,
    NO_SPARK,
    PINNED,
    WONT_IDLE,
    machine,
    no_spark_page,
    pages_of,
    procedure,
    shed_pages,
    step_of,
    tree_of,
)
from tests.pages.tree import Element

GENERAL = "procedures/no-spark.md"
BIKES = "machines/old-bike/no-spark.md"
PUMPS = "machines/old-pump/no-spark.md"


def coil(uri: str) -> Element:
    """Return the step that measures, on a page of the shed."""
    return step_of(uri, "coil")


def rows(step: Element) -> dict[str, str]:
    """Return the lines of a reading by their labels."""
    lines = step.all("pc-reading")[0].tags("div")
    return {line.tags("dt")[0].text: line.tags("dd")[0].text for line in lines}


def bands(step: Element) -> list[tuple[str, ...]]:
    """Return the rows of the table that says what the meter can tell."""
    (table,) = step.all("pc-bands")
    return [tuple(c.text for c in row.walk() if c.tag in {"th", "td"}) for row in table.tags("tr")]


def general_page(before: str, after: str) -> Element:
    """Return the measuring step of the first example with something else in it."""
    assert before in NO_SPARK
    return no_spark_page(NO_SPARK.replace(before, after)).by_id("step-coil")


def test_the_general_page_says_general_limits() -> None:
    """What, where, with which dial, how much, and that it is not any machine's own."""
    assert rows(no_spark_page().by_id("step-coil")) == {
        "Measure": "resistance Set the dial to 2 kohm",
        "First probe": "source wire",
        "Second probe": "bare metal",
        "Should read": "200 to 300 ohm general limits, not this machine's own "
        "Source: common practice",
        "You read": "",
    }


def test_a_machine_s_page_says_its_own() -> None:
    """The sheet's figure with its source and its note, and nothing of the general limits."""
    found = rows(coil(BIKES))
    assert found["Should read"] == "225 to 275 ohm from this machine's sheet Source: measured"
    assert found["On the sheet"] == "Read 250 ohm in May."
    assert "This machine's own" not in found
    assert "200 to 300 ohm" not in coil(BIKES).text


def test_a_missing_value_falls_back_and_says_so() -> None:
    """General limits, marked as general, and room to write the machine's own."""
    found = rows(coil(PUMPS))
    assert found["Should read"].startswith("200 to 300 ohm general limits, not this machine's own")
    assert found["This machine's own"] == NOT_KNOWN
    assert len(coil(PUMPS).all("pc-missing")[0].all("pc-blank")) == 1
    assert coil(GENERAL).all("pc-missing") == []


def test_a_reading_nobody_knows_sends_to_the_manual() -> None:
    """No figure is made up, and no band is shown."""
    step = general_page("general: 200-300 ohm, source: common practice", "")
    assert (
        rows(step)["Should read"] == f"what the maker's manual gives for this machine {NOT_KNOWN}"
    )
    assert step.all("pc-bands") == []
    assert all(way.all("pc-way__shows") == [] for way in step.all("pc-way"))


def test_the_bands_say_which_answer_each_means() -> None:
    """Every display once, in words and with a sign: within, outside, or too close to call."""
    assert bands(coil(GENERAL)) == [
        ("You read", "That is", "So the answer is"),
        ("198.2 ohm or less", "✕ outside", "Below the limits → Cause A"),
        ("198.3 to 203 ohm", "? too close to call",
         "not proved: Below the limits or Within the limits"),
        ("204 to 295 ohm", "✓ within", "Within the limits → End of this procedure"),
        ("296 to 304 ohm", "? too close to call",
         "not proved: Within the limits or Above the limits"),
        ("305 ohm or more, but not open", "✕ outside", "Above the limits → Cause A"),
        ("open (over-range)", "✕ outside", "Open circuit or over range → Go to"),
    ]  # fmt: skip
    assert bands(coil(BIKES))[3][0] == "229 to 271 ohm"


def test_too_close_to_call_says_what_to_do() -> None:
    """Zero the leads and measure again; where nothing is close, nothing is said."""
    (text,) = (part.text for part in coil(GENERAL).all("pc-close"))
    assert "hold the probes together" in text
    assert "Do not guess" in text
    gap = general_page("quantity: resistance", "quantity: length")
    assert gap.all("pc-close") == []


def test_a_close_call_that_does_not_matter_is_no_close_call() -> None:
    """Where both answers lead to the same place, the page says to go on."""
    step = general_page("below: cause coil, within: done", "below: done, within: done")
    assert bands(step)[2][1:] == (
        "= either way", "Below the limits or Within the limits → End of this procedure"
    )  # fmt: skip


def test_the_answers_carry_their_readings() -> None:
    """A thumb needs no table: the button says what the display must show."""
    said = [way.all("pc-way__said")[0].text for way in coil(GENERAL).all("pc-way")]
    assert said == [
        "Below the limits : 198.2 ohm or less",
        "Within the limits : 204 to 295 ohm",
        "Above the limits : 305 ohm or more, but not open",
        "Open circuit or over range",
    ]
    answers = [way.attrs["data-answer"] for way in coil(GENERAL).all("pc-way")]
    assert answers == ["below", "within", "above", "open"]


def test_a_better_meter_calls_more() -> None:
    """The bands are those of the shop's own meter, which is named."""
    fine = MeterSheet(title="the good meter", ranges=(MeterRange(up_to="2 kohm", step="0.1 ohm"),))
    page = pages_of(procedure(NO_SPARK), procedure(WONT_IDLE), meter=fine)[GENERAL]
    step = tree_of(page).by_id("step-coil")
    assert step.tags("caption")[0].text == "What the good meter can tell"
    assert bands(step)[3][0] == "200.2 to 299.8 ohm"


def test_what_no_instrument_measures_is_taken_as_it_is() -> None:
    """A feeler gauge has one place, no dial, no leads and nothing too close to call."""
    step = general_page(
        "quantity: resistance, at: source wire, against: bare metal",
        "quantity: length, at: between the electrodes",
    ).text
    assert "Where between the electrodes" in step
    for word in ("First probe", "dial", "probes together"):
        assert word not in step


def test_lengths_stand_in_both_systems() -> None:
    """Feelers come in millimetres and in inches."""
    text = (
        NO_SPARK.replace("quantity: resistance", "quantity: length")
        .replace("200-300 ohm", "0.6-0.8 mm")
        .replace(", open: procedure wont-idle", "")
    )
    step = no_spark_page(text).by_id("step-coil")
    assert "0.6 to 0.8 mm (0.024 to 0.031 in)" in rows(step)["Should read"]
    assert [row[0] for row in bands(step)[1:]] == ["under 0.6 mm", "0.6 to 0.8 mm", "over 0.8 mm"]


def test_small_readings_begin_with_the_leads() -> None:
    """Zeroing, the bite of the probe and over-range stand before the answers."""
    step = general_page("200-300 ohm", "20-40 ohm")
    (mind,) = step.all("pc-mind")
    assert "Hold the two probes together first" in mind.tags("li")[0].text
    assert "until the probe bites" in mind.text
    classes = [next(iter(e.classes & {"pc-mind", "pc-way"}), "") for e in step.walk()]
    assert classes.index("pc-mind") < classes.index("pc-way")


def test_a_winding_brings_its_temperatures() -> None:
    """Only where the sheet says that it is copper: IEC 60028, 0.00393 per °C."""
    (table,) = coil(BIKES).all("pc-temperatures")
    assert table.tags("div")[0].text == "−10 °C 198–243 Ω"
    assert len(table.tags("div")) == 6
    assert "holds at 20 °C" in coil(BIKES).text
    assert coil(GENERAL).all("pc-temperatures") == []


def test_a_general_page_says_pins_in_words() -> None:
    """Nobody without the sheet reads a name with a full stop in it; so does a machine without."""
    for uri in (GENERAL, PUMPS):
        found = rows(coil(uri))
        assert found["First probe"] == "source pin of the unit plug"
        assert found["Second probe"] == "ground pin of the unit plug"
        assert coil(uri).all("pc-plug") == []


def test_a_machine_s_page_shows_where_the_probes_go() -> None:
    """Pin, wire and plug in words, and the plug drawn with the two pins marked."""
    found = rows(coil(BIKES))
    assert found["First probe"] == (
        "Pin a1: Source coil BK/RD: black with a red stripe Plug of the unit"
    )
    (drawing,) = coil(BIKES).all("pc-pins")
    assert [text.text for text in drawing.all("pc-probe")] == ["1st probe", "2nd probe"]
    assert len(drawing.all("pc-cell-probe")) == 2


def test_an_answer_that_no_reading_gives_is_left_out() -> None:
    """Below `under 1 ohm` there is nothing, and a thumb would take it by mistake."""
    step = general_page("200-300 ohm", "under 1 ohm")
    assert [way.attrs["data-answer"] for way in step.all("pc-way")] == ["within", "above", "open"]
    assert all(row[0] and "Below" not in row[2] for row in bands(step))


def test_a_sheet_with_a_lower_end_brings_it_back() -> None:
    """On that machine's page the answer is there, and the cause says so too."""
    text = PINNED.replace("200-300 ohm", "under 300 ohm")
    pages = pages_of(procedure(text), procedure(WONT_IDLE), machines=(machine(BIKE),))
    general, own = (tree_of(pages[uri]) for uri in (GENERAL, BIKES))
    came = [page.by_id("cause-coil").all("pc-from")[0].text for page in (general, own)]
    assert ["Below the limits" in text for text in came] == [False, True]
    counts = [len(page.by_id("step-coil").all("pc-way")) for page in (general, own)]
    assert counts == [3, 4]


def test_the_flowchart_says_the_limits() -> None:
    """The general page its own, each machine its own, and a fallback is marked."""
    pages = shed_pages()
    shown = {
        uri: [part.text for part in tree_of(pages[uri]).all("pc-limits")]
        for uri in (GENERAL, BIKES, PUMPS)
    }
    assert shown == {
        GENERAL: ["200–300 Ω"], BIKES: ["225–275 Ω"], PUMPS: ["200–300 Ω (general)"]
    }  # fmt: skip


@pytest.mark.parametrize("uri", [GENERAL, BIKES, PUMPS])
def test_scripts_can_judge_a_number(uri: str) -> None:
    """The rows meet without a gap, rise, and end at over-range; each proven one has its answer."""
    (table,) = coil(uri).all("pc-bands")
    assert table.attrs["data-quantity"] == "resistance"
    ends = [float(row.attrs["data-end"]) for row in table.all("pc-band")]
    assert ends == sorted(ends)
    assert ends[-1] == float("inf")
    answers = [row.attrs.get("data-answer") for row in table.all("pc-band")]
    assert answers == ["below", None, "within", None, "above", "open"]
