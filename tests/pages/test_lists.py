"""Choosing a procedure by what the machine does."""

from __future__ import annotations

from dataclasses import replace

from pullcord.model.stage import Evidence, Stage
from pullcord.pages.page import Page
from pullcord.pages.site import site_pages
from tests.pages.make import (
    KIT,
    NO_SPARK,
    SETTINGS,
    WONT_IDLE,
    example_pages,
    pages_of,
    procedure,
    shelf,
    tree_of,
)

HOME = tree_of(example_pages()["index.md"])

CALM = """\
procedure: stray
title: Calm
symptom: It stands.
about: For any machine.
start: look
causes:
  dirt: {title: Dirt, remedy: Wipe it off.}
steps:
  look: {title: Look, do: Look at it., ask: "Clean?", answers: {it is: done, not: cause dirt}}
"""

STAGES = {
    "sparks": Stage(title="It sparks", means="It does.", looked_for_in=("second", "no-spark")),
    "drives": Stage(title="It drives", means="It does.", proved_by=(Evidence(procedure="drive"),)),
}


def staged_pages() -> dict[str, Page]:
    """Make the pages of a library with two stages, something dangerous and a stray."""
    calm = [CALM.replace("stray", name, 1) for name in ("drive", "second", "stray")]
    bare = shelf(*map(procedure, (NO_SPARK, WONT_IDLE, *calm)))
    project = replace(bare, library=bare.library.model_copy(update={"stages": STAGES}))
    return {page.src_uri: page for page in site_pages(project, SETTINGS)}


def test_home_has_one_tile_for_each_procedure() -> None:
    """Its title and no more, so that many find room under a thumb."""
    (tile,) = HOME.all("pc-tile")
    assert (tile.attrs["href"], tile.text) == ("procedures/no-spark.html", "No spark")


def test_what_is_dangerous_stands_first_with_its_symptom() -> None:
    """Nobody takes it for one tile among many: its first step stands behind DANGER."""
    first, *rest = HOME.all("pc-entry")
    assert HOME.by_id("group-urgent").all("pc-entry") == [first]
    assert first.text == "Will not idle It dies when you let go."
    assert [link.text for link in rest] == ["No spark"]


def test_the_others_stand_by_what_one_is_out_to_show() -> None:
    """In the order of the stages, what a stage looks for first; what serves none at the end."""
    pages = staged_pages()
    for uri in ("index.md", "procedures.md"):
        links = {
            group.attrs["id"]: [link.attrs["href"] for link in group.all("pc-entry")]
            for group in tree_of(pages[uri]).all("pc-section")
            if group.attrs.get("id", "").startswith("group-")
        }
        assert links == {
            "group-urgent": ["procedures/wont-idle.html"],
            "group-to-sparks": ["procedures/second.html", "procedures/no-spark.html"],
            "group-to-drives": ["procedures/drive.html"],
            "group-other": ["procedures/stray.html"],
        }
        assert list(links)[-1] == "group-other"
    assert "Towards: It drives" in tree_of(pages["index.md"]).by_id("group-to-drives").text


def test_home_leads_to_the_finder_where_there_is_one() -> None:
    """Above everything else; a library without a sign has neither the page nor the link."""
    with_signs = NO_SPARK.replace("about:", "signs: {seen: no spark at the plug}\nabout:", 1)
    pages = pages_of(procedure(with_signs), procedure(WONT_IDLE))
    (first,) = tree_of(pages["index.md"]).all("pc-first")
    assert [link.attrs["href"] for link in first.tags("a")] == ["finder.html"]
    assert "finder.md" in pages
    assert "finder.md" not in example_pages()
    assert HOME.all("pc-first") == []


def test_home_says_what_to_do_about_petrol_and_gas() -> None:
    """The note on safety stands on the first page."""
    text = HOME.by_id("safety").text
    assert "smell petrol" in text
    assert "fresh air" in text


def test_home_leads_to_every_other_page() -> None:
    """Where things are."""
    links = {link.attrs["href"] for link in HOME.by_id("places").tags("a")}
    assert links == {
        "how-to-read.html",
        "procedures.html",
        "map.html",
        "bench-tables.html",
        "rules.html",
        "binder.html",
    }


def test_an_empty_library_still_has_a_home() -> None:
    """A project begins with nothing."""
    pages = pages_of()
    assert tree_of(pages["index.md"]).all("pc-entry") == []
    assert "Procedures: 0" in tree_of(pages["procedures.md"]).text


def test_the_list_says_of_each_its_symptom_its_time_and_its_revision() -> None:
    """To choose by, and to compare with a sheet of paper."""
    page = tree_of(example_pages()["procedures.md"])
    assert [link.attrs["href"] for link in page.all("pc-entry")] == [
        "procedures/wont-idle.html",
        "procedures/no-spark.html",
    ]
    text = page.all("pc-entry")[1].text
    assert "The engine spins but there is no spark." in text
    assert "from 5 min to 20 min · 3 steps · 3 causes" in text
    assert "revision 0123456789ab" in text


def test_home_may_lie_elsewhere() -> None:
    """A project with a home page of its own keeps it; every way home follows."""
    settings = replace(SETTINGS, home_uri="start.md")
    pages = pages_of(procedure(WONT_IDLE), settings=settings)
    assert "index.md" not in pages
    assert "start.md" in pages
    hrefs = {link.attrs["href"] for link in tree_of(pages["procedures/wont-idle.md"]).tags("a")}
    assert "../start.html" in hrefs


def test_the_words_for_odds_are_explained_as_they_are_used() -> None:
    """The guide's table comes from the same numbers."""
    plates = tree_of(example_pages()["how-to-read.md"]).by_id("odds").tags("li")
    assert [plate.text for plate in plates] == [
        "often 25 % up to 100 % of the time",
        "now and then 10 % up to 25 % of the time",
        "seldom 3 % up to 10 % of the time",
        "rare 0 % up to 3 % of the time",
    ]


def test_the_guide_shows_every_signal_word_and_every_sign() -> None:
    """Signal words gravest first, meanings as ANSI Z535.4-2007 4.14 gives them."""
    guide = tree_of(example_pages()["how-to-read.md"])
    plates = [plate.text for plate in guide.by_id("signal-words").tags("li")]
    assert [plate.split()[0] for plate in plates] == ["DANGER", "WARNING", "CAUTION", "NOTICE"]
    for plate, words in zip(
        plates,
        (
            ("will", "kill", "seriously"),
            ("could", "kill", "seriously"),
            ("could", "moderately"),
            (),
        ),
        strict=True,
    ):
        assert all(word in plate for word in words)
    assert [plate.text for plate in guide.by_id("signs").tags("li")] == list(KIT.signs.values())
