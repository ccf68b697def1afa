"""Whatever bytes a file has, reading it ends, with data or with findings, and never raises."""

from __future__ import annotations

from dataclasses import replace

import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from pullcord.model.parse import parse_procedure
from pullcord.model.procedure import Procedure
from pullcord.rules.document import build_library, read_document
from pullcord.rules.example import example
from pullcord.rules.run import check_library
from pullcord.rules.show import show_finding
from pullcord.source.decode import UNSEEN
from pullcord.source.flaw import MOST_FLAWS
from pullcord.source.tree import read_data, read_tree

BOUNDED = settings(max_examples=100, deadline=None, print_blob=True)
PLAIN = getattr(yaml, "CBaseLoader", yaml.BaseLoader)
WHOLE = example("mistakes: [one, two]\n")
LINES = WHOLE.splitlines(keepends=True)
SCRAPS = st.sampled_from(
    [
        *LINES, *"#&*!|>'\"%@`[]{},:?-\t\n\r ", "  ", ": ", " #", "<<: ", "---\n", "...\n", "&a ",
        "*a", "!!x ", "\\", "\ufeff", "\u2028", "\u202e", "\0", "é", "Ω", "{{", "| ", "> ", "? ",
        "step ", "cause ", "done",
    ]
)  # fmt: skip
YAMLISH = st.lists(SCRAPS, max_size=60).map("".join)


def check(raw: bytes) -> None:
    """Read and check one file, and hold what comes of it to its promises."""
    document = read_document("fuzz.yaml", raw, Procedure)
    findings = check_library([document], build_library([document]))
    lines = raw.decode("utf-8", "replace").replace("\r\n", "\n").replace("\r", "\n").split("\n")
    assert (document.record is None) <= bool(findings)
    assert len(findings) <= 20 * MOST_FLAWS
    for finding in findings:
        assert finding.rule
        assert finding.message
        assert 1 <= finding.line <= len(lines)
        assert finding.column >= 1
        assert not UNSEEN.search(show_finding(finding, raw).replace("\n", ""))


@BOUNDED
@given(st.binary(max_size=400))
def test_any_bytes(raw: bytes) -> None:
    """Noise from a broken disk."""
    check(raw)


@BOUNDED
@given(st.text(max_size=400))
def test_any_text(text: str) -> None:
    """A file of something else."""
    check(text.encode("utf-8", "surrogatepass"))


@BOUNDED
@given(YAMLISH)
def test_anything_made_of_yaml(text: str) -> None:
    """YAML's own signs in every order."""
    check(text.encode("utf-8"))


@BOUNDED
@given(st.integers(0, len(WHOLE)), st.integers(0, 40), SCRAPS)
def test_a_good_file_after_a_slip(at: int, lost: int, scrap: str) -> None:
    """A real procedure in which one place was overwritten."""
    check((WHOLE[:at] + scrap + WHOLE[at + lost :]).encode("utf-8"))


@BOUNDED
@given(YAMLISH)
def test_what_is_read_is_what_yaml_says(text: str) -> None:
    """Where nothing is wrong, the data is what a plain YAML reader gives."""
    tree = read_tree(text.encode("utf-8"))
    if not tree.flaws:
        assert tree.data == yaml.load(text, Loader=PLAIN)  # noqa: S506


@BOUNDED
@given(YAMLISH | st.builds(lambda head, text: head + WHOLE + text, YAMLISH, YAMLISH))
def test_reading_for_the_data_alone_says_the_same(text: str) -> None:
    """Whether or not one asks where things stand, the data and the flaws are the same."""
    raw = text.encode("utf-8")
    assert replace(read_data(raw), root=None) == replace(read_tree(raw), root=None)


DATA = st.recursive(
    st.text(max_size=8) | st.sampled_from(["done", "step a", "petrol", "5", "-1", "nan", "1e999"]),
    lambda inner: (
        st.lists(inner, max_size=4)
        | st.dictionaries(
            st.sampled_from(
                ["procedure", "title", "steps", "causes", "answers", "do", "opens", "reading",
                 "minutes", "parts", "tools", "tells", "fits", "a", "Bad Name", "[key]", ""]
            ),
            inner,
            max_size=5,
        )
    ),
    max_leaves=30,
)  # fmt: skip


@BOUNDED
@given(DATA)
def test_any_data(data: object) -> None:
    """The model takes it or says what is wrong, in words."""
    parsed = parse_procedure(data)
    if isinstance(parsed, tuple):
        assert parsed
        assert all(flaw.rule and flaw.message and flaw.mend for flaw in parsed)
