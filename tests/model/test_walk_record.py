"""A saved walk is read as it was written, or refused with the place of what is wrong."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from pullcord.model.target import Target
from pullcord.model.walk_record import WalkAnswer, WalkRecord, WalkRound
from pullcord.rules.document import locate, read_document

GUIDE = Path(__file__).parents[2] / "guide" / "walk.md"
ANSWER = {"step": "coil", "answer": "no", "reading": "OL", "when": "2026-03-01 19:22"}
ROUND = {
    "began": "2026-03-01 19:20",
    "left": "2026-03-01 20:05",
    "at": "step stop-wire",
    "answers": [{"step": "look", "when": "2026-03-01 19:21"}, ANSWER],
}
RECORD = {
    "walk": "no-spark",
    "format": 1,
    "revision": "0123456789ab",
    "machine": "quince",
    "shop-celsius": -10,
    "rounds": [ROUND],
}

BY_HAND = """\
walk: no-spark
format: 1
revision: 0123456789ab
rounds:
  - began: 2026-03-01 19:20
    left: 2026-03-01 19:20
    at: done
"""


def read(text: str) -> WalkRecord:
    """Read a record that has nothing wrong with it."""
    document = read_document("walk.json", text.encode(), WalkRecord)
    assert locate(document, ()) == ()
    assert document.record is not None
    return document.record


def test_what_the_tablet_writes_is_read() -> None:
    """Every figure comes through JSON; an answer of `no` stays a word."""
    record = read(json.dumps(RECORD, indent=1))
    assert (record.walk, record.machine, record.shop_celsius) == ("no-spark", "quince", -10)
    assert record.last.at == Target("step", "stop-wire")
    assert record.last.answers == (
        WalkAnswer(step="look", when="2026-03-01 19:21"),
        WalkAnswer(step="coil", answer="no", reading="OL", when="2026-03-01 19:22"),
    )


def test_the_guide_shows_a_record_and_names_every_key() -> None:
    """The example of the guide is read as it stands there, and its table leaves no key out."""
    guide = GUIDE.read_text(encoding="utf-8")
    example = guide.partition("```yaml\n")[2].partition("```")[0]
    assert [each.step for each in read(example).last.answers][-1] == "cap-reading"
    for model in (WalkRecord, WalkRound, WalkAnswer):
        for field in model.model_fields.values():
            assert f"`{field.alias}`" in guide


def test_what_a_hand_writes_is_read() -> None:
    """Machine, warmth and answers may be left out."""
    record = read(BY_HAND)
    assert (record.machine, record.shop_celsius, record.last.answers) == (None, None, ())
    assert record.last.at == Target("done")


@pytest.mark.parametrize(
    ("before", "after", "place", "rule"),
    [
        ("format: 1", "format: 2", "2:9", "unknown-word"),
        ("0123456789ab", "latest", "3:11", "wrong-value"),
        ("left: 2026-03-01 19:20", "left: 2026-03-01", "6:11", "wrong-value"),
        ("left: 2026-03-01 19:20", "left: 2026-13-01 19:20", "6:11", "wrong-value"),
        ("at: done", "at: somewhere", "7:9", "bad-target"),
        ("walk: no-spark", "walk: No Spark", "1:7", "bad-name"),
        ("walk: no-spark", "walk: no-spark\nshop-celsius: warm", "2:15", "wrong-number"),
        ("at: done", "at: done\n    cause: plug", "8:5", "unknown-key"),
        ("format: 1\n", "", "1:1", "missing-key"),
    ],
)
def test_what_cannot_be_read_is_named(before: str, after: str, place: str, rule: str) -> None:
    """Whatever is wrong has its line and column."""
    assert before in BY_HAND
    raw = BY_HAND.replace(before, after).encode()
    findings = locate(read_document("walk.json", raw, WalkRecord), ())
    assert [(f"{each.line}:{each.column}", each.rule) for each in findings] == [(place, rule)]


def test_a_record_without_rounds_is_none() -> None:
    """There is always a last round."""
    document = read_document("w.json", json.dumps({**RECORD, "rounds": []}).encode(), WalkRecord)
    assert [each.rule for each in locate(document, ())] == ["wrong-value"]
