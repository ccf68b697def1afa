"""New entries in a job's log: round trips, hostile texts, kills, two writers at once."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Mapping
from io import StringIO
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from ruamel.yaml import YAML
from ruamel.yaml.comments import CommentedMap

from pullcord.errors import FindingsError, PullcordError
from pullcord.model.job import Entry
from pullcord.model.shape import keys_of
from pullcord.model.taking import plain
from pullcord.rules.example import example
from pullcord.site.find_job import JobPlace
from pullcord.site.job_log import EntryError, OpenLog, add_entries, open_log
from pullcord.site.typed_entry import LISTS, TypedEntryError, read_typed
from pullcord.source.item import Figure
from pullcord.source.tree import read_tree

PROCEDURE = example(
    """
    steps:
      casing:
        title: Casing
        do: Look.
        ask: Is it full?
        answers: {full: cause air-leak, not full: step battery}
      battery:
        title: Battery
        do: Measure.
        reading: {quantity: voltage, at: battery, general: 12-13 V, source: common practice}
        answers: {below: cause dry-casing, within: cause air-leak, above: cause dry-casing}
    """
)
STAGES = """\
stages: own
stage:
  taken-in: {title: Taken in, means: It is here.}
  drives: {title: Drives, means: It drives., after: taken-in}
"""
MACHINE = "machine: plough\ntitle: Old plough\nkind: plough\n"
BY_HAND = """\
# The plough by the lower gate.
machine: 'plough'   # as on its sheet
job: "plough-autumn"
taken-in: 2026-03-01

purpose: >-
  To plough the
  upper field.
most: 250.00   # all in
log:
  # The first evening.
  - date: 2026-03-01
    did: "Looked: it turns"   # by hand

  - {date: 2026-03-02 19:40, procedure: no-prime, step: casing, answer: full}
    # The lamp came on for a moment.
wanted:
  chain: {title: Drive chain, price: 32, serves: drives}
note: nothing   # yet
"""


def put(folder: Path, log: str = BY_HAND) -> OpenLog:
    """Write a small project, and open its log."""
    files = {
        "procedures/no-prime.yaml": PROCEDURE,
        "machines/plough.yaml": MACHINE,
        "jobs/plough-autumn.yaml": log,
        "procedures/own.yaml": STAGES,
        "mkdocs.yml": "plugins:\n  - pullcord: {library: false}\n",
    }
    for name, text in files.items():
        path = folder / name
        path.parent.mkdir(exist_ok=True)
        path.write_bytes(text.encode())
    path = folder / "jobs" / "plough-autumn.yaml"
    return open_log(JobPlace(path, path.parent, folder))


@pytest.fixture(scope="module")
def opened(tmp_path_factory: pytest.TempPathFactory) -> OpenLog:
    """One project for many entries: whoever uses it puts the log back first."""
    return put(tmp_path_factory.mktemp("shed"))


def add(log: OpenLog, **typed: Any) -> bytes:
    """Add one typed entry, and return the file."""
    given = {key.replace("_", "-"): value for key, value in typed.items()}
    return add_entries(log, read_typed(given, "2026-03-09")).raw


def round_trip(text: str) -> tuple[CommentedMap, str]:
    """Read a text with a library that keeps comments, and write it again."""
    yaml = YAML()
    yaml.preserve_quotes = True
    yaml.width = 1000
    data = yaml.load(text)
    out = StringIO()
    yaml.dump(data, out)
    return data, out.getvalue()


def texts(data: Any) -> Any:
    """Return data with every scalar as text."""
    if isinstance(data, Mapping):
        return {str(key): texts(value) for key, value in data.items()}
    return [texts(part) for part in data] if isinstance(data, list) else str(data)


FULL = {
    "date": "2026-03-08 20:15",
    "procedure": "no-prime",
    "step": "battery",
    "answer": "within",
    "reading": "12.4 V",
    "celsius": "9.5",
    "did": "Cleaned: the tank #2",
    "part": ["chain=30.25", "Fuel hose, 1 m=3 #FH-1"],
    "minutes": "40",
    "drains": ["petrol, oil"],
    "takes-off": ["bypass"],
    "shows": ["taken-in"],
    "note": "Two lines.\nThe second.",
    "photo": "photos/tank.jpg",
}
FULL_ENTRY = {
    "date": "2026-03-08 20:15",
    "procedure": "no-prime",
    "step": "battery",
    "answer": "within",
    "reading": "12.4 V",
    "celsius": "9.5",
    "did": "Cleaned: the tank #2",
    "parts": [
        {"title": "Drive chain", "price": "30.25", "serves": "drives", "wanted": "chain"},
        {"title": "Fuel hose, 1 m", "price": "3", "number": "FH-1"},
    ],
    "shows": "taken-in",
    "drains": ["petrol", "oil"],
    "takes-off": "bypass",
    "minutes": "40",
    "note": "Two lines.\nThe second.",
    "photo": "photos/tank.jpg",
}


def test_a_round_trip_through_another_library(tmp_path: Path) -> None:
    """Comments, order and all that was there are unchanged, and the new entry is what was given."""
    before, written_before = round_trip(BY_HAND)
    after, written_after = round_trip(add(put(tmp_path), **FULL).decode())
    new = after["log"].pop()
    assert texts(new) == FULL_ENTRY
    assert list(new) == list(FULL_ENTRY)
    assert texts(after) == texts(before)
    assert list(after) == list(before)
    kept = [line for line in written_after.splitlines() if "#" in line and "#2" not in line]
    assert kept == [line for line in written_before.splitlines() if "#" in line]


def test_every_line_of_a_hand_stays(tmp_path: Path) -> None:
    """Taking the new lines away gives the old file, byte for byte, in CRLF too."""
    for text in (BY_HAND, BY_HAND.replace("\n", "\r\n")):
        new = add(put(tmp_path, text), did="Cleaned")
        block = "\n  - date: 2026-03-09\n    did: Cleaned\n"
        end = "\r\n" if "\r\n" in text else "\n"
        assert new.decode().replace(block.replace("\n", end), "") == text


TEXT = st.text(st.characters(exclude_categories=("Cs",)), max_size=60) | st.text(
    st.sampled_from("ab1:#-?,[]{}&*!|>'\"%@`\\ \n\t~=.é"), max_size=30
)
HOSTILE = st.fixed_dictionaries(
    {"date": st.sampled_from(["2026-03-01", "2026-03-02 19:40", "2026-02-30", "today"]) | TEXT},
    optional={
        key: st.lists(TEXT, min_size=1, max_size=2) if key in LISTS else TEXT
        for key in keys_of(Entry)
        if key not in ("date", "parts")
    }
    | {"part": st.lists(TEXT | TEXT.map(lambda text: f"{text}=4 #{text}"), min_size=1, max_size=2)},
)


@settings(
    max_examples=100,
    deadline=None,
    print_blob=True,
    suppress_health_check=[HealthCheck.function_scoped_fixture],
)
@given(hostile=HOSTILE, texts_only=st.booleans())
def test_nothing_hostile_spoils_a_log(
    opened: OpenLog, hostile: dict[str, Any], texts_only: bool
) -> None:
    """Whatever is typed is either told and leaves the file alone, or reads back as it was typed."""
    if texts_only:
        # Most others are refused for one of their words; these are taken when they can be read.
        hostile = {k: v for k, v in hostile.items() if k in ("did", "note", "reading")}
        hostile["date"] = "2026-03-09"
    opened.place.path.write_bytes(BY_HAND.encode())
    try:
        raw = add(opened, **hostile)
    except (TypedEntryError, EntryError):
        assert opened.place.path.read_bytes() == BY_HAND.encode()
        return
    tree = read_tree(raw)
    assert isinstance(tree.data, dict)
    found = [entry for entry in tree.data["log"] if entry not in read_log(BY_HAND)]
    assert len(found) == 1
    for key in ("did", "note", "reading", "answer", "photo"):
        assert found[0].get(key) == hostile.get(key)
    assert opened.place.path.read_bytes() == raw


def read_log(text: str) -> list[Any]:
    """Return the entries of a log as plain data."""
    data = read_tree(text.encode()).data
    assert isinstance(data, dict)
    return list(data["log"])


def test_an_earlier_entry_stands_at_its_date(tmp_path: Path) -> None:
    """Yesterday's walk goes before what was written today, and it is told."""
    opened = put(tmp_path)
    maker = read_typed({"did": "Rain", "date": "2026-03-01"}, "2026-03-09")
    added = add_entries(opened, maker)
    assert added.is_amid
    assert [entry["date"] for entry in read_log(added.raw.decode())] == [
        "2026-03-01",
        "2026-03-01",
        "2026-03-02 19:40",
    ]


BROKEN = {
    "a key given twice": (BY_HAND + "note: y\n", "is given twice"),
    "a tab": (BY_HAND.replace("  chain", "\tchain"), "tab"),
    "a bracket that is never closed": (BY_HAND.replace("serves: drives}", ""), "never closed"),
    "an amount that is none": (BY_HAND.replace("250.00", "lots"), "`lots` is not a number"),
}


@pytest.mark.parametrize(("text", "said"), BROKEN.values(), ids=BROKEN)
def test_a_log_with_errors_is_left_alone(tmp_path: Path, text: str, said: str) -> None:
    """They are told at their lines in the file as it is."""
    opened = put(tmp_path, text)
    with pytest.raises(FindingsError) as told:
        add(opened, did="x")
    lines = text.splitlines()
    assert any(said in finding.message for finding in told.value.findings)
    assert all(finding.line <= len(lines) for finding in told.value.findings)
    assert opened.place.path.read_bytes() == text.encode()


def test_a_log_that_grows_too_large_is_left_alone(tmp_path: Path) -> None:
    """What could not be read again is not written."""
    rows = "".join(f"  - {{date: 2026-03-01, did: {'x' * 900}}}\n" for _ in range(281))
    text = BY_HAND.replace("log:\n", f"log:\n{rows}")
    opened = put(tmp_path, text)
    room = 256 * 1024 - len(text)
    assert 0 < room < 1200
    with pytest.raises(EntryError) as told:
        add(opened, did="y" * 1190)
    assert [finding.rule for finding in told.value.findings] == ["file-too-large"]
    assert opened.place.path.read_bytes() == text.encode()


def test_the_first_entry_of_a_log_without_any(tmp_path: Path) -> None:
    """`log:` with nothing behind it is how a hand begins one."""
    text = BY_HAND[: BY_HAND.index("log:")] + "log:\n"
    assert add(put(tmp_path, text), did="x").decode() == (
        text + "  - date: 2026-03-09\n    did: x\n"
    )


def test_a_maker_sees_the_log_as_it_is_written(tmp_path: Path) -> None:
    """What another has added since is not added twice."""
    opened = put(tmp_path)
    add(opened, did="x")
    seen = []

    def make(job: Any) -> list[Any]:
        seen.append(len(job.log))
        return []

    assert add_entries(opened, make).entries == ()
    assert seen == [3]


KILLS = """
import os, random, signal, sys, time
from pathlib import Path
from pullcord.rules.example import example
from pullcord.site.find_job import JobPlace
from pullcord.site.job_log import add_entries, open_log
from pullcord.site.typed_entry import read_typed
from pullcord.source.tree import read_tree

path = Path(sys.argv[1])
log = open_log(JobPlace(path, path.parent, path.parents[1]))
moments = random.Random(7)
acknowledged = 0
for _ in range(40):
    read_end, write_end = os.pipe()
    child = os.fork()
    if child == 0:
        for number in range(1000):
            add_entries(log, read_typed({"did": f"n{number}"}, "2026-03-09"))
            os.write(write_end, b".")
    os.close(write_end)
    os.read(read_end, 1)
    time.sleep(moments.uniform(0, 0.03))
    os.kill(child, signal.SIGKILL)
    os.waitpid(child, 0)
    acknowledged += 1
    while said := os.read(read_end, 4096):
        acknowledged += len(said)
    os.close(read_end)
    tree = read_tree(path.read_bytes())
    assert tree.flaws == (), tree.flaws
    written = len(tree.data["log"]) - 2
    # The last one may have been written just before it could be told.
    assert acknowledged <= written <= acknowledged + 1, (acknowledged, written)
    acknowledged = written
print(acknowledged)
"""


def test_killed_at_any_moment_the_log_is_whole(tmp_path: Path) -> None:
    """After every one of 40 kills it reads, and holds every entry that was acknowledged."""
    opened = put(tmp_path)
    command = [sys.executable, "-c", KILLS, str(opened.place.path)]
    done = subprocess.run(command, capture_output=True, text=True, check=False, timeout=120)
    assert done.stderr == ""
    assert int(done.stdout) > 40


WRITER = """
import sys
from pathlib import Path
from pullcord.rules.example import example
from pullcord.site.find_job import JobPlace
from pullcord.site.job_log import add_entries, open_log
from pullcord.site.typed_entry import read_typed

path = Path(sys.argv[1])
log = open_log(JobPlace(path, path.parent, path.parents[1]))
for number in range(20):
    did = f"{sys.argv[2]}{number}"
    add_entries(log, read_typed({"did": did}, "2026-03-09"))
"""


def test_two_writers_at_once_lose_nothing(tmp_path: Path) -> None:
    """Every entry of either is there, each writer's in its order."""
    opened = put(tmp_path)
    commands = [[sys.executable, "-c", WRITER, str(opened.place.path), who] for who in "ab"]
    running = [subprocess.Popen(command) for command in commands]
    assert [process.wait(timeout=60) for process in running] == [0, 0]
    said = [entry["did"] for entry in read_log(opened.place.path.read_text()) if "did" in entry]
    for who in "ab":
        assert [did for did in said if did[0] == who] == [f"{who}{n}" for n in range(20)]


def test_a_file_that_cannot_be_put_into_is_told(tmp_path: Path) -> None:
    """A log all between braces keeps its bytes."""
    text = "{job: plough-autumn, machine: plough, taken-in: 2026-03-01, purpose: x, most: 3}\n"
    opened = put(tmp_path, text)
    with pytest.raises(PullcordError, match="write one key a line"):
        add(opened, did="x")
    assert opened.place.path.read_text() == text


def test_plain_data_is_what_the_reader_gives() -> None:
    """Figures and texts alike are text in a file."""
    assert plain({"a": Figure("3"), "b": ["x", Figure("4")]}) == {"a": "3", "b": ["x", "4"]}
