"""An order of steps is as safe as a procedure that goes just that way."""

from __future__ import annotations

import pytest
from hypothesis import given, settings

from pullcord.safety.conflicts import find_clashes
from pullcord.safety.ends import check_put_right
from pullcord.safety.flow import follow_from
from pullcord.safety.forbidden import FORBIDDEN
from pullcord.safety.order import is_safe_order, steps_that_matter
from tests.rules.safety.test_safety_rules import RULES
from tests.safety.make import procedure
from tests.safety.random_procedures import procedures

BENCH = procedure("""
causes: {jet: {closes: petrol, clears: vapour}, coil: }
steps:
  look: {then: step cold}
  cold: {cools: engine, then: step bowl}
  bowl: {opens: petrol, then: step shut}
  shut: {closes: petrol, clears: vapour, then: step spark}
  spark: {makes: spark, answers: {none: cause coil, wet: cause jet}}
""")
ORDERS = {
    "nothing": ((), True),
    "as written": (("look", "cold", "bowl", "shut", "spark", "cause:coil"), True),
    "spark before petrol": (("spark", "cold", "bowl", "shut", "done"), True),
    "spark while it is open": (("cold", "bowl", "spark"), False),
    "the hot engine opened": (("bowl",), False),
    "a beginning may leave things open": (("cold", "bowl"), True),
    "an end may not": (("cold", "bowl", "cause:coil"), False),
    "the remedy closes it": (("cold", "bowl", "cause:jet"), True),
    "handed over open": (("cold", "bowl", "procedure:next"), False),
    "closed before it was opened": (("cold", "shut", "bowl", "done"), False),
}


@pytest.mark.parametrize(("order", "is_safe"), ORDERS.values(), ids=ORDERS)
def test_known_orders(order, is_safe) -> None:
    """The same conflicts and loose ends as in a procedure."""
    assert is_safe_order(BENCH, order) == is_safe


def test_only_steps_that_declare_something_matter() -> None:
    """Looking changes nothing, wherever it stands."""
    assert steps_that_matter(BENCH) == {"cold", "bowl", "shut", "spark"}


def test_every_conflict_belongs_to_a_rule() -> None:
    """What an order is refused for, a procedure is refused for, and the other way round."""
    by_conflict = {name for name, rule in RULES.items() if hasattr(rule, "MEND")}
    assert by_conflict == set(FORBIDDEN)


@given(procedures())
@settings(max_examples=100, deadline=None, print_blob=True)
def test_a_straight_procedure_agrees_with_its_order(each) -> None:
    """A procedure without forks has a finding exactly when its one order is not safe."""
    names = list(each.steps)
    heads = [*(f"step {name}" for name in names[1:]), "cause c0"]
    straight = {
        name: step.model_dump(by_alias=True, include=set(step.model_fields_set) - {"answers"})
        | {"then": head}
        for (name, step), head in zip(each.steps.items(), heads, strict=True)
    }
    causes = {
        name: cause.model_dump(by_alias=True, include=set(cause.model_fields_set))
        for name, cause in each.causes.items()
    }
    whole = type(each).model_validate(
        {
            "procedure": "first",
            "title": "Straight",
            "symptom": "Straight.",
            "about": "Straight.",
            "start": names[0],
            "causes": causes,
            "steps": straight,
        }
    )
    found = any(find_clashes(follow_from(whole), conflicts) for conflicts in FORBIDDEN.values())
    left = bool(list(check_put_right(whole, None)))
    assert is_safe_order(whole, names) == (not found_before_the_remedy(whole))
    assert is_safe_order(whole, [*names, "cause:c0"]) == (not found and not left)


def found_before_the_remedy(whole) -> bool:
    """Return whether a step, not counting the remedy, is in conflict."""
    followed = follow_from(whole)
    return any(
        "/step:" in node
        for conflicts in FORBIDDEN.values()
        for node in find_clashes(followed, conflicts)
    )
