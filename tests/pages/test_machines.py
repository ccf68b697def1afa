"""The pages of a shed as a whole: which there are, and how they lead to one another."""

from __future__ import annotations

import posixpath

import pytest

from pullcord.pages.site import site_pages
from pullcord.readings import is_fitting
from tests.pages.make import (
    BIKE,
    CART,
    DIGEST,
    FILES,
    PINNED,
    PUMP,
    SETTINGS,
    SHEET_DIGEST,
    WONT_IDLE,
    example_pages,
    machine,
    pages_of,
    procedure,
    shed_pages,
    shelf,
    tree_of,
)

URIS = list(shed_pages())
PROCEDURES = (procedure(PINNED), procedure(WONT_IDLE))
MACHINES = tuple(machine(text) for text in (BIKE, PUMP, CART))


def test_one_page_for_each_machine_a_procedure_fits() -> None:
    """Beside the general one; and one for every machine itself."""
    fitting = {
        f"machines/{m.machine}/{p.procedure}.md"
        for p in PROCEDURES
        for m in MACHINES
        if is_fitting(p, m)
    }
    assert len(fitting) == 5
    assert fitting == {uri for uri in URIS if uri.startswith("machines/") and uri.count("/") == 2}
    sheets = {f"machines/{m.machine}.md" for m in MACHINES}
    assert sheets == {uri for uri in URIS if uri.startswith("machines/") and uri.count("/") == 1}
    assert {"procedures/no-spark.md", "procedures/wont-idle.md"} <= set(URIS)


def test_a_library_without_machines_has_none_of_it() -> None:
    """No list of nothing, no empty section, no offer."""
    assert not [uri for uri in example_pages() if uri.startswith("machines")]
    home = tree_of(example_pages()["index.md"])
    assert "machines" not in home.ids()
    assert not [a for a in home.tags("a") if "machines" in a.attrs["href"]]
    assert tree_of(example_pages()["procedures/no-spark.md"]).all("pc-versions") == []


def test_the_list_of_machines_is_in_the_navigation() -> None:
    """Behind the procedures; a machine's pages are not."""
    in_nav = [page.src_uri for page in shed_pages().values() if page.in_nav]
    assert in_nav == ["index.md", "procedures.md", "machines.md", "how-to-read.md"]


@pytest.mark.parametrize(("uri", "section"), [("index.md", "machines"), ("machines.md", None)])
def test_every_machine_is_offered(uri: str, section: str | None) -> None:
    """On the home page and in the list, with what it is."""
    page = tree_of(shed_pages()[uri])
    links = (page.by_id(section) if section else page).all("pc-way")
    assert [link.attrs["href"] for link in links] == [
        "machines/old-bike.html", "machines/old-pump.html", "machines/cart.html"
    ]  # fmt: skip
    assert links[0].text == "Old bike farm bike · points · carburettor · two-stroke"
    assert links[1].text == "Old pump pump · points"


@pytest.mark.parametrize("uri", URIS)
def test_every_link_leads_somewhere(uri: str) -> None:
    """A link's page exists and has the anchor; ids stand once."""
    page = tree_of(shed_pages()[uri])
    assert len(page.ids()) == len(set(page.ids()))
    for link in page.tags("a"):
        path, _, fragment = link.attrs["href"].partition("#")
        if FILES.search(path):
            continue
        joined = posixpath.normpath(posixpath.join(posixpath.dirname(uri), path))
        target = f"{joined.removesuffix('.html')}.md" if path else uri
        assert target in shed_pages()
        assert not fragment or fragment in tree_of(shed_pages()[target]).ids()


def test_a_general_page_offers_every_fitting_machine() -> None:
    """One link a machine, and nothing for the cart it does not fit."""
    (offer,) = tree_of(shed_pages()["procedures/no-spark.md"]).all("pc-versions")
    assert [(a.text, a.attrs["href"]) for a in offer.tags("a")] == [
        ("Old bike", "../machines/old-bike/no-spark.html"),
        ("Old pump", "../machines/old-pump/no-spark.html"),
    ]


def test_a_machine_s_page_says_whose_it_is() -> None:
    """Under the heading and in the title, with links to the sheet and the general page."""
    page = shed_pages()["machines/old-bike/no-spark.md"]
    tree = tree_of(page)
    assert page.title == "No spark: Old bike"
    assert tree.all("pc-for")[0].text == "For one machine: Old bike"
    links = [a.attrs["href"] for a in tree.all("pc-versions")[0].tags("a")]
    assert links == ["../old-bike.html", "../../procedures/no-spark.html"]
    foot = tree.all("pc-imprint")[0].text
    assert f"Procedure: revision {DIGEST}" in foot
    assert f"Machine sheet: revision {SHEET_DIGEST}" in foot


def test_a_hand_over_stays_with_the_machine() -> None:
    """It leads to the other procedure's page for the same machine, in step and flowchart."""
    page = tree_of(shed_pages()["machines/old-bike/no-spark.md"])
    (way,) = page.by_id("step-coil").all("pc-way--procedure")
    assert way.attrs["href"] == "wont-idle.html"
    drawn = [a.attrs["href"] for a in page.all("pc-chart-scroll")[0].tags("a")]
    assert "wont-idle.html" in drawn


def test_a_hand_over_that_does_not_fit_leads_to_the_general_page() -> None:
    """There is no page of the other procedure for this machine."""
    other = procedure(WONT_IDLE.replace("start: jet", "start: jet\nfits: {kind: [pump]}"))
    pages = pages_of(procedure(PINNED), other, machines=MACHINES)
    assert "machines/old-bike/wont-idle.md" not in pages
    page = tree_of(pages["machines/old-bike/no-spark.md"])
    (way,) = page.by_id("step-coil").all("pc-way--procedure")
    assert way.attrs["href"] == "../../procedures/wont-idle.html"


def test_only_the_general_page_is_searched() -> None:
    """Otherwise every word would be found once a machine; the sheets are found."""
    pages = (page for page in shed_pages().values() if page.src_uri.startswith("machines"))
    assert {page.src_uri for page in pages if not page.in_search} == {
        uri for uri in URIS if uri.startswith("machines/") and uri.count("/") == 2
    }


def test_cautions_are_the_same_for_every_machine() -> None:
    """No machine's page has a box less than the general one, nor in another place."""

    def boxes(uri: str) -> list[tuple[str, list[str]]]:
        steps = tree_of(shed_pages()[uri]).all("pc-step")
        return [(s.attrs["id"], [box.text for box in s.all("pc-box")]) for s in steps]

    general = boxes("procedures/no-spark.md")
    assert any(held for _, held in general)
    for name in ("old-bike", "old-pump"):
        assert boxes(f"machines/{name}/no-spark.md") == general


def test_the_same_files_give_the_same_bytes() -> None:
    """No clock, no chance, no order of sets."""
    again = {
        page.src_uri: page for page in site_pages(shelf(*PROCEDURES, machines=MACHINES), SETTINGS)
    }
    assert again == shed_pages()


def test_the_bench_tables_stand_on_one_page() -> None:
    """Every table with its source, found by a heading of its own."""
    page = shed_pages()["bench-tables.md"]
    tree = tree_of(page)
    assert len(page.headings) == len(tree.all("pc-section")) == len(tree.tags("table")) >= 6
    assert {heading.id for heading in page.headings} <= set(tree.ids())
    wire = tree.by_id("table-copper-wire-by-american-gauge")
    assert "ASTM B258" in wire.text
    assert "2.05 mm" in wire.text  # 12 gauge, as handbooks print it.
    for section in tree.all("pc-section"):
        assert "Source:" in section.text
