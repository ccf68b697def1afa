"""What the guide for authors shows is what the project does."""

from __future__ import annotations

import re
import shlex
from collections.abc import Iterator
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from pullcord.cli import main
from pullcord.plugin import PullcordConfig
from pullcord.readings.limits import parse_limits

GUIDE = Path(__file__).parents[1] / "guide"
PAGES = ("first-procedure", "cookbook", "faq")
BLOCK = re.compile(r"^```(\w+)\n(.*?)^```$", re.MULTILINE | re.DOTALL)
STEP = re.compile(r"^  ([a-z-]+):\n(?:    .*\n)+", re.MULTILINE)
MOST_COLUMNS = 67
"""What a tablet of 768 px held upright shows of a block; measured in a browser."""
HEAD_LINES = 3
"""The lines of a new file that the reader keeps."""


FAQ_PROCEDURE = """procedure: fuses
title: A fuse
symptom: Nothing works.
signs: {seen: no lamp lights}
about: A made-up example.
start: look
causes:
  broken: {title: The fuse is broken, remedy: Fit one of the same kind.}
steps:
"""


def _blocks(page: str) -> list[tuple[str, str]]:
    """Return a page's blocks in order: their kind and their text."""
    return BLOCK.findall((GUIDE / f"{page}.md").read_text(encoding="utf-8"))


def _with_step(text: str, block: str) -> str:
    """Put a step in place of the one of its name, or above the last one if there is none."""
    name = block.split(":")[0]
    steps = {found[1]: found for found in STEP.finditer(text, text.index("\nsteps:"))}
    old = steps.get(name.strip())
    start, end = old.span() if old else (list(steps.values())[-1].start(),) * 2
    return text[:start] + block + text[end:]


def _edited(text: str, block: str) -> str:
    """Return a file after what the page tells the reader to do with a block of YAML."""
    if block.startswith("procedure:"):
        return "".join(text.splitlines(keepends=True)[:HEAD_LINES]) + block
    if block.startswith("  "):
        return _with_step(text, block)
    return f"{text}\n{block}"


def _commands(block: str) -> Iterator[tuple[str, list[str]]]:
    """Yield each command line of a terminal with the lines shown below it."""
    for part in re.split(r"^\$ ", block, flags=re.MULTILINE)[1:]:
        line, *shown = part.splitlines()
        yield line, shown


def _typed(shown: list[str]) -> str:
    """Return what is typed at the questions of a command, one answer a line."""
    return "".join(f"{line.split(': ')[1]}\n" for line in shown if line.startswith("What "))


def _pattern(shown: list[str]) -> str:
    """Return what the output must match: `...` stands for more, and files are not counted."""
    lines = (re.escape(line).replace(r"\.\.\.", "(.|\n)*?") for line in shown)
    return re.sub(r"^\d+(?=\\ checked)", r"\\d+", "\n".join(lines), flags=re.MULTILINE)


def _run(line: str, shown: list[str], monkeypatch: pytest.MonkeyPatch) -> None:
    """Do one command line, and hold what it prints against what is shown."""
    program, *words = shlex.split(line)
    if program == "cd":
        monkeypatch.chdir(words[0])
        return
    assert program == "pullcord"
    if words == ["build"]:  # It takes long; the tests of the build see to it.
        return
    output = CliRunner().invoke(main, words, input=_typed(shown)).output
    assert re.fullmatch(_pattern(shown), output.rstrip()), f"{line}\n{output}"


@pytest.mark.parametrize("page", PAGES)
def test_no_line_of_a_block_is_too_long_for_a_small_tablet(page: str) -> None:
    """Nothing has to be pushed aside to be read on a tablet held upright."""
    long = [
        line
        for _, block in _blocks(page)
        for line in block.splitlines()
        if len(line) > MOST_COLUMNS
    ]
    assert long == []


def test_the_first_procedure_goes_as_the_page_says(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Whoever types what stands there sees what stands there, findings and places included."""
    monkeypatch.chdir(tmp_path)
    for kind, block in _blocks("first-procedure"):
        if kind == "yaml":
            path = Path("procedures/no-prime.yaml")
            path.write_text(_edited(path.read_text("utf-8"), block), "utf-8")
        for line, shown in _commands(block) if kind == "console" else ():
            _run(line, shown, monkeypatch)
    result = CliRunner().invoke(main, ["check", "--strict", "procedures"])
    assert result.exit_code == 0, result.output


def _kept_in(block: str) -> str | None:
    """Return the file a whole block of YAML belongs into, or None for a piece of one."""
    key, _, name = block.splitlines()[0].partition(": ")
    return {
        "procedure": f"procedures/{name}.yaml",
        "shared": f"procedures/shared/{name}.yaml",
        "machine": f"machines/{name}.yaml",
        "site_name": "mkdocs.yml",
    }.get(key)


def test_every_file_of_the_cookbook_is_without_a_finding(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """All of them together make a project that passes, and one warning in it is allowed."""
    monkeypatch.chdir(tmp_path)
    files = {_kept_in(text): text for kind, text in _blocks("cookbook") if kind == "yaml"}
    for name, text in files.items():
        if name is not None:
            Path(name).parent.mkdir(parents=True, exist_ok=True)
            Path(name).write_text(text, "utf-8")
    assert len(files) > 8
    result = CliRunner().invoke(main, ["check", "--strict"])
    assert (result.exit_code, result.output.count("1 allowed")) == (0, 1), result.output


def test_the_settings_of_the_cookbook_are_known() -> None:
    """A setting that is shown is one that the plugin has."""
    pieces = [text for _, text in _blocks("cookbook") if text.startswith("plugins:")]
    named = {
        name for text in pieces for name in re.findall(r"^      ([a-z]+):", text, re.MULTILINE)
    }
    assert named == {"replaces", "templates"}
    assert named <= {name for name, _ in PullcordConfig._schema}


def _check_step(step: str) -> Result:
    """Check the procedure that has one step of the questions and answers in it."""
    path = Path("procedures/fuses.yaml")
    path.parent.mkdir(exist_ok=True)
    path.write_text(FAQ_PROCEDURE + step, "utf-8")
    return CliRunner().invoke(main, ["check", "--strict", "procedures"])


(FAQ_STEP,) = (text for _, text in _blocks("faq"))
DO = "do: >-\n      Look at this: fuse #3, the red one.\n"


def test_the_step_of_the_faq_is_without_a_finding(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Below `>-` a colon and a `#` are plain text."""
    monkeypatch.chdir(tmp_path)
    assert DO in FAQ_STEP
    result = _check_step(FAQ_STEP)
    assert (result.exit_code, result.output) == (0, "1 checked, nothing found\n")


@pytest.mark.parametrize(
    ("old", "new", "rule"),
    [
        pytest.param(DO, "do: Look at fuse #3\n", "lost-text", id="number sign"),
        pytest.param(DO, "do: Look at this: the fuse\n", "yaml-syntax", id="colon"),
        pytest.param("    ask:", "\task:", "tab-indent", id="tab"),
        pytest.param("yes: done", "yes: step look", "cycle", id="back to the same step"),
    ],
)
def test_what_the_faq_says_is_refused_is_refused(
    old: str, new: str, rule: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Each slip gives the finding that the page names."""
    monkeypatch.chdir(tmp_path)
    assert f"`{rule}`" in (GUIDE / "faq.md").read_text("utf-8")
    result = _check_step(FAQ_STEP.replace(old, new))
    assert (result.exit_code, result.output.count("error:")) == (1, 1), result.output
    assert f"[{rule}]" in result.output


@pytest.mark.parametrize("figure", ["0.03 in", "60 psi", "15 ft lb", "70 °F"])
def test_the_units_of_the_faq_are_known(figure: str) -> None:
    """What it says may be written can be read."""
    assert f"`{figure}`" in (GUIDE / "faq.md").read_text("utf-8")
    assert parse_limits(f"under {figure}")
