"""The typesetting engine, and what a project may change about it."""

from __future__ import annotations

import io
from dataclasses import replace
from pathlib import Path

import pypdf
import pytest

from pullcord.errors import PullcordError
from pullcord.printing.clean import in_our_font, printable
from pullcord.printing.output import print_sheets
from pullcord.printing.press import read_press
from tests.printing.sheets import SETTINGS, read, shed, squeezed


def printed_with(folder: Path) -> bytes:
    """Print a walk-away list with a project's own templates."""
    settings = replace(SETTINGS, template_dirs=(folder,), cache_folder=None)
    return print_sheets(read_press(shed(), settings, "a4"), "walkaway", "leaks-fuel")


def test_a_project_may_word_sheets_anew(tmp_path: Path) -> None:
    """Its own texts/paper.yaml need only hold what it says differently."""
    (tmp_path / "texts").mkdir()
    (tmp_path / "texts" / "paper.yaml").write_text("line_machine: Which machine\n")
    assert squeezed("Which machine") in read(printed_with(tmp_path)).text


def test_a_word_nobody_prints_is_told(tmp_path: Path) -> None:
    """It is a slip in the project's own texts."""
    (tmp_path / "texts").mkdir()
    (tmp_path / "texts" / "paper.yaml").write_text("line_maschine: Which machine\n")
    with pytest.raises(PullcordError, match="line_maschine"):
        printed_with(tmp_path)


def test_a_project_may_lay_sheets_out_anew(tmp_path: Path) -> None:
    """One template of its own goes before the shipped one, beside the others that stay."""
    (tmp_path / "paper").mkdir()
    own = '#import "base.typ": *\n#let leaving-sheets(given) = [Our own list: #given.always]\n'
    (tmp_path / "paper" / "leaving.typ").write_text(own)
    assert squeezed("Our own list: Always") in read(printed_with(tmp_path)).text


def test_a_broken_template_is_told(tmp_path: Path) -> None:
    """In words, without a traceback of the engine."""
    (tmp_path / "paper").mkdir()
    (tmp_path / "paper" / "leaving.typ").write_text("#let leaving-sheets(given) = [\n")
    with pytest.raises(PullcordError, match="templates in paper/ cannot be set: unclosed"):
        printed_with(tmp_path)


@pytest.mark.parametrize("path", ["../secret.txt", "/pyproject.toml", "/../secret.txt"])
def test_a_template_reads_nothing_outside_its_folder(tmp_path: Path, path: str) -> None:
    """Not the project's files, not the machine's; only what lies among the templates."""
    (tmp_path / "secret.txt").write_text("secret")
    own = tmp_path / "templates"
    (own / "paper").mkdir(parents=True)
    (own / "beside.txt").write_text("what lies beside")
    template = own / "paper" / "leaving.typ"
    template.write_text('#let leaving-sheets(given) = read("/beside.txt")\n')
    assert squeezed("what lies beside") in read(printed_with(own)).text
    template.write_text(f'#let leaving-sheets(given) = read("{path}")\n')
    with pytest.raises(PullcordError, match="cannot be set"):
        printed_with(own)


def test_all_fonts_are_inside(tmp_path: Path) -> None:
    """A print shop's machine needs none of ours."""
    reader = pypdf.PdfReader(io.BytesIO(printed_with(tmp_path)))
    fonts = [
        font.get_object() for page in reader.pages for font in page["/Resources"]["/Font"].values()
    ]
    assert fonts
    for font in fonts:
        (inner,) = font["/DescendantFonts"]
        descriptor = inner.get_object()["/FontDescriptor"]
        assert {"/FontFile", "/FontFile2", "/FontFile3"} & set(descriptor)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        pytest.param("a\nb\tc", "a b c", id="one line"),
        pytest.param("☐\u00a0yes", "☐\u00a0yes", id="no break"),
        pytest.param("a\x00b\ud800c", "a\ufffdb\ufffdc", id="never"),
        pytest.param("✕", "×", id="alike"),
        pytest.param("x" * 29, "x" * 29, id="long word"),
        pytest.param("x" * 31, "x" * 15 + "\u200b" + "x" * 15 + "\u200bx", id="too long a word"),
    ],
)
def test_text_is_made_printable(text: str, said: str) -> None:
    """Nothing is left that no page may hold, and no word is so long that it runs off the sheet."""
    assert printable(text) == said


def test_what_the_typeface_lacks_is_unknown() -> None:
    """Letters it has stay."""
    assert in_our_font("Größe 漢 Ω ☐") == "Größe \ufffd Ω ☐"
