"""A job's page says where it was left first, then what to do, how far it is and what it costs."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from pathlib import Path
from typing import get_args

import pytest

from pullcord.analysis.job.read import read_job_report
from pullcord.model.action import Action, Fitting
from pullcord.model.job import Liquid
from pullcord.pages.job.log import VERBS
from pullcord.pages.job.words import say_money
from pullcord.pages.kit import read_kit
from pullcord.project import load_project
from tests.pages.jobs import (
    DIGEST,
    LEFT_SAFE,
    LEFT_UNSAFE,
    MONEY,
    SERIES,
    SPRING,
    Bench,
    job,
    report,
)
from tests.pages.make import KIT, SETTINGS, tree_of
from tests.pages.tree import Element

ROOT = Path(__file__).parents[2]
PAGE = tree_of(Bench().page)
HOSTILE = "</p></style><script>x</script><img src=x onerror=x>\"'{{7*7}}{% x %}&amp;"


def section(page: Element, id_: str) -> Element:
    """Return a section of the page."""
    return page.by_id(id_)


def test_its_parts_stand_in_the_order_of_an_evening() -> None:
    """How it was left comes before anything that is done to it; the log comes last."""
    ids = [each.attrs["id"] for each in PAGE.all("pc-section")]
    assert ids == ["left", "next", "stages", "money", "buy", "readings", "parts", "log"]
    assert [heading.id for heading in Bench().page.headings] == ids


def test_it_names_machine_and_purpose() -> None:
    """What it is, what it is for, when it came and how many hours went into it."""
    assert PAGE.tags("h1")[0].text == "Old bike: the job"
    head = PAGE.all("pc-head")[0].text
    assert "To carry ladders again." in head
    assert "Taken in: 2026-02-14 Last entry: 2026-03-01 Hours so far: 3.2 h" in head
    assert DIGEST in PAGE.all("pc-imprint")[0].text


def test_what_was_left_unsafe_is_said_first_and_in_order() -> None:
    """A WARNING with its alert symbol, then every sentence, the gravest first."""
    box = section(PAGE, "left").all("pc-box")[0]
    assert "pc-box--warning" in box.classes
    assert box.all("pc-alert")
    said = [each.text for each in box.all("pc-left__before")[0].tags("li")]
    assert said == list(LEFT_UNSAFE.before_touching)


def test_what_is_fitted_drained_and_off_is_said_in_plain_words() -> None:
    """No identifier of ours reaches the page."""
    facts = [row.text for row in section(PAGE, "left").all("pc-summary")[0].tags("div")]
    assert facts == [
        "Fitted for testing, not off again a test lead, a bypass",
        "Drained petrol, brake fluid",
        "Off, disconnected or open battery off, plug hole open",
    ]


@pytest.mark.parametrize(
    ("conditions", "word"),
    [
        pytest.param((), "WARNING", id="petrol in the tank"),
        pytest.param(("test-lead",), "WARNING", id="a lesser hazard does not soften it"),
        pytest.param(("petrol-open",), "DANGER", id="open petrol"),
        pytest.param(("engine-running",), "DANGER", id="running engine"),
    ],
)
def test_the_signal_word_is_that_of_the_gravest_hazard(
    conditions: tuple[str, ...], word: str
) -> None:
    """At least WARNING for whatever is not safe, by the hazards the conditions call up."""
    left = replace(LEFT_UNSAFE, conditions=conditions)
    page = tree_of(Bench(report(left=left)).page)
    assert section(page, "left").all("pc-box__panel")[0].text == word


def test_a_machine_left_safe_gets_a_notice() -> None:
    """NOTICE speaks of no injury, has no alert symbol, and says to look all the same."""
    box = section(tree_of(Bench(report(left=LEFT_SAFE)).page), "left").all("pc-box")[0]
    assert "pc-box--notice" in box.classes
    assert not box.all("pc-alert")
    assert "left safe on 2026-03-01" in box.text
    assert KIT.job["left_before_safe"] in box.text


def test_the_next_checks_lead_to_the_machines_own_steps() -> None:
    """Title, procedure, time and tools; a procedure nobody has is named without a link."""
    found = section(PAGE, "next")
    (link,) = found.all("pc-way")
    assert link.attrs["href"] == "../machines/old-bike/no-spark.html#step-coil"
    assert link.text == ("1. Measure the coil No spark 10 min · in your hand: Multimeter Why now.")
    assert "2. A step of nowhere 5 min · no tools Why then." in found.text
    assert "About 15 min in all" in found.text


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        pytest.param({}, ["next_first"], id="unsafe"),
        pytest.param({"left": LEFT_SAFE}, [], id="safe"),
        pytest.param(
            {"left": LEFT_SAFE, "money": replace(MONEY, is_past_stop=True)},
            ["next_stop"],
            id="past the stop line",
        ),
    ],
)
def test_what_goes_before_any_check_is_said(changes: dict[str, object], said: list[str]) -> None:
    """Nobody starts on the checks over an unsafe machine or past the stop line unaware."""
    text = section(tree_of(Bench(report(**changes)).page), "next").text
    assert [key for key in ("next_first", "next_stop") if KIT.job[key] in text] == said


def test_every_stage_has_a_word_and_a_sign() -> None:
    """Proved, taken back and not yet are told apart without colour."""
    rows = [row.text for row in section(PAGE, "stages").all("pc-stage")]
    assert rows == [
        "✓ Safe to work on proved on 2026-02-21 Shown: Safe to work on it is. Why safe.",
        "↺ Spark proved taken back on 2026-03-01 To be shown again: Spark proved it is. Why spark.",
        "– Drives not yet Still to be shown: Drives it is. Why drives.",
    ]
    assert "1 of 3 stages are proved." in section(PAGE, "stages").text


def test_what_to_prove_next_stands_in_order() -> None:
    """With its likely cost, or that it costs time alone, why, and where that comes from."""
    (order,) = section(PAGE, "stages").all("pc-proofs")
    assert [each.text for each in order.tags("li")] == [
        "Spark proved , likely 6.00 Why first. (a trial)",
        "Drives , time alone Why second. (a trial)",
    ]


def test_money_is_exact_to_the_cent() -> None:
    """0.10 and 0.20 are 0.30 and nothing else; every amount stands with two places."""
    rows = [row.text for row in section(PAGE, "money").all("pc-lines")[0].tags("div")]
    assert rows == [
        "Spent so far 0.30",
        "Likely still to come 8 times in 10 between 38.10 and 90.00 44.10",
        "Likely in all 44.40",
        "At most 100.00",
        "Lost if the next proof fails 6.20",
    ]
    paid = section(PAGE, "parts").all("pc-lines")[0].tags("div")
    assert [row.text for row in paid] == [
        "Spent before the log begins 0.10",
        "Tape No. T-1 · 2026-03-01 · For: Spark proved 0.20",
        "Total spent 0.30",
    ]


@pytest.mark.parametrize(
    ("amount", "currency", "said"),
    [
        pytest.param("1234.5", "EUR", "1234.50 EUR", id="with a currency"),
        pytest.param("0", "", "0.00", id="nothing, without one"),
        pytest.param("0.005", "", "0.00", id="half a cent goes to the even one"),
    ],
)
def test_money_is_said_with_the_projects_currency(amount: str, currency: str, said: str) -> None:
    """Two places, and the currency behind it if there is one."""
    assert say_money(Decimal(amount), currency) == said


def test_the_currency_reaches_every_amount() -> None:
    """No amount on the page stands bare where the project names its money."""
    kit = read_kit(replace(SETTINGS, currency="EUR"))
    page = tree_of(Bench(kit=kit).page)
    amounts = [each.text for each in page.all("pc-amount")]
    amounts += [dd.text for row in page.all("pc-lines") for dd in row.tags("dd")]
    assert len(amounts) == 10
    assert [amount for amount in amounts if not amount.endswith(" EUR")] == []


def test_the_bar_is_told_in_words() -> None:
    """Whoever does not see it reads spent, likely, range and limit."""
    (svg,) = section(PAGE, "money").tags("svg")
    assert svg.attrs["role"] == "img"
    assert svg.tags("desc")[0].text == (
        "Spent 0.30, likely still to come 44.10: 44.40 in all, from 38.40 to 90.30. At most 100.00."
    )


def test_a_stop_line_that_is_passed_is_a_notice() -> None:
    """It injures nobody, so it is no caution; it is said all the same, before the bar."""
    past = replace(MONEY, is_past_stop=True, why="Stop: too much.")
    money = section(tree_of(Bench(report(money=past)).page), "money")
    (box,) = money.all("pc-box")
    assert "pc-box--notice" in box.classes
    assert "The stop line is passed. Stop: too much." in box.text
    assert KIT.job["buy_stop"] in section(tree_of(Bench(report(money=past)).page), "buy").text
    assert KIT.job["buy_stop"] not in PAGE.text
    assert not section(PAGE, "money").all("pc-box")


def test_what_may_be_bought_is_parted_from_what_waits() -> None:
    """Each with price, part number, what it is for, what it waits for and why."""
    wants = [each.text for each in section(PAGE, "buy").all("pc-want")]
    assert wants == [
        "Plug cap 6.00 It may be bought. For: Spark proved",
        "Drive chain 38.10 It must wait. No. C-78 · For: Drives · Waits for: Spark proved "
        "Measure first.",
    ]
    assert "pc-want--waits" in section(PAGE, "buy").all("pc-want")[1].classes


def test_readings_stand_as_drawing_and_as_words() -> None:
    """The drawing's text says what the list says: day, reading, verdict, limits, drift."""
    series = section(PAGE, "reading-source-coil")
    assert [each.text for each in series.all("pc-points")[0].tags("li")] == [
        "2026-02-21 250 ohm ● within",
        "2026-03-01 18:00 274 ohm ◇ too close to call",
        "2026-03-08 301 ohm ✕ outside",
        "2026-03-15 OL ✕ outside",
    ]
    assert "A good one reads 225 Ω to 275 Ω." in series.text
    assert f"Drifts {SERIES.drift}" in series.text
    told = series.tags("desc")[0].text
    assert told.startswith("4 readings from 2026-02-21 to 2026-03-15. A good one reads 225 Ω")
    assert told.endswith(SERIES.drift)
    assert "2026-03-01 18:00: 274 ohm, too close to call" in told


def test_the_log_stands_newest_first() -> None:
    """Each entry with what was read, done, paid and proved, in words."""
    entries = section(PAGE, "log").all("pc-entry-log")
    assert [each.all("pc-label")[0].text for each in entries] == ["2026-03-01 18:00", "2026-02-21"]
    assert entries[0].tags("a")[0].attrs["href"] == "../machines/old-bike/no-spark.html#step-coil"
    lines = [each.text for each in entries[0].tags("li")]
    assert lines == [
        "Answer: Within the limits",
        "Read: 250 ohm, shop at 12 °C",
        "Fitted for testing: a bypass, a test lead",
        "Paid: Tape (no. T-1), 0.20",
    ]
    assert "Note: Bypass still on." in entries[0].text
    assert [each.text for each in entries[1].tags("li")] == [
        "Drained: petrol", "Proves: Safe to work on", "Time: 30 min",
    ]  # fmt: skip


def test_every_effect_and_every_thing_has_its_words() -> None:
    """A new verb or a new thing to fit or drain must be given its words first."""
    assert set(VERBS) == {*Action.model_fields, "drains", "fills"}
    keys = {f"act_{verb}" for verb in VERBS}
    keys |= {f"thing_{each}" for each in (*get_args(Fitting), *get_args(Liquid))}
    assert keys - set(KIT.job) == set()


JPEG = b"\xff\xd8\xff\xe0rest of a picture"


@pytest.mark.parametrize(
    ("content", "is_shown"),
    [
        pytest.param(JPEG, True, id="a picture"),
        pytest.param(b"<svg onload=x>", False, id="no picture in a picture's name"),
        pytest.param(None, False, id="not there"),
    ],
)
def test_a_picture_is_shown_when_it_lies_below_the_log(
    tmp_path: Path, content: bytes | None, is_shown: bool
) -> None:
    """Else its name stands there in words, and nothing is loaded."""
    if content is not None:
        (tmp_path / "pictures").mkdir()
        (tmp_path / "pictures" / "coil.jpg").write_bytes(content)
    page = tree_of(Bench(path=tmp_path / "spring.yaml").page)
    sources = [each.attrs["src"] for each in page.tags("img")]
    assert sources == (["photos/spring/pictures/coil.jpg"] if is_shown else [])
    assert "Picture: pictures/coil.jpg" in section(page, "log").text


def test_text_from_a_log_is_never_markup() -> None:
    """Whatever somebody writes into a log stands on the page as it is."""
    hostile = job(SPRING).model_copy(update={"purpose": HOSTILE, "note": HOSTILE})
    entry = hostile.log[1].model_copy(update={"did": HOSTILE, "answer": HOSTILE, "step": None})
    hostile = hostile.model_copy(update={"log": (entry,)})
    series = replace(SERIES, title=HOSTILE, drift=HOSTILE)
    page = tree_of(Bench(report(hostile, series=(series,))).page)
    assert page.runs() == []
    assert page.tags("img") == []
    assert page.text.count("<script>x</script>") >= 6


def test_a_job_without_anything_still_has_a_page() -> None:
    """No entry, no stage, no want, no reading, no machine sheet: it says so."""
    empty = job("job: spring\nmachine: lost\ntaken-in: 2026-02-14\npurpose: To run.\nmost: 10\n")
    bare = report(
        empty, stages=(), next_checks=(), proofs=(), purchases=(), series=(), newest_first=()
    )
    page = tree_of(Bench(bare, has_sheet=False).page)
    assert page.tags("h1")[0].text == "lost: the job"
    for key in ("next_none", "stages_none", "buy_nothing", "parts_none", "log_none"):
        assert KIT.job[key] in page.text
    assert not [a for a in page.tags("a") if a.attrs.get("href", "").startswith("../machines/")]


@pytest.mark.parametrize(
    "name", ["bullace-tiller", "damson-spring", "medlar-pump", "quince-lights"]
)
def test_the_demos_jobs_tell_their_states(name: str) -> None:
    """Read from their files: which are left safe, which are past the stop line, which drift."""
    demo = ROOT / "demo"
    project = load_project([ROOT / "procedures", demo / "machines", demo / "jobs"])
    found = read_job_report(project.jobs[name].job, project.library)
    stages = {state.name: state.proof for state in found.stages}
    waits = {each.name for each in found.purchases if not each.may_buy}
    expected = {
        "bullace-tiller": (False, False, set(), set()),
        "damson-spring": (
            False, False, set(), {"chain", "sprockets", "front-tyres", "brake-shoes"},
        ),
        "medlar-pump": (True, True, {"compression"}, {"housing"}),
        "quince-lights": (
            True, False, {"battery-voltage", "coil-secondary", "stop-wire-run"},
            {"wheels", "battery"},
        ),
    }  # fmt: skip
    drifting = {each.name for each in found.series if each.drift}
    assert (found.left.is_safe, found.money.is_past_stop, drifting, waits) == expected[name]
    assert stages["runs"] != "proved"
    assert project.findings == ()
