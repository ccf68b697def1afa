"""Every page says how old it is and what goes before it; the same input gives the same bytes."""

from __future__ import annotations

import pytest

from tests.pages.make import (
    KIT,
    NO_SPARK,
    WONT_IDLE,
    example_pages,
    pages_of,
    procedure,
    tree_of,
)

URIS = list(example_pages())


def test_the_pages_of_a_site() -> None:
    """Home, list and guide are in the navigation; tables, rules and procedures are not."""
    assert sorted(URIS) == [
        "authors/keys/job.md",
        "authors/keys/machine.md",
        "authors/keys/procedure.md",
        "authors/keys/shared.md",
        "authors/keys/stages.md",
        "authors/no-spark.md",
        "authors/wont-idle.md",
        "bench-tables.md",
        "how-to-read.md",
        "index.md",
        "map.md",
        "procedures.md",
        "procedures/no-spark.md",
        "procedures/wont-idle.md",
        "rules.md",
    ]
    in_nav = [page.src_uri for page in example_pages().values() if page.in_nav]
    assert in_nav == ["index.md", "procedures.md", "how-to-read.md"]


def test_the_deferral_names_manual_codes_and_licensed_work() -> None:
    """The standing text defers to all three, and says to stop when in doubt."""
    text = " ".join(KIT.standing.deferral)
    for word in ("maker's manual", "codes", "licensed", "stop"):
        assert word in text


@pytest.mark.parametrize("uri", URIS)
def test_every_page_has_one_heading_of_the_first_rank(uri: str) -> None:
    """The theme would put one of its own above it otherwise."""
    page = example_pages()[uri]
    assert len(tree_of(page).tags("h1")) == 1


@pytest.mark.parametrize("uri", URIS)
def test_no_page_asks_for_anything_from_elsewhere(uri: str) -> None:
    """No script, no picture, no address of another host."""
    page = tree_of(example_pages()[uri])
    tags = {element.tag for element in page.walk()}
    assert page.runs() == []
    assert tags.isdisjoint({"img", "iframe", "object", "embed", "link", "form"})
    assert not any(name.startswith("on") for element in page.walk() for name in element.attrs)
    hrefs = [e.attrs["href"] for e in page.walk() if "href" in e.attrs]
    assert [href for href in hrefs if ":" in href or href.startswith("//")] == []


def test_the_same_files_give_the_same_bytes() -> None:
    """No clock, no chance, no order of sets."""
    again = pages_of(procedure(NO_SPARK), procedure(WONT_IDLE))
    assert again == example_pages()


def test_the_chart_stands_on_the_page() -> None:
    """Drawn once, beside windows that show its every part on paper, hidden from search."""
    page = tree_of(example_pages()["procedures/no-spark.md"])
    (chart,) = page.all("pc-chart-scroll")[0].all("pc-chart")
    assert [e.attrs["href"] for e in chart.tags("a") if e.attrs["href"] == "#step-coil"]
    assert "data-search-exclude" in page.all("pc-chart-scroll")[0].attrs
    assert all("data-search-exclude" in sheet.attrs for sheet in page.all("pc-sheet"))
    uses = [use.attrs["href"] for sheet in page.all("pc-sheet") for use in sheet.tags("use")]
    parts = [f"#{part.attrs['id']}" for kind in ("pc-edge", "pc-node") for part in chart.all(kind)]
    assert set(uses) == set(parts)
    assert len(uses) < 2 * len(parts)
