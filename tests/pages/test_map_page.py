"""The map of the library: the drawing, and the same in words."""

from __future__ import annotations

from dataclasses import replace

from pullcord.model.stage import Evidence, Stage
from pullcord.pages.site import site_pages
from tests.pages.make import (
    NO_SPARK,
    SETTINGS,
    WONT_IDLE,
    example_pages,
    pages_of,
    procedure,
    shelf,
    tree_of,
)

MAP = tree_of(example_pages()["map.md"])


def test_every_procedure_is_a_box_that_leads_to_it() -> None:
    """In the drawing as in the list."""
    hrefs = ["procedures/no-spark.html", "procedures/wont-idle.html"]
    (chart,) = MAP.all("pc-chart")
    assert sorted(link.attrs["href"] for link in chart.tags("a")) == hrefs
    listed = [item.tags("a")[0].attrs["href"] for item in MAP.by_id("hand-overs").tags("li")]
    assert sorted(listed) == hrefs


def test_the_list_names_every_hand_over() -> None:
    """And says so where there is none."""
    lines = {
        item.tags("b")[0].text: [link.text for link in item.all("pc-map-leads")[0].tags("a")]
        if item.all("pc-map-leads")
        else item.all("pc-note")[0].text
        for item in MAP.by_id("hand-overs").tags("li")
    }
    assert lines == {
        "No spark": ["Will not idle"],
        "Will not idle": "Hands over to nothing else.",
    }
    assert "Procedures: 2. Hand-overs between them: 1." in MAP.text


def test_what_is_dangerous_carries_its_word() -> None:
    """The gravest before its first step."""
    (chart,) = MAP.all("pc-chart")
    labels = {link.attrs["href"]: link.attrs["aria-label"] for link in chart.tags("a")}
    assert labels["procedures/wont-idle.html"] == "Procedure: DANGER. Will not idle."
    assert labels["procedures/no-spark.html"] == "Procedure: No spark."


def test_shared_steps_and_causes_lead_to_where_they_are_used() -> None:
    """To the very step; a library that shares nothing says nothing of it."""
    shared = NO_SPARK.replace("  look:\n", "  look:\n    as: look-first\n", 1).replace(
        "fouled: {title", "fouled: {as: plug-fouled, title", 1
    )
    page = tree_of(pages_of(procedure(shared), procedure(WONT_IDLE))["map.md"])
    for id_, title, href in (
        ("shared-steps", "Look at the leads", "procedures/no-spark.html#step-look"),
        ("shared-causes", "Plug fouled", "procedures/no-spark.html#cause-fouled"),
    ):
        (item,) = page.by_id(id_).tags("li")
        assert item.tags("b")[0].text == title
        assert [link.attrs["href"] for link in item.tags("a")] == [href]
    assert not {"shared-steps", "shared-causes"} & set(MAP.ids())


def test_an_empty_library_has_no_map() -> None:
    """There is nothing to draw."""
    assert "map.md" not in pages_of()


def test_a_procedures_page_names_the_stages_that_a_pass_proves() -> None:
    """By the list of stages."""
    bare = shelf(procedure(NO_SPARK), procedure(WONT_IDLE))
    stage = Stage(title="It sparks", means="It does.", proved_by=(Evidence(procedure="no-spark"),))
    project = replace(bare, library=bare.library.model_copy(update={"stages": {"spark": stage}}))
    pages = {page.src_uri: tree_of(page) for page in site_pages(project, SETTINGS)}
    proves = "What a pass proves Spark on its own parts Stage: It sparks"
    assert proves in pages["procedures/no-spark.md"].all("pc-summary")[0].text
    assert "Stage:" not in pages["procedures/wont-idle.md"].all("pc-summary")[0].text
