"""Every key of every file has its place, in step with the model, with an example that is right."""

from __future__ import annotations

from collections.abc import Iterator

import jsonschema
import pytest

from pullcord.model.action import Action
from pullcord.model.schema import KINDS, schema_of
from pullcord.model.shape import keys_of
from pullcord.pages.address import HOME, RULES, keys_uri, link
from pullcord.pages.keys.entries import KeyEntry, RecordEntry, record_entries
from pullcord.pages.keys.page import keys_pages
from pullcord.rules.report.explain import KEYS_PAGE
from tests.editor import as_editor
from tests.pages.make import KIT, example_pages, tree_of

PAGES = {page.src_uri: page for page in keys_pages(KIT)}
TREES = {kind: tree_of(PAGES[keys_uri(kind)]) for kind in KINDS}


def entries() -> Iterator[tuple[str, RecordEntry, KeyEntry]]:
    """Yield every key of every record of every kind of file."""
    for kind in KINDS:
        for record in record_entries(kind):
            yield from ((kind, record, key) for key in record.keys)


KEYS = {f"{kind} {record.name} {key.name}": (kind, record, key) for kind, record, key in entries()}


@pytest.mark.parametrize("kind", KINDS)
def test_every_key_of_the_schema_is_listed(kind: str) -> None:
    """None is left out, and none is told twice; effects stand once for all who may have them."""
    schema = schema_of(kind)
    effects = set(keys_of(Action))
    records = {record.name: record for record in record_entries(kind)}
    listed = {name: {key.name for key in record.keys} for name, record in records.items()}
    for name, each in {KINDS[kind].__name__: schema, **schema["definitions"]}.items():
        has_effects = effects <= set(each["properties"])
        assert records[name].has_effects is has_effects
        assert listed[name] == set(each["properties"]) - (effects if has_effects else set())
        assert not has_effects or listed["Effects"] == effects


@pytest.mark.parametrize(("kind", "record", "key"), KEYS.values(), ids=KEYS)
def test_a_key_says_what_it_means_and_shows_an_example(
    kind: str, record: RecordEntry, key: KeyEntry
) -> None:
    """Its meaning word for word, and an example that follows the schema as it is printed."""
    own = TREES[kind].by_id(f"key-{record.name.lower()}-{key.name}")
    assert own.tags("h3")[0].text == key.name
    assert key.meaning
    assert bare(key.meaning.replace("`", "")) in bare(own.text)
    (example,) = own.tags("pre")
    lines = "".join(part for code in example.tags("code") for part in code.inside)
    given = as_editor(lines)
    assert list(given) == [key.name]
    validator = jsonschema.Draft7Validator(
        {**key.schema, "definitions": schema_of(kind)["definitions"]}
    )
    assert [error.message for error in validator.iter_errors(given[key.name])] == []


SAID = {
    "a name": ("procedure", "procedure-start", "A name of small letters, digits and single"),
    "needed": ("procedure", "procedure-start", "It must be there."),
    "needed unless filled in": ("procedure", "step-do", "It must be there, unless as fills it in."),
    "one or many": ("procedure", "effects-opens", "One of petrol, plug-hole, guard; or a list"),
    "the only word": ("procedure", "effects-starts", "engine; or a list of these."),
    "a default": ("procedure", "step-minutes", "Left out, it is 5."),
    "a number": ("procedure", "step-minutes", "A number from 0 to 2880."),
    "a number above": ("procedure", "cause-odds", "A number above 0, at most 1000."),
    "money": ("job", "job-most", "An amount of money up to 100000, with at most two digits"),
    "a whole number": ("machine", "connector-rows", "A whole number from 1 to 8."),
    "a day": ("job", "job-taken-in", "A day, such as 2026-03-01."),
    "a moment": ("job", "entry-date", "A day, or a minute of it, such as 2026-03-01 19:40."),
    "a picture": ("job", "entry-photo", "The way to a picture beside the log"),
    "where to go": ("procedure", "step-then", "step NAME, cause NAME, procedure NAME or done."),
    "by answer": ("procedure", "step-answers", "Lines below it, each with an answer,"),
    "by name": ("procedure", "procedure-steps", "Lines below it, each with a name,"),
    "an answer": ("job", "entry-answer", "An answer in anybody's words, at most 120 characters."),
    "sentences": ("procedure", "step-do", "A few sentences, at most 1200 characters."),
    "a line": ("procedure", "step-title", "Text on one line, at most 120 characters."),
    "a list of records": ("job", "job-log", "A list, each of it: keys of its own."),
}


@pytest.mark.parametrize(("kind", "key", "said"), SAID.values(), ids=SAID)
def test_what_may_stand_there_in_words(kind: str, key: str, said: str) -> None:
    """Every shape of value is said, with its bounds."""
    assert bare(said) in bare(TREES[kind].by_id(f"key-{key}").text)


def test_a_shared_file_must_say_everything_itself() -> None:
    """There `as` fills nothing in, so nothing is needed only without it."""
    assert "unless" not in TREES["shared"].by_id("key-step-do").text
    assert "It must be there." in TREES["shared"].by_id("key-step-do").text


def test_a_record_is_a_link_away() -> None:
    """What has keys of its own leads to them, on the same page."""
    for kind, record, key in KEYS.values():
        own = TREES[kind].by_id(f"key-{record.name.lower()}-{key.name}")
        for each in own.tags("a"):
            assert TREES[kind].by_id(each.attrs["href"].removeprefix("#")).tag == "section"
    links = TREES["procedure"].by_id("key-procedure-steps").tags("a")
    assert [each.attrs["href"] for each in links] == ["#keys-step"]


def test_the_pages_stay_small_and_out_of_the_way() -> None:
    """They are no part of what a mechanic searches or finds in the navigation."""
    assert all(len(page.html) < 64_000 for page in PAGES.values())
    assert not any(page.in_search or page.in_nav for page in PAGES.values())


def test_they_are_linked_from_the_rules_and_from_one_another() -> None:
    """Whoever writes a procedure comes upon them, and `explain` names the first."""
    hrefs = {each.attrs.get("href") for each in tree_of(example_pages()[RULES]).tags("a")}
    assert {link(RULES, keys_uri(kind)) for kind in KINDS} <= hrefs
    own = {each.attrs.get("href") for each in TREES["machine"].tags("a")}
    assert {f"{kind}.html" for kind in KINDS if kind != "machine"} <= own
    assert link(HOME, keys_uri("procedure")) == KEYS_PAGE


def bare(text: str) -> str:
    """Return a text without its spaces, which the reading of elements does not keep."""
    return "".join(text.split())
