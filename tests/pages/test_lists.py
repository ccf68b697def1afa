"""Choosing a procedure by what the machine does."""

from __future__ import annotations

from dataclasses import replace

from tests.pages.make import (
    KIT,
    NO_SPARK,
    SETTINGS,
    WONT_IDLE,
    example_pages,
    pages_of,
    procedure,
    tree_of,
)

HOME = tree_of(example_pages()["index.md"])


def test_home_asks_by_symptom() -> None:
    """Each procedure is one link that says the symptom first, then other words for it."""
    entries = {link.attrs["href"]: link for link in HOME.all("pc-entry")}
    assert set(entries) == {"procedures/no-spark.html", "procedures/wont-idle.html"}
    entry = entries["procedures/no-spark.html"]
    assert entry.all("pc-way__said")[0].text == "The engine spins but there is no spark."
    assert [said.text for said in entry.tags("q")] == ["it will not fire", "dead ignition"]
    assert "from 5 min to 20 min · 3 steps · 3 causes" in entry.text


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
        "bench-tables.html",
        "rules.html",
        "binder.html",
    }


def test_a_procedure_no_group_names_stands_at_the_end() -> None:
    """Nothing is lost because nobody sorted it."""
    own = procedure(WONT_IDLE.replace("procedure: wont-idle", "procedure: own-thing"))
    home = tree_of(pages_of(own, procedure(NO_SPARK), procedure(WONT_IDLE))["index.md"])
    groups = [nav.attrs["aria-labelledby"] for nav in home.tags("nav")]
    assert groups[-2:] == ["group-other-title", "places-title"]
    assert "own-thing.html" in home.by_id("group-other").tags("a")[0].attrs["href"]


def test_an_empty_library_still_has_a_home() -> None:
    """A project begins with nothing."""
    pages = pages_of()
    assert tree_of(pages["index.md"]).all("pc-entry") == []
    assert "Procedures: 0" in tree_of(pages["procedures.md"]).text


def test_the_list_gives_each_revision() -> None:
    """To compare with a sheet of paper."""
    page = tree_of(example_pages()["procedures.md"])
    assert [link.attrs["href"] for link in page.all("pc-entry")] == [
        "procedures/no-spark.html",
        "procedures/wont-idle.html",
    ]
    assert "revision 0123456789ab" in page.all("pc-entry")[0].text


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
