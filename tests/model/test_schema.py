"""The schema of every kind of file: right for every file we ship, and wrong for wrong ones."""

from __future__ import annotations

import json
from pathlib import Path

import jsonschema
import pytest

from pullcord.model.schema import KINDS, schema_of, schema_text
from pullcord.model.shape import keys_of
from pullcord.rules.catalogue import rules
from pullcord.rules.document import model_of
from pullcord.source.modeline import modelines, schema_name
from pullcord.source.places import site_templates
from pullcord.source.tree import read_tree
from tests.editor import as_editor, schema_faults
from tests.rules.files import check_files

ROOT = Path(__file__).parents[2]
FOLDERS = ("procedures", "demo/machines", "demo/jobs")
FILES = {
    path.relative_to(ROOT).as_posix(): path
    for folder in FOLDERS
    for path in sorted((ROOT / folder).rglob("*.yaml"))
}
WITH_MODELINES = {name: path for name, path in FILES.items() if not name.startswith("demo/jobs")}


def kind_of(raw: bytes) -> str:
    """Return the kind of file some bytes hold."""
    return next(name for name, model in KINDS.items() if model is model_of(raw))


@pytest.mark.parametrize("kind", KINDS)
def test_a_schema_is_one_of_draft_7(kind: str) -> None:
    """Checked against the draft's own schema of schemas, as `jsonschema` ships it."""
    schema = schema_of(kind)
    assert schema["$schema"] == "http://json-schema.org/draft-07/schema#"
    jsonschema.Draft7Validator.check_schema(schema)


@pytest.mark.parametrize("kind", KINDS)
def test_the_shipped_schema_is_in_step(kind: str) -> None:
    """When the model changes, `pullcord schema -o site_templates/schemas` writes it anew."""
    shipped = site_templates() / "schemas" / schema_name(kind)
    assert shipped.read_text(encoding="utf-8") == schema_text(kind)


@pytest.mark.parametrize("kind", KINDS)
def test_every_key_of_the_model_is_in_it_with_its_meaning(kind: str) -> None:
    """What an editor shows beside a key is what the model says."""
    schema = schema_of(kind)
    given = {key: each.get("description", "") for key, each in schema["properties"].items()}
    assert given == keys_of(KINDS[kind])
    assert all(given.values())
    for definition in schema["definitions"].values():
        assert all(each.get("description") for each in definition["properties"].values())


@pytest.mark.parametrize("path", FILES.values(), ids=FILES)
def test_every_file_we_ship_follows_its_schema(path: Path) -> None:
    """As an editor reads it, with numbers, and as Pullcord does, where every scalar is text."""
    raw = path.read_bytes()
    kind = kind_of(raw)
    assert schema_faults(kind, as_editor(raw.decode())) == []
    assert schema_faults(kind, read_tree(raw).data) == []


@pytest.mark.parametrize("path", WITH_MODELINES.values(), ids=WITH_MODELINES)
def test_every_file_we_ship_names_its_schema(path: Path) -> None:
    """For both families of editors, by a way that leads to a file that is there."""
    raw = path.read_text(encoding="utf-8")
    kind = kind_of(raw.encode())
    lines = modelines(path, kind, ROOT / "site_templates" / "schemas")
    assert raw.startswith(lines), f"begin the file with these two lines:\n{lines}"
    way = raw.split("\n")[1].removeprefix("# $schema: ")
    assert json.loads((path.parent / way).read_text(encoding="utf-8"))["$schema"]


EXAMPLES = {f"{rule.id} {name}": raw for rule in rules() for name, raw in rule.mended.items()}


@pytest.mark.parametrize("raw", EXAMPLES.values(), ids=EXAMPLES)
def test_every_mended_example_follows_its_schema(raw: bytes) -> None:
    """What the rules' pages show as right is right for an editor too."""
    assert schema_faults(kind_of(raw), as_editor(raw.decode())) == []


PROCEDURE = """\
procedure: no-prime
title: 12
symptom: 1.5
also-said: no water
about: true
before: [One, 2]
start: casing
causes:
  seal: {title: Seal, remedy: Fit one., odds: 3, parts: "2.50", minutes: "5"}
  hose: {as: hose}
steps:
  casing:
    as: casing
    opens: petrol
    makes: [spark, cranking]
    answers: {1: cause seal, yes: step other, no: done}
  other: {title: Other, do: Look., ask: 5, answers: {a: done, b: procedure no-spark}}
"""
MACHINE = """\
machine: pump
title: Pump
kind: pump
values: {coil: {limits: 200 ohm, value: 5, at-celsius: 20}}
connectors:
  plug: {title: Plug, rows: 1, columns: "2", pins: {one: {at: a1, function: Earth}}}
"""
JOB = """\
job: pump-spring
machine: pump
taken-in: 2026-02-14
purpose: To pump.
most: 250
log:
  - {date: 2026-02-21, answer: 3, minutes: 20, celsius: -4}
  - {date: "2026-02-21 19:40", did: Cleaned it., parts: [{title: Plug, price: 4.50, number: 7}]}
"""
STAGES = "stages: ours\nstage:\n  runs: {title: Runs, means: It runs., ends-here: 5}\n"
SHARED = "shared: bench\nsteps:\n  casing: {title: Casing, do: Look., minutes: 5}\n"
RIGHT = {
    "procedure": PROCEDURE,
    "machine": MACHINE,
    "job": JOB,
    "stages": STAGES,
    "shared": SHARED,
}


@pytest.mark.parametrize("kind", RIGHT)
def test_text_may_look_like_anything(kind: str) -> None:
    """One or many, quoted or not, a number for a text: what the reader takes, an editor takes."""
    assert schema_faults(kind, as_editor(RIGHT[kind])) == []
    assert schema_faults(kind, read_tree(RIGHT[kind].encode()).data) == []


BENCH = (
    "shared: bench\nsteps:\n  casing: {title: Casing, do: Look.}\n"
    "causes:\n  hose: {title: Hose, remedy: Fit one.}\n"
)
READING = {rule.id for rule in rules() if rule.group == "text"}
"""What is wrong with a file by itself, which is all that a schema can know."""

WRONG = {
    "a key nobody knows": ("procedure", "title: 12", "titel: 12", {""}),
    "a title that is a list": ("procedure", "title: 12", "title: [a]", {"title"}),
    "a text without an end": ("procedure", "symptom: 1.5", f"symptom: {'x' * 1201}", {"symptom"}),
    "nothing behind a key": ("procedure", "symptom: 1.5", "symptom:", {"symptom"}),
    "a name in capitals": ("procedure", "start: casing", "start: Casing", {"start"}),
    "a step named in capitals": ("procedure", "  other:", "  Other:", {"steps"}),
    "a cause without a remedy": ("procedure", ", remedy: Fit one.", "", {"causes/seal"}),
    "a step with neither text nor as": ("procedure", "    as: casing\n", "", {"steps/casing"}),
    "no steps": ("procedure", "steps:", "stepps:", {""}),
    "a word nobody knows": (
        "procedure",
        "opens: petrol",
        "opens: petroll",
        {"steps/casing/opens"},
    ),
    "odds of none": ("procedure", "odds: 3", "odds: 0", {"causes/seal/odds"}),
    "odds in words": ("procedure", "odds: 3", "odds: many", {"causes/seal/odds"}),
    "a price with three places": ("procedure", '"2.50"', '"2.505"', {"causes/seal/parts"}),
    "minutes without end": ("procedure", 'minutes: "5"', "minutes: 3000", {"causes/seal/minutes"}),
    "a way to nowhere": ("procedure", "no: done", "no: other", {"steps/casing/answers/no"}),
    "answers in a list": (
        "procedure",
        "answers: {a: done, b: procedure no-spark}",
        "answers: [done]",
        {"steps/other/answers"},
    ),
    "a coil's winding of tin": ("machine", "value: 5", "winding: tin", {"values/coil/winding"}),
    "a plug with half a row": ("machine", "rows: 1", "rows: 0.5", {"connectors/plug/rows"}),
    "too many places": ("machine", 'columns: "2"', "columns: 13", {"connectors/plug/columns"}),
    "a pin without a place": ("machine", "at: a1, ", "", {"connectors/plug/pins/one"}),
    "a day in words": ("job", "taken-in: 2026-02-14", "taken-in: Saturday", {"taken-in"}),
    "parts that are no list": (
        "job",
        "parts: [{title: Plug, price: 4.50, number: 7}]",
        "parts: plug",
        {"log/1/parts"},
    ),
    "an hour that is none": ("job", '"2026-02-21 19:40"', '"2026-02-21 25:00"', {"log/1/date"}),
    "a dear part": ("job", "price: 4.50", "price: 4000000", {"log/1/parts/0/price"}),
    "a stage without a meaning": ("stages", ", means: It runs.", "", {"stage/runs"}),
    "more than all": ("stages", "ends-here: 5", "ends-here: 101", {"stage/runs/ends-here"}),
    "a shared step without text": ("shared", ", do: Look.", "", {"steps/casing"}),
    "a shared step filled in": (
        "shared",
        "title: Casing, do: Look.",
        "as: x",
        {"steps/casing"},
    ),
}


@pytest.mark.parametrize(("kind", "old", "new", "places"), WRONG.values(), ids=WRONG)
def test_a_wrong_file_is_refused(kind: str, old: str, new: str, places: set[str]) -> None:
    """At the place that is wrong, as an editor would underline it; Pullcord refuses it as well."""
    assert old in RIGHT[kind]
    text = RIGHT[kind].replace(old, new)
    assert set(schema_faults(kind, as_editor(text))) == places
    errors = check_files({"pump.yaml": text.encode(), "bench.yaml": BENCH.encode()})
    assert {each.rule for each in errors} & READING
