"""What a file may allow, and what is said where it may not."""

from __future__ import annotations

import pytest

from pullcord.finding import Severity
from pullcord.model.procedure import Procedure
from pullcord.rules.catalogue import rules
from pullcord.rules.document import build_library, read_document
from pullcord.rules.example import example
from pullcord.rules.run import settle_library
from pullcord.rules.severity import severity_of
from tests.rules.files import check_files

TWO_TOOLS = """\
tools:
  {above}
  bucket: {{title: A bucket}}{behind}
  sieve: {{title: A sieve}}
"""
ALLOW = "# pullcord: allow unused-tool because it hangs by the pump"


def found(text: str) -> list[str]:
    """Return `line rule` for everything that is found in one procedure."""
    return [f"{each.line} {each.rule}" for each in check_files({"no-prime.yaml": text.encode()})]


CASES = {
    "nothing allowed": ("#", "", ["8 unused-tool", "9 unused-tool"]),
    "from above": (ALLOW, "", ["9 unused-tool"]),
    "from behind": ("#", f"  {ALLOW}", ["9 unused-tool"]),
    "both ways": (ALLOW, f"  {ALLOW}", ["8 unused-allow", "9 unused-tool"]),
    "another rule": (
        ALLOW.replace("tool", "piece"),
        "",
        ["7 unused-allow", "8 unused-tool", "9 unused-tool"],
    ),
    "a rule in backticks": (ALLOW.replace("unused-tool", "`unused-tool`"), "", ["9 unused-tool"]),
    "no reason": (
        ALLOW.partition(" because")[0],
        "",
        ["7 allow-without-reason", "9 unused-tool"],
    ),
    "an empty reason": (
        f"{ALLOW.partition(' because')[0]} because",
        "",
        ["7 allow-without-reason", "9 unused-tool"],
    ),
    "a reason without because": (
        ALLOW.replace("because ", ""),
        "",
        ["7 allow-without-reason", "9 unused-tool"],
    ),
    "a slip in the rule": (
        ALLOW.replace("tool", "tol"),
        "",
        ["7 unknown-rule", "8 unused-tool", "9 unused-tool"],
    ),
    "two rules": (
        ALLOW.replace("unused-tool", "unused-tool, unused-piece"),
        "",
        ["7 unreadable-allow", "8 unused-tool", "9 unused-tool"],
    ),
    "another word": (
        ALLOW.replace("allow", "ignore"),
        "",
        ["7 unreadable-allow", "8 unused-tool", "9 unused-tool"],
    ),
}


@pytest.mark.parametrize(("above", "behind", "expected"), CASES.values(), ids=CASES)
def test_one_line_is_allowed_and_no_other(above: str, behind: str, expected: list[str]) -> None:
    """The comment covers its line; whatever is wrong with the comment is a finding there."""
    assert found(example(TWO_TOOLS.format(above=above, behind=behind))) == expected


def test_a_long_text_is_covered_to_its_end() -> None:
    """A finding in the middle of a text is about the text that begins below the comment."""
    body = (
        "steps:\n  casing:\n    title: Water\n    {allow}\n    do: >-\n      Look.\n"
        "      Set the gap to 0.3 mm.\n    ask: Is it full?\n"
        "    answers: {{full: cause air-leak, not full: cause dry-casing}}\n"
    )
    assert found(example(body.format(allow="#"))) == ["12 figure-without-source"]
    allow = "# pullcord: allow figure-without-source because the plate is stamped with it"
    assert found(example(body.format(allow=allow))) == []


REFUSED = [
    rule.id
    for rule in rules()
    if rule.is_safety or rule.group == "allow" or severity_of(rule.id) is Severity.ERROR
]


@pytest.mark.parametrize("rule", REFUSED)
def test_errors_and_safety_are_never_allowed(rule: str) -> None:
    """Whatever the reason: the comment itself becomes an error."""
    text = example(f"tools:\n  # pullcord: allow {rule} because I say so\n  a: {{title: A}}\n")
    assert found(text) == ["7 refused-allow", "8 unused-tool"]


def test_a_safety_finding_stays_whatever_the_comment_says() -> None:
    """Spark beside open petrol is refused with and without a word about it."""
    body = (
        "steps:\n  casing:\n    title: Spark\n    do: Open the petrol tap and watch the spark.\n"
        "    opens: petrol\n    {allow}\n    makes: spark\n    ask: Is there one?\n"
        "    answers: {{full: cause air-leak, not full: cause dry-casing}}\n"
    )
    without = found(example(body.format(allow="#")))
    assert any(rule.endswith("ignition-near-petrol") for rule in without)
    allow = "# pullcord: allow ignition-near-petrol because the tank is nearly empty"
    assert found(example(body.format(allow=allow))) == sorted(
        [*without, "11 refused-allow"], key=lambda line: int(line.split()[0])
    )


def test_what_was_allowed_is_kept_with_its_reason() -> None:
    """A review can ask whether the reason still holds."""
    text = example(TWO_TOOLS.format(above=ALLOW, behind=""))
    document = read_document("no-prime.yaml", text.encode(), Procedure)
    settled = settle_library([document], build_library([document]))
    assert [(each.finding.line, each.reason) for each in settled.allowed] == [
        (8, "it hangs by the pump")
    ]


def test_an_unreadable_file_is_not_asked_whether_it_needs_what_it_allows() -> None:
    """Rules that could not run found nothing, which proves nothing."""
    text = example(TWO_TOOLS.format(above=ALLOW.replace("tool", "piece"), behind=""))
    broken = text.replace("title: Water", "titel: Water")
    assert found(broken) == ["18 missing-key", "19 unknown-key"]
