"""Each safety rule finds what it says it finds, and nothing in its twin that has been mended."""

from __future__ import annotations

import importlib
import pkgutil
import re
from types import ModuleType

import pytest
import yaml

import pullcord.rules.safety
from pullcord.model.procedure import Procedure
from tests.safety.make import procedure


def rules() -> dict[str, ModuleType]:
    """Return every safety rule by its identifier."""
    found = [
        importlib.import_module(f"pullcord.rules.safety.{module.name}")
        for module in pkgutil.iter_modules(pullcord.rules.safety.__path__)
    ]
    return {rule.ID: rule for rule in found}


RULES = rules()


def example(text: str) -> Procedure:
    """Return an example of a rule's page, every scalar as text."""
    return Procedure.model_validate(yaml.load(text, Loader=yaml.BaseLoader))  # noqa: S506


@pytest.mark.parametrize("rule", RULES.values(), ids=RULES)
def test_the_failing_example_fails_by_its_own_rule_alone(rule) -> None:
    """The example shows this mistake and no other."""
    failing = example(rule.FAILING)
    assert [name for name, each in RULES.items() if list(each.check(failing, None))] == [rule.ID]


@pytest.mark.parametrize("rule", RULES.values(), ids=RULES)
def test_the_mended_example_passes_every_rule(rule) -> None:
    """The mend the page shows is a whole one."""
    mended = example(rule.MENDED)
    assert [name for name, each in RULES.items() if list(each.check(mended, None))] == []


@pytest.mark.parametrize("rule", RULES.values(), ids=RULES)
def test_a_finding_points_into_the_file_and_says_how_to_mend_it(rule) -> None:
    """The place exists in the author's file; the mend names a key to write."""
    data = yaml.load(rule.FAILING, Loader=yaml.BaseLoader)  # noqa: S506
    for flaw in rule.check(example(rule.FAILING), None):
        value = data
        for key in flaw.at:
            value = value[key]
        assert flaw.mend


def test_each_rule_stands_in_the_file_of_its_name() -> None:
    """`ignition-near-petrol` is found in `ignition_near_petrol.py`."""
    assert {name.replace("-", "_") for name in RULES} == {
        rule.__name__.rpartition(".")[2] for rule in RULES.values()
    }


TABLE = {
    "spark after draining": ("""
        steps:
          a: {cools: engine, opens: petrol, then: step b}
          b: {makes: spark}
        """, ["ignition-near-petrol b", "not-put-right a"]),
    "spark in the vapour": ("""
        steps:
          a: {cools: engine, opens: petrol, then: step b}
          b: {closes: petrol, then: step c}
          c: {makes: spark, then: step d}
          d: {clears: vapour}
        """, ["ignition-near-petrol c"]),
    "all closed and cleared": ("""
        steps:
          a: {cools: engine, opens: petrol, then: step b}
          b: {closes: petrol, clears: vapour, then: step c}
          c: {makes: spark}
        """, []),
    "battery taken off beside open petrol": ("""
        steps:
          a: {cools: engine, opens: petrol, then: step b}
          b: {disconnects: battery, then: step c}
          c: {closes: petrol, clears: vapour}
        """, ["ignition-near-petrol b"]),
    "petrol measured by cranking, all made safe": ("""
        steps:
          a: {disables: ignition, disconnects: battery, then: step b}
          b: {cools: engine, opens: petrol, then: step c}
          c: {makes: cranking, then: step d}
          d: {closes: petrol, clears: vapour}
        """, []),
    "the same with the battery left on": ("""
        steps:
          a: {disables: ignition, then: step b}
          b: {cools: engine, opens: petrol, then: step c}
          c: {makes: cranking, then: step d}
          d: {closes: petrol, clears: vapour}
        """, ["ignition-near-petrol c"]),
    "soldering near petrol": ("steps: {a: {makes: hot-work, near: petrol}}",
        ["ignition-near-petrol a"]),
    "spark near petrol that is shut": ("steps: {a: {makes: spark, near: petrol}}", []),
    "petrol opened beside a running engine": ("""
        steps:
          a: {arranges: [fresh-air, way-to-stop], then: step b}
          b: {starts: engine, then: step c}
          c: {opens: petrol, then: step d}
          d: {stops: engine, closes: petrol, clears: vapour}
        """, ["ignition-near-petrol c", "petrol-near-hot-engine c"]),
    "drips from the auxiliary tank not wiped up": ("""
        steps:
          a: {arranges: [fresh-air, way-to-stop], then: step b}
          b: {cools: engine, fits: auxiliary-tank, then: step c}
          c: {makes: running, then: step d}
          d: {cools: engine, then: step e}
          e: {takes-off: auxiliary-tank, clears: vapour}
        """, ["ignition-near-petrol c"]),
    "auxiliary tank, wiped up": ("""
        steps:
          a: {arranges: [fresh-air, way-to-stop], then: step b}
          b: {cools: engine, fits: auxiliary-tank, clears: vapour, then: step c}
          c: {makes: running, then: step d}
          d: {cools: engine, then: step e}
          e: {takes-off: auxiliary-tank, clears: vapour}
        """, []),
    "runs with nothing arranged": ("steps: {a: {makes: running}}",
        ["runs-without-air a", "runs-without-stop a"]),
    "arranged in the same step": ("steps: {a: {arranges: fresh-air, makes: running}}",
        ["runs-without-air a", "runs-without-stop a"]),
    "arranged on one way only": ("""
        steps:
          a: {answers: {x: step b, y: step c}}
          b: {arranges: [fresh-air, way-to-stop], then: step c}
          c: {makes: running}
        """, ["runs-without-air c", "runs-without-stop c"]),
    "a remedy that runs the engine": ("""
        causes: {screw: {makes: running}}
        steps: {a: {arranges: fresh-air, then: cause screw}}
        """, ["runs-without-stop screw"]),
    "spark beside the open plug hole": ("""
        steps:
          a: {opens: plug-hole, then: step b}
          b: {makes: spark, then: step c}
          c: {closes: plug-hole}
        """, ["sparks-at-open-plug-hole b"]),
    "ignition enabled again too early": ("""
        steps:
          a: {disables: ignition, then: step b}
          b: {opens: plug-hole, then: step c}
          c: {enables: ignition, then: step d}
          d: {makes: cranking, then: step e}
          e: {closes: plug-hole}
        """, ["sparks-at-open-plug-hole d"]),
    "supports gone with lowering": ("""
        steps:
          a: {raises: machine, then: step b}
          b: {supports: machine, then: step c}
          c: {lowers: machine, then: step d}
          d: {raises: machine, then: step e}
          e: {works-under: machine, then: step f}
          f: {lowers: machine}
        """, ["under-unsupported e"]),
    "under a machine nobody raised": ("steps: {a: {works-under: machine}}",
        ["under-unsupported a"]),
    "under while it is cranked": ("""
        steps:
          a: {supports: machine, then: step b}
          b: {works-under: machine, makes: cranking}
        """, ["near-moving-machine b"]),
    "spark test beside a battery on the charger": ("""
        steps:
          a: {connects: charger, then: step b}
          b: {makes: spark, then: step c}
          c: {disconnects: charger}
        """, ["flame-near-charging b"]),
    "cleaned up after, all in the remedy": ("""
        causes: {jet: {cools: engine, opens: petrol, closes: petrol, clears: vapour}}
        steps: {a: {then: cause jet}}
        """, []),
    "petrol opened and nobody waited": ("""
        steps:
          a: {opens: petrol, then: step b}
          b: {closes: petrol, clears: vapour}
        """, ["petrol-near-hot-engine a"]),
    "a machine that arrives dripping": ("""
        steps:
          a: {opens: petrol, cools: engine, then: step b}
          b: {closes: petrol, clears: vapour}
        """, []),
    "cooled, run and opened again": ("""
        steps:
          a: {cools: engine, arranges: [fresh-air, way-to-stop], then: step b}
          b: {makes: running, then: step c}
          c: {opens: petrol, cools: engine, then: step d}
          d: {closes: petrol, clears: vapour}
        """, ["petrol-near-hot-engine c"]),
}  # fmt: skip


@pytest.mark.parametrize(("text", "expected"), TABLE.values(), ids=TABLE)
def test_known_cases(text, expected) -> None:
    """Hand-made procedures with known answers: which rule, at which step or cause."""
    each = procedure(text)
    found = {f"{name} {flaw.at[1]}" for name, rule in RULES.items() for flaw in rule.check(each)}
    assert found == set(expected)


@pytest.mark.parametrize("rule", RULES.values(), ids=RULES)
def test_the_page_of_a_rule_names_only_keys_that_exist(rule) -> None:
    """What the page tells an author to write can be written."""
    written = re.findall(r"`([a-z-]+): ([a-z-]+)`", f"{rule.__doc__} {getattr(rule, 'MEND', '')}")
    for verb, thing in written:
        procedure(f"steps: {{a: {{{verb}: {thing}}}}}")
