"""The page about cautions says what the code does; `make golden` writes its tables anew."""

from __future__ import annotations

import os
import re
from pathlib import Path

import pytest
import yaml

from pullcord.model.procedure import Step
from pullcord.rules.catalogue import documented_rules, rules
from pullcord.safety.petrol import (
    CUP_LITRES,
    FLASH_POINT_CELSIUS,
    LIQUID_DENSITY_KG_PER_LITRE,
    LOWER_LIMIT,
    UPPER_LIMIT,
    VAPOUR_DENSITY,
    flammable_air,
)
from pullcord.safety.reference import render_conditions, render_hazards, render_verbs

ROOT = Path(__file__).parents[2]
PAGE = ROOT / "guide" / "safety.md"


def render_rules() -> str:
    """Return the safety rules with what each says, warnings last."""
    names = {rule.id for rule in rules() if rule.group == "safety"}
    found = [rule for rule in documented_rules() if rule.id in names]
    found.sort(key=lambda rule: (rule.severity, rule.id))
    return "\n".join(f"- `{rule.id}`: {rule.title}" for rule in found)


def render_spill() -> str:
    """Return the sentence about a spilled cup with its figures filled in."""
    path = ROOT / "site_templates" / "texts" / "spill.yaml"
    text = yaml.safe_load(path.read_text(encoding="utf-8"))["spill"]
    return text.format(litres=f"{CUP_LITRES:g}", range=flammable_air(CUP_LITRES).say())


PARTS = {
    "rules": render_rules,
    "spill": render_spill,
    "verbs": render_verbs,
    "conditions": render_conditions,
    "hazards": render_hazards,
}


@pytest.mark.parametrize(("name", "render"), PARTS.items(), ids=PARTS)
def test_golden_part_of_the_guide(name, render) -> None:
    """Each table of the page is the one the code would write."""
    begin, end = f"<!-- {name}: begin -->\n", f"<!-- {name}: end -->"
    page = PAGE.read_text(encoding="utf-8")
    before, rest = page.split(begin)
    written, after = rest.split(end)
    expected = f"\n{render()}\n\n"
    if os.environ.get("PULLCORD_GOLDEN") == "write":
        PAGE.write_text(f"{before}{begin}{expected}{end}{after}", encoding="utf-8")
        written = expected
    assert written == expected


def test_only_the_last_rule_is_a_warning() -> None:
    """The page says so in words."""
    names = {rule.id for rule in rules() if rule.group == "safety"}
    grave = [
        rule.id for rule in documented_rules() if rule.id in names and rule.severity == "error"
    ]
    assert names - set(grave) == {"never-begun"}
    assert render_rules().splitlines()[-1].startswith("- `never-begun`")


def test_the_figures_in_the_text_are_those_of_the_code() -> None:
    """Limits, flash point and densities, as the paragraph on spills words them."""
    page = " ".join(PAGE.read_text(encoding="utf-8").split())
    least, most = LIQUID_DENSITY_KG_PER_LITRE
    for said in (
        f"from {LOWER_LIMIT:.1%}".replace("%", " %") + f" to {UPPER_LIMIT:.1%}".replace("%", " %"),
        f"from −{-FLASH_POINT_CELSIUS:g} °C",
        f"is {VAPOUR_DENSITY[0]:g} to {VAPOUR_DENSITY[1]:g} times",
        f"weighs {least:g} to {most:g} kg",
    ):
        assert said in page


def test_the_example_on_the_page_can_be_written() -> None:
    """The keys of the YAML on the page are keys of a step."""
    (block,) = re.findall(r"```yaml\n(.*?)```", PAGE.read_text(encoding="utf-8"), re.DOTALL)
    (step,) = yaml.safe_load(block).values()
    assert Step.model_validate(step).opens == ("petrol",)
