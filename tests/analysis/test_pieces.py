"""Which procedures use what is shared."""

from __future__ import annotations

from pullcord.analysis.pieces import used_pieces
from tests.analysis.making import make_procedure

ANSWERS = {"ask": "?", "answers": {"so": "cause it", "not so": "done"}}


def test_each_shared_thing_with_all_that_use_it() -> None:
    """Steps before causes, the most used first, each use by the procedure's own name for it."""
    one = make_procedure(
        {
            "air": {"as": "fresh-air", "title": "Open the doors", "then": "step smell"},
            "smell": {"as": "smell-first", **ANSWERS},
        },
        {"it": {"as": "ground-bad", "title": "Ground bad"}},
        procedure="one",
    )
    other = make_procedure(
        {"sniff": {"as": "smell-first", **ANSWERS}}, {"it": {}}, procedure="other"
    )
    found = [(each.kind, each.name, each.title, each.uses) for each in used_pieces([one, other])]
    assert found == [
        ("step", "smell-first", "smell", (("one", "smell"), ("other", "sniff"))),
        ("step", "fresh-air", "Open the doors", (("one", "air"),)),
        ("cause", "ground-bad", "Ground bad", (("one", "it"),)),
    ]


def test_what_is_a_procedures_own_is_not_listed() -> None:
    """Nothing shared, nothing to say."""
    assert used_pieces([make_procedure({"look": ANSWERS}, {"it": {}})]) == ()
