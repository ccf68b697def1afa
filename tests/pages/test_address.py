"""Links are relative and work with no server."""

from __future__ import annotations

import pytest

from pullcord.model.target import Target
from pullcord.pages.address import link
from tests.pages.make import NO_SPARK, WONT_IDLE, posts_of, procedure, shelf

LINKS = {
    "home to a procedure": ("index.md", "procedures/no-spark.md", "", "procedures/no-spark.html"),
    "procedure to home": ("procedures/no-spark.md", "index.md", "", "../index.html"),
    "beside": ("procedures/a.md", "procedures/b.md", "step-x", "b.html#step-x"),
    "deeper": ("machines/pump/a.md", "rules.md", "", "../../rules.html"),
}


@pytest.mark.parametrize("case", LINKS)
def test_links_are_relative(case: str) -> None:
    """From any folder to any other."""
    from_uri, to_uri, fragment, expected = LINKS[case]
    assert link(from_uri, to_uri, fragment) == expected


TARGETS = {
    "step": (Target("step", "plug"), "#step-plug"),
    "cause": (Target("cause", "coil-open"), "#cause-coil-open"),
    "procedure": (Target("procedure", "wont-idle"), "wont-idle.html"),
    "done": (Target("done"), "#done"),
}


@pytest.mark.parametrize("case", TARGETS)
def test_a_target_is_a_place(case: str) -> None:
    """A section of the same page, or another procedure's page."""
    target, expected = TARGETS[case]
    posts = posts_of(shelf(procedure(NO_SPARK), procedure(WONT_IDLE)), "no-spark")
    assert posts.href(target) == expected
