"""The command line: what it prints and how it ends."""

from __future__ import annotations

import contextlib
import gc
import json
import os
import pty
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

import pullcord.plugin
from pullcord.cli import main
from pullcord.errors import FindingsError, PullcordError
from pullcord.project import load_project
from pullcord.rules.example import example

GOOD = example("title: Pump will not prime\n")
BAD = example("titel: Pump will not prime\n")
WARNED = example("tools:\n  bucket:\n    title: A bucket\n")


@pytest.fixture
def shed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Stand in an empty folder."""
    monkeypatch.chdir(tmp_path)
    return tmp_path


def run(*words: str) -> Result:
    """Run `pullcord` with some words."""
    return CliRunner().invoke(main, words)


def put(path: str, text: str) -> None:
    """Write a file below the present folder."""
    Path(path).parent.mkdir(parents=True, exist_ok=True)
    Path(path).write_text(text, encoding="utf-8")


def test_a_clean_folder(shed: Path) -> None:
    """Nothing on the standard output, a word on the other, and 0."""
    put("procedures/no-prime.yaml", GOOD)
    done = run("check", "procedures")
    assert (done.exit_code, done.stdout, done.stderr) == (0, "", "1 checked, nothing found\n")


def test_a_check_leaves_the_collecting_of_garbage_as_it_was(shed: Path) -> None:
    """Whoever runs it among other things is not made slower or larger by it."""
    put("procedures/no-prime.yaml", GOOD)
    before = gc.get_threshold()
    run("check", "procedures")
    assert gc.get_threshold() == before


def test_a_finding_shows_its_line(shed: Path) -> None:
    """File, line and column, the line with a caret, and how to mend it."""
    put("procedures/no-prime.yaml", GOOD.replace("cause air-leak", "cause air-leek"))
    done = run("check", "procedures/no-prime.yaml")
    assert done.exit_code == 1
    assert done.stdout.splitlines()[:4] == [
        "procedures/no-prime.yaml:19:19: error: there is no cause called `air-leek` "
        "[unknown-target]",
        "      full: cause air-leek",
        "                  ^",
        "  mend: did you mean `air-leak`?",
    ]


def test_a_loop_is_printed_step_by_step(shed: Path) -> None:
    """Further lines of a message are indented below the first."""
    put("procedures/no-prime.yaml", GOOD.replace("cause air-leak", "step casing"))
    done = run("check", "procedures")
    assert "[cycle]\n    step `casing`, answer `full`: step `casing`\n" in done.stdout


def test_warnings_count_only_when_asked_to(shed: Path) -> None:
    """They are printed in any case."""
    put("procedures/no-prime.yaml", WARNED)
    for words, code in ((("check",), 0), (("check", "--strict"), 1)):
        done = run(*words)
        assert "warning: no step needs the tool `bucket` [unused-tool]" in done.stdout
        assert (done.exit_code, done.stderr) == (code, "1 warning in 1 file\n")


METER = "plugins:\n  - pullcord:\n      meter:\n        leads: {leads}\n"


def test_a_check_goes_by_the_meter_of_the_project(shed: Path) -> None:
    """A meter that cannot be is a finding in the settings, with its line; a good one is used."""
    put("procedures/no-prime.yaml", GOOD)
    put("mkdocs.yml", METER.format(leads="0.2 ohm"))
    assert run("check").exit_code == 0
    put("mkdocs.yml", METER.format(leads="0.2 V"))
    done = run("check")
    assert done.exit_code == 1
    assert done.stdout.splitlines()[:2] == [
        "mkdocs.yml:4:16: error: `0.2 V` is a voltage, but a resistance is measured "
        "[unreadable-figure]",
        "        leads: 0.2 V",
    ]


WRONG = {
    "a path that is not there": ["check", "nowhere"],
    "a folder without YAML": ["check", "empty"],
    "a file that is no YAML": ["check", "notes.txt"],
    "an option nobody knows": ["check", "--loud"],
    "a command nobody knows": ["cheque"],
    "a build without settings": ["build"],
    "a build of a folder": ["build", "-f", "empty"],
}


@pytest.mark.parametrize("words", WRONG.values(), ids=WRONG)
def test_wrong_usage(shed: Path, words: list[str]) -> None:
    """It ends with 2 and says what is wrong, without a traceback."""
    Path("empty").mkdir()
    put("notes.txt", "x")
    done = run(*words)
    assert done.exit_code == 2
    assert "Error: " in done.stderr
    assert isinstance(done.exception, SystemExit)


def test_only_the_asked_file_is_reported_but_its_neighbours_are_known(shed: Path) -> None:
    """A hand-over to a neighbour, or to a shipped procedure, is no finding."""
    over = "steps:\n  casing:\n    title: Casing\n    do: Look.\n    ask: What do you see?\n"
    answers = (
        "{a: procedure no-flow, b: procedure no-spark, c: cause air-leak, d: cause dry-casing}"
    )
    put("own/no-prime.yaml", example(f"{over}    answers: {answers}\n"))
    put("own/no-flow.yaml", BAD)
    done = run("check", "own/no-prime.yaml")
    assert (done.exit_code, done.stdout) == (0, "")
    assert "own/no-flow.yaml:" in run("check", "own").stdout


def test_machine_sheets_are_checked_too(shed: Path) -> None:
    """A folder of sheets is a folder like any other."""
    put("machines/old-pump.yaml", "machine: old-pump\ntitle: Old pump\nkind: pump\ncolour: red\n")
    assert "[unknown-key]" in run("check", "machines").stdout


PROJECTS = {
    "its own folder by default": ("plugins: [pullcord]\n", {"procedures/bad.yaml"}),
    "and machine sheets": ("plugins: [pullcord]\n", {"procedures/bad.yaml", "machines/bad.yaml"}),
    "folders it names": ("plugins:\n  - pullcord: {procedures: [ours]}\n", {"ours/bad.yaml"}),
    "without the library": ("plugins:\n  - pullcord: {library: false}\n", {"procedures/bad.yaml"}),
    "no plugin": ("site_name: x\n", {"procedures/bad.yaml"}),
}


@pytest.mark.parametrize(("settings", "files"), PROJECTS.values(), ids=PROJECTS)
def test_without_a_path_the_present_project_is_checked(
    shed: Path, settings: str, files: set[str]
) -> None:
    """The folders its settings name, or those every project has."""
    put("mkdocs.yml", settings)
    for file in {*files, "elsewhere/bad.yaml"}:
        put(file, "titel: x\n")
    done = run("check")
    assert done.exit_code == 1
    found = {line.split(":")[0] for line in done.stdout.splitlines() if ": error: " in line}
    assert {file for file in found if not file.startswith(("/", ".."))} == files


def test_a_folder_with_settings_is_checked_as_that_project(shed: Path) -> None:
    """From outside one gets what one gets from within; the settings are no procedure."""
    put("barn/mkdocs.yml", "plugins: [pullcord]\n")
    put("barn/procedures/no-prime.yaml", BAD)
    put("barn/elsewhere/no-flow.yaml", BAD)
    done = run("check", "barn")
    lines = [line for line in done.stdout.splitlines() if ": error: " in line]
    assert [line.split(":")[0] for line in lines] == ["barn/procedures/no-prime.yaml"]
    put("barn/mkdocs.yml", METER.format(leads="0.2 V"))
    assert run("check", "barn").stdout.startswith("barn/mkdocs.yml:4:16: error: `0.2 V`")


def test_a_project_may_replace_a_shipped_procedure(shed: Path) -> None:
    """Only if its settings say so."""
    put("procedures/no-spark.yaml", example("procedure: no-spark\n"))
    put("mkdocs.yml", "plugins: [pullcord]\n")
    assert "[same-name-twice]" in run("check").stdout
    put("mkdocs.yml", "plugins:\n  - pullcord: {replaces: [no-spark]}\n")
    assert "[same-name-twice]" not in run("check").stdout
    put("mkdocs.yml", "plugins:\n  - pullcord: {replaces: [zebra]}\n")
    assert run("check").exit_code == 2


def test_without_a_project_the_shipped_procedures_are_checked(shed: Path) -> None:
    """In any folder, something is checked and said."""
    done = run("check")
    assert done.exit_code in (0, 1)
    assert done.stderr


HOSTILE = {
    "control characters": b"procedure: no-prime\ntitle: \x1b[2J\x07\n",
    "reversed order": "procedure: \u202enosrep\n".encode(),
    "another encoding": b"procedure: \xff\xfe\xfd\n",
    "UTF-16": "procedure: no-prime\n".encode("utf-16"),
    "nothing": b"",
    "one long line": b"procedure: no-prime\ntitel: " + b"x" * 3000 + b" \n",
}


@pytest.mark.parametrize("raw", HOSTILE.values(), ids=HOSTILE)
@pytest.mark.parametrize("encoding", ["utf-8", "latin-1"])
def test_nothing_hostile_reaches_the_terminal(shed: Path, raw: bytes, encoding: str) -> None:
    """In a real process, on a terminal that knows few letters: findings, no traceback."""
    Path("procedures").mkdir()
    Path("procedures/no-prime.yaml").write_bytes(raw)
    done = subprocess.run(
        [sys.executable, "-c", "from pullcord.cli import main; main()", "check", "procedures"],
        env={**os.environ, "PYTHONIOENCODING": encoding},
        capture_output=True,
        check=False,
    )
    assert done.returncode == 1
    assert b"procedures/no-prime.yaml:1:" in done.stdout or b".yaml:2:" in done.stdout
    assert b"Traceback" not in done.stderr
    assert not {0x1B, 0x07} & set(done.stdout)
    assert max(map(len, done.stdout.decode(encoding).splitlines())) < 600


def test_a_build_says_where_the_site_is(shed: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """What was asked for reaches the builder, and its answer the reader."""
    put("mkdocs.yml", "plugins: [pullcord]\n")
    asked = []

    def build_site(config_file: Path, site_dir: Path | None, strict: bool) -> Path:
        asked.append((config_file, site_dir, strict))
        return Path("site")

    monkeypatch.setattr(pullcord.plugin, "build_site", build_site)
    done = run("build", "--strict", "--site-dir", "out")
    assert (done.exit_code, done.stdout) == (0, "The site is in site\n")
    assert asked == [(Path("mkdocs.yml"), Path("out"), True)]


def test_a_build_that_fails_says_why(shed: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Findings look as they do in a check; anything else is one line."""
    put("mkdocs.yml", "plugins: [pullcord]\n")
    put("procedures/no-prime.yaml", BAD)
    findings = load_project([Path("procedures").resolve()]).findings
    errors: list[PullcordError] = [FindingsError(findings), PullcordError("the disk is full")]

    def build_site(config_file: Path, site_dir: Path | None, strict: bool) -> Path:
        raise errors.pop(0)

    monkeypatch.setattr(pullcord.plugin, "build_site", build_site)
    done = run("build")
    assert done.exit_code == 1
    assert done.stdout.startswith("procedures/no-prime.yaml:")
    assert "titel: Pump will not prime\n^" in done.stdout
    done = run("build")
    assert (done.exit_code, done.stdout, done.stderr) == (1, "", "error: the disk is full\n")


def test_help_and_version() -> None:
    """What a beginner types first."""
    for words in (("--help",), ("check", "-h"), ("build", "-h"), ("--version",)):
        assert run(*words).exit_code == 0


def test_a_built_site_is_packed(shed: Path) -> None:
    """The file lies where it was asked for, and the last line says so."""
    (shed / "site").mkdir()
    (shed / "site" / "index.html").write_text("<h1>Shed</h1>", encoding="utf-8")
    result = CliRunner().invoke(main, ["pack", "-o", "stick.zip"])
    assert (result.exit_code, result.output) == (0, "The pack is stick.zip\n")
    assert (shed / "stick.zip").is_file()


def test_what_is_no_site_is_not_packed(shed: Path) -> None:
    """The message says what to do first."""
    result = CliRunner().invoke(main, ["pack"])
    assert result.exit_code == 1
    assert "run `pullcord build` first" in result.output


SMALL_PDF = b"%PDF-"


def test_a_chart_is_printed(shed: Path) -> None:
    """The file is a PDF, and the command says where it is."""
    put("procedures/no-prime.yaml", GOOD)
    done = run("print", "no-prime", "-o", "chart.pdf")
    assert (done.exit_code, done.stdout) == (0, "The PDF is chart.pdf\n")
    assert Path("chart.pdf").read_bytes().startswith(SMALL_PDF)


@pytest.mark.parametrize(
    ("words", "code", "said"),
    [
        pytest.param(["no-pime"], 2, "did you mean `no-prime`?", id="no such procedure"),
        pytest.param([], 2, "name a procedure", id="no name"),
        pytest.param(["no-prime", "--machine", "x"], 2, "there is no machine `x`", id="no machine"),
        pytest.param(["no-prime", "--paper", "b5"], 2, "'b5' is not one of", id="no such paper"),
        pytest.param(["no-prime", "--what", "record"], 1, "takes no reading", id="no reading"),
    ],
)
def test_what_cannot_be_printed_is_said(shed: Path, words: list[str], code: int, said: str) -> None:
    """Wrong usage ends with 2, what cannot be printed with 1; neither leaves a file."""
    put("procedures/no-prime.yaml", GOOD)
    done = run("print", *words, "-o", "sheet.pdf")
    assert done.exit_code == code
    assert said in done.stderr
    assert not Path("sheet.pdf").exists()


def test_a_place_that_cannot_be_written(shed: Path) -> None:
    """A missing folder is told without a traceback."""
    put("procedures/no-prime.yaml", GOOD)
    done = run("print", "no-prime", "-o", "nowhere/chart.pdf")
    assert done.exit_code == 1
    assert done.stderr == "error: nowhere/chart.pdf cannot be written: No such file or directory\n"


def test_nothing_unproven_is_printed(shed: Path) -> None:
    """A procedure with an error is not printed; the error is shown instead."""
    put("procedures/no-prime.yaml", GOOD.replace("cause air-leak", "cause air-leek"))
    done = run("print", "no-prime", "-o", "chart.pdf")
    assert done.exit_code == 1
    assert "there is no cause called `air-leek`" in done.stdout
    assert not Path("chart.pdf").exists()


def test_a_review_says_what_a_procedure_takes(shed: Path) -> None:
    """One check of 5 minutes tells two causes apart, that nobody gave odds."""
    put("procedures/no-prime.yaml", GOOD)
    done = run("review", "no-prime")
    assert (done.exit_code, done.stderr) == (0, "")
    assert "Review: Pump will not prime\n\nTime to a cause\n" in done.stdout
    assert (
        "  Minutes to a cause  5           5                                    5\n" in done.stdout
    )
    assert "  All equal: nobody gave any.\n" in done.stdout


@pytest.mark.parametrize(
    ("words", "code", "says"),
    [
        (("review", "no-pryme"), 2, "did you mean `no-prime`?"),
        (("review", "no-prime", "--tools", "bukket"), 2, "did you mean `bucket`?"),
        (("review", "no-prime", "nowhere"), 2, "nowhere"),
        (("review", "bad"), 1, "1 error in 1 file"),
        (("review", "no-prime", "--tools", "bucket", "procedures"), 0, ""),
        (("review", "no-prime", "--tools", ""), 0, ""),
    ],
    ids=["no such procedure", "no such tool", "no such path", "has errors", "a tool", "no tool"],
)
def test_a_review_that_cannot_be(shed: Path, words: tuple[str, ...], code: int, says: str) -> None:
    """2 for a name nobody has, 1 with the findings for a procedure with errors."""
    put("procedures/no-prime.yaml", WARNED)
    put("procedures/bad.yaml", BAD.replace("procedure: no-prime", "procedure: bad"))
    done = run(*words)
    assert (done.exit_code, says in done.stderr) == (code, True), done.output


@pytest.mark.parametrize("form", ["json", "sarif", "github"])
def test_a_program_gets_its_own_form(shed: Path, form: str) -> None:
    """All of it on the standard output and nothing else; the exit code stays what it is."""
    put("procedures/no-prime.yaml", GOOD.replace("cause air-leak", "cause air-leek"))
    done = run("check", "--format", form)
    assert done.exit_code == 1
    assert "unknown-target" in done.stdout
    assert "air-leek" in done.stdout
    assert form == "github" or json.loads(done.stdout)
    put("procedures/no-prime.yaml", GOOD)
    done = run("check", "--format", form)
    assert (done.exit_code, done.stderr) == (0, "1 checked, nothing found\n")
    assert done.stdout == "" if form == "github" else json.loads(done.stdout)


def test_what_a_file_allows_is_counted(shed: Path) -> None:
    """It is not among the findings, and not passed over in silence either."""
    allow = "tools:\n  # pullcord: allow unused-tool because it hangs by the pump\n  bucket:"
    put("procedures/no-prime.yaml", WARNED.replace("tools:\n  bucket:", allow))
    done = run("check", "--strict")
    assert (done.exit_code, done.stdout) == (0, "")
    assert done.stderr == "1 checked, nothing found\n1 allowed by the files themselves\n"


@pytest.mark.parametrize(
    ("environment", "is_coloured"),
    [({}, True), ({"NO_COLOR": "1"}, False), ({"NO_COLOR": ""}, True)],
    ids=["a terminal", "NO_COLOR set", "NO_COLOR empty"],
)
def test_colour_is_for_a_terminal_that_wants_it(
    shed: Path, environment: dict[str, str], is_coloured: bool
) -> None:
    """On a real terminal; no-color.org: any value of NO_COLOR but an empty one means none."""
    put("procedures/no-prime.yaml", BAD)
    parent, child = pty.openpty()
    given = {name: value for name, value in os.environ.items() if name != "NO_COLOR"}
    command = [sys.executable, "-c", "from pullcord.cli import main; main()", "check"]
    with subprocess.Popen(command, stdout=child, env={**given, **environment}) as process:
        os.close(child)
        said = b""
        with contextlib.suppress(OSError):  # The end of a terminal is an error on some systems.
            while part := os.read(parent, 4096):
                said += part
        assert process.wait() == 1
    os.close(parent)
    assert b"error: " in said
    assert (b"\x1b[31m" in said) is is_coloured
    assert "\x1b" not in run("check").stdout
