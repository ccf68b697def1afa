"""What the guide says about checking is so."""

from __future__ import annotations

import json
import re
from pathlib import Path

from pullcord.rules.catalogue import rules
from pullcord.rules.example import example
from pullcord.rules.report import FORMATS
from pullcord.rules.report.json_ import json_report
from pullcord.rules.report.made import Report
from pullcord.rules.report.text import text_report
from pullcord.rules.severity import WARNINGS
from tests.rules.files import check_files

GUIDE = (Path(__file__).parents[3] / "guide" / "checking.md").read_text(encoding="utf-8")
FILE = example("title: Pump will not prime\n").replace("cause air-leak", "cause air-leek")
FOUND = [
    each
    for each in check_files({"procedures/no-prime.yaml": FILE.encode()})
    if each.rule == "unknown-target"
]


def test_the_rules_that_can_be_allowed_are_those() -> None:
    """Every warning but those about safety and about allowing."""
    listed = GUIDE.partition("<!-- allowable: begin -->")[2].partition("<!-- allowable: end -->")[0]
    allowable = [
        rule.id
        for rule in rules()
        if rule.id in WARNINGS and not rule.is_safety and rule.group != "allow"
    ]
    assert re.findall(r"`([a-z-]+)`", listed) == allowable


def test_every_form_is_told() -> None:
    """By the name one types."""
    assert all(f"\n`{form}` " in GUIDE for form in FORMATS)


def test_the_finding_looks_as_shown() -> None:
    """Word for word, as a terminal shows it."""
    lines = text_report([(FOUND[0], FILE.encode())], lambda role, text: text)
    assert "\n".join(lines) in GUIDE


def test_the_json_looks_as_shown() -> None:
    """Every key that is shown is there, with what is shown behind it."""
    shown = json.loads(GUIDE.partition("```json\n")[2].partition("```")[0])
    made = json.loads(json_report(Report(tuple(FOUND))))
    why = shown["findings"][0].pop("why").removesuffix(" ...")
    assert made["findings"][0].pop("why").startswith(why)
    assert made == shown


def test_the_comment_that_is_shown_allows() -> None:
    """The example of the guide is one that works."""
    shown = GUIDE.partition("```yaml\n")[2].partition("```")[0]
    assert check_files({"no-prime.yaml": example(shown).encode()}) == ()
