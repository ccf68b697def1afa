"""A procedure's page can be walked with links alone, and its links last."""

from __future__ import annotations

from collections.abc import Iterator

import networkx as nx
import pytest
from material.plugins.search.plugin import Parser

from pullcord.graph import procedure_graph
from pullcord.pages.page import Heading, Page
from tests.pages.make import (
    FILES,
    KIT,
    NO_SPARK,
    WONT_IDLE,
    example_pages,
    no_spark_page,
    procedure,
    tree_of,
)

TEXTS = {"no-spark": NO_SPARK, "wont-idle": WONT_IDLE}


def page_of(name: str) -> Page:
    """Return an example's page."""
    return example_pages()[f"procedures/{name}.md"]


@pytest.mark.parametrize("name", TEXTS)
def test_the_answers_are_exactly_the_ways_of_the_graph(name: str) -> None:
    """Every answer is a link to the section it leads to, and there is no other."""
    page = tree_of(page_of(name))
    graph = procedure_graph(procedure(TEXTS[name]))
    for node in (node for node in graph if node.startswith("step:")):
        ways = page.by_id(node.replace(":", "-")).all("pc-way")
        heads = [way.attrs["href"] for way in ways]
        expected = {
            f"{head.removeprefix('procedure:')}.html"
            if head.startswith("procedure:")
            else f"#{head.replace(':', '-')}"
            for head in graph.successors(node)
        }
        assert set(heads) == expected


@pytest.mark.parametrize("uri", list(example_pages()))
def test_every_link_leads_somewhere(uri: str) -> None:
    """A link's page exists and has the anchor; nothing leads out of the site.

    That the files beside the pages exist is tried on a built site.
    """
    trees = {page.src_uri: tree_of(page) for page in example_pages().values()}
    folder = uri.rpartition("/")[0]
    for link in trees[uri].tags("a"):
        path, _, fragment = link.attrs["href"].partition("#")
        if FILES.search(path):
            continue
        target = uri if not path else _join(folder, path)
        assert target in trees
        assert not fragment or fragment in trees[target].ids()


@pytest.mark.parametrize("uri", list(example_pages()))
def test_an_id_stands_once_on_a_page(uri: str) -> None:
    """A link can only mean one place, and every heading of the contents is one."""
    page = example_pages()[uri]
    ids = tree_of(page).ids()
    assert len(ids) == len(set(ids))
    assert {heading.id for heading in _flat(page.headings)} <= set(ids)


@pytest.mark.parametrize("name", TEXTS)
def test_styles_come_before_what_they_hold_for(name: str) -> None:
    """A style in the middle of a long page has all above it styled anew."""
    html = page_of(name).html
    assert html.count("<style") == 1
    assert html.index("<style") < html.index("<h1")


@pytest.mark.parametrize("name", TEXTS)
def test_the_whole_procedure_can_be_walked(name: str) -> None:
    """From the link that starts it, answers lead to every step and every cause."""
    page = tree_of(page_of(name))
    (first,) = page.all("pc-first")[0].all("pc-way")
    walk = nx.DiGraph()
    for section in page.all("pc-step"):
        for way in section.all("pc-way"):
            walk.add_edge(f"#{section.attrs['id']}", way.attrs["href"])
    sections = {f"#{section.attrs['id']}" for section in page.all("pc-step")}
    assert sections <= {first.attrs["href"], *nx.descendants(walk, first.attrs["href"])}


EDITS = {
    "another title": ("title: Look at the leads", "title: Look hard at every lead"),
    "another instruction": ("do: Look at the leads.", "do: Follow each lead with a finger."),
    "a step taken out": ("then: step coil", "then: done"),
    "a step put in": (
        "  look:\n",
        "  extra: {title: Extra, do: Do it., then: step coil}\n  look:\n",
    ),
    "other odds": ("odds: 6", "odds: 60"),
}


@pytest.mark.parametrize("edit", EDITS)
def test_links_survive_edits_elsewhere(edit: str) -> None:
    """Ids depend on names alone, although numbers and letters may change."""
    before, after = EDITS[edit]
    changed = NO_SPARK.replace(before, after)
    assert changed != NO_SPARK
    kept = {id_ for id_ in no_spark_page().ids() if id_.startswith(("step-", "cause-"))}
    assert kept <= set(no_spark_page(changed).ids())


def test_steps_stand_above_what_they_lead_to() -> None:
    """Answers lead down the page, and numbers follow the page."""
    page = no_spark_page()
    steps = [section.attrs["id"] for section in page.by_id("steps").all("pc-step")]
    assert steps == ["step-plug", "step-look", "step-coil"]
    labels = [section.all("pc-label")[0].text for section in page.by_id("steps").all("pc-step")]
    assert labels == ["Step 1", "Step 2", "Step 3"]


def test_causes_stand_with_their_odds_likeliest_first() -> None:
    """12, 6 and 2 of 20: shares with a word, and where the odds come from."""
    lines = [item.text for item in no_spark_page().by_id("causes").tags("li")]
    assert lines == [
        "Cause A Coil open often, about 60 %",
        "Cause B Plug fouled often, about 30 % Source: common practice",
        "Cause C Tap drips now and then, about 10 %",
    ]


ODDS_NOTES = {
    "all given": ("odds: 6", "odds: 6", "odds_all"),
    "one missing": ("odds: 6, ", "", "odds_some"),
}


@pytest.mark.parametrize("case", ODDS_NOTES)
def test_the_page_says_whether_the_odds_are_known(case: str) -> None:
    """Nobody takes a list for a ranking that nobody made."""
    before, after, key = ODDS_NOTES[case]
    page = no_spark_page(NO_SPARK.replace(before, after))
    assert page.by_id("causes").all("pc-note")[0].text == KIT.words[key]


def test_before_the_first_step_stands_all_one_needs() -> None:
    """Hazards, what to make sure of, what to have in place and to wear, tools, mistakes, start."""
    before = no_spark_page().by_id("before")
    text = before.text
    for part in (
        *KIT.standing.before,
        *(KIT.ready[name] for name in KIT.standing.always_ready),
        *(KIT.wear[name] for name in KIT.standing.always_wear),
        KIT.cautions["high-voltage"].hazard,
        KIT.cautions["open-petrol"].hazard,
        "The tap is shut.",
        "Multimeter Or: A test lamp does not do.",
        "Buying a coil before the stop wire was unplugged.",
    ):
        assert part in text
    last = list(before.all("pc-first")[0].walk())[-1]
    assert list(before.walk())[-1] is last, "the start stands below all of it"


def test_the_head_says_time_fit_and_proof() -> None:
    """5 minutes to the plug; 5 + 5 + 10 to the coil."""
    summary = no_spark_page().all("pc-summary")[0]
    assert [row.text for row in summary.tags("div")] == [
        "Time to find the cause from 5 min to 20 min",
        "For ignition: magneto or points two-stroke engines",
        "What a pass proves Spark on its own parts",
    ]


@pytest.mark.parametrize("name", TEXTS)
def test_search_finds_each_step_once_and_no_repeated_text(name: str) -> None:
    """The theme's own index: a heading a section, without chart, cautions and standing texts."""
    parser = Parser()
    parser.feed(page_of(name).html)
    parser.close()
    found = {section.id: " ".join(section.text) for section in parser.data if section.id}
    told = procedure(TEXTS[name])
    for kind, parts in (("step", told.steps), ("cause", told.causes)):
        for part_name, part in parts.items():
            said = part.do if kind == "step" else part.remedy
            text = found[f"{kind}-{part_name}-title"]
            assert text.count(said) == 1
            assert [id_ for id_, other in found.items() if said in other] == [
                f"{kind}-{part_name}-title"
            ]
    everything = " ".join(found.values())
    repeated = [*KIT.standing.deferral, *KIT.standing.before, *KIT.standing.walk_away]
    repeated += [caution.hazard for caution in KIT.cautions.values()]
    assert [text for text in repeated if text in everything] == []


def _join(folder: str, path: str) -> str:
    parts = folder.split("/") if folder else []
    for part in path.split("/"):
        parts = parts[:-1] if part == ".." else [*parts, part]
    return "/".join(parts).removesuffix(".html") + ".md"


def _flat(headings: tuple[Heading, ...]) -> Iterator[Heading]:
    for heading in headings:
        yield heading
        yield from _flat(heading.children)
