"""What a procedure is for: by the list of stages, or by what leads to it."""

from __future__ import annotations

from pullcord.analysis.purpose import purposes, stages_proved_by
from pullcord.model.procedure import Library
from tests.analysis.making import make_procedure

STAGES = {
    "taken": {
        "title": "Taken in",
        "means": "It is.",
        "proved-by": [{"procedure": "take-in", "step": "look", "answers": "not so"}],
    },
    "safe": {"title": "Safe", "means": "It is.", "looked-for-in": "make-safe"},
    "fuel": {
        "title": "Fuel",
        "means": "It is there.",
        "proved-by": [{"procedure": "leaks"}],
        "looked-for-in": ["leaks", "tank"],
    },
    "runs": {
        "title": "Runs",
        "means": "It does.",
        "proved-by": [{"procedure": "first-run"}, {"procedure": "idles"}],
    },
    "rides": {"title": "Rides", "means": "It does.", "proved-by": [{"procedure": "first-ride"}]},
}

HAND_OVERS = {
    "first-ride": ["smokes"],
    "first-run": ["smokes", "leaks"],
    "smokes": ["floods"],
    "floods": ["leaks"],
    "take-in": ["smokes"],
    "lay-up": ["floods", "make-safe"],
    "leaks": [],
    "tank": [],
    "make-safe": [],
    "idles": [],
    "alone": [],
}


def library() -> Library:
    """Return a library in which procedures hand over as the table says."""
    made = {}
    for name, heads in HAND_OVERS.items():
        answers = {f"so {head}": f"procedure {head}" for head in heads}
        step = {"look": {"ask": "?", "answers": {**answers, "it": "cause it", "not so": "done"}}}
        made[name] = make_procedure(step, {"it": {}}, procedure=name)
    return Library.model_validate({"procedures": made, "stages": STAGES})


def test_the_first_stage_that_names_a_procedure_is_what_it_is_for() -> None:
    """Whether it proves the stage or looks for what is in its way."""
    found = purposes(library())
    assert [found[name] for name in ("make-safe", "leaks", "tank", "idles", "first-ride")] == [
        "safe",
        "fuel",
        "fuel",
        "runs",
        "rides",
    ]


def test_others_serve_what_leads_to_them() -> None:
    """Smokes is as near to the first run as to the first ride: the earlier stage has it.

    Taking in leads there too, but it is done by one answer, whether or not anything smokes.
    """
    found = purposes(library())
    assert found["smokes"] == found["floods"] == "runs"


def test_what_nothing_leads_to_serves_what_it_leads_to() -> None:
    """Laying up leads to making safe in one hand-over."""
    assert purposes(library())["lay-up"] == "safe"


def test_what_stands_alone_serves_no_stage() -> None:
    """It is left out; a library without stages has no purposes at all."""
    assert "alone" not in purposes(library())
    bare = Library(procedures=library().procedures)
    assert purposes(bare) == {}


def test_what_a_pass_proves() -> None:
    """Only evidence proves; looking for a fault does not."""
    assert stages_proved_by(library(), "idles") == ("runs",)
    assert stages_proved_by(library(), "tank") == ()
