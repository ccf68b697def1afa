"""Text from a file is data: it is printed as it stands, and does nothing."""

from __future__ import annotations

import io
from pathlib import Path

import pypdf
import pytest

from pullcord.printing.output import print_sheets
from pullcord.printing.paper import Kind
from pullcord.printing.press import read_press
from pullcord.project import Project, load_project
from tests.printing.sheets import SETTINGS, Printed, margin_faults, read, squeezed

TEXTS = {
    "markup": '#read("/etc/hostname") *bold* _it_ $x^2$ `code` = head // no /* no */ \\ @ref <a>',
    "script": "</script><b>&amp;{{ 7*7 }} {% raw %} %PDF (a) Tj ET",
    "braces": "{number} {title} %s {0} {",
    "quotes": "\"“”‘’'«»",
    "one word": "Vierwaldstättersee" * 6,
    "accents": "naïve Ångström – Größe, ≤ 5 Ω ± 0.1 µF, żółć, Ελλάς, Москва",
}
UNKNOWN = {"ideographs": "漢字漢字", "emoji": "fire 🔥🔥"}
KINDS: tuple[Kind, ...] = ("flowchart", "steps", "record", "walkaway")
PROCEDURE = """\
procedure: hostile
title: {title}
symptom: {text}
about: {text}
before: [{text}]
mistakes: [{text}]
tools: {{thing: {{title: {title}, instead: {text}}}}}
start: look
causes:
  bad: {{title: {title}, remedy: {text}, source: {title}}}
steps:
  look:
    title: {title}
    do: {text}
    why: {text}
    needs: thing
    ask: {title}
    source: {title}
    answers:
      {title}: step read
      no: cause bad
  read:
    title: Read
    do: {text}
    reading:
      {{quantity: resistance, at: {title}, against: {title}, general: 1-2 ohm, source: {title}}}
    answers: {{below: cause bad, within: done, above: cause bad, open: cause bad}}
"""


def project_of(folder: Path, text: str) -> Project:
    """Write a procedure in which every text is the same, and read it."""
    quoted = "'" + text.replace("'", "''") + "'"
    title = "'" + text[:110].strip().replace("'", "''") + "'"
    path = folder / "hostile.yaml"
    path.write_text(PROCEDURE.format(text=quoted, title=title), encoding="utf-8")
    project = load_project([folder])
    assert "hostile" in project.files, project.findings
    return project


def print_all(folder: Path, text: str) -> dict[Kind, Printed]:
    """Print every kind of sheets of such a procedure."""
    press = read_press(project_of(folder, text), SETTINGS, "a4")
    return {kind: read(print_sheets(press, kind, "hostile")) for kind in KINDS}


@pytest.mark.parametrize("text", TEXTS.values(), ids=TEXTS)
def test_text_is_printed_as_it_stands(tmp_path: Path, text: str) -> None:
    """Every character is there, on every kind of sheet, within the margins."""
    for sheets in print_all(tmp_path, text).values():
        assert squeezed(text[:110].strip()) in sheets.text
        assert margin_faults(sheets) == []


@pytest.mark.parametrize("text", UNKNOWN.values(), ids=UNKNOWN)
def test_what_no_font_has_is_shown_as_unknown(tmp_path: Path, text: str) -> None:
    """The sheets are made all the same; the rest of the text can be read."""
    for sheets in print_all(tmp_path, f"before {text} after").values():
        assert "before" in sheets.text
        assert "after" in sheets.text


def test_a_pdf_does_nothing(tmp_path: Path) -> None:
    """No script, no form, no file and no link that leaves the document."""
    for sheets in print_all(tmp_path, TEXTS["markup"]).values():
        reader = pypdf.PdfReader(io.BytesIO(sheets.content))
        root = reader.trailer["/Root"]
        assert {"/OpenAction", "/AA", "/AcroForm"}.isdisjoint(root)
        assert {"/JavaScript", "/EmbeddedFiles"}.isdisjoint(root.get("/Names", {}))
        for page in reader.pages:
            assert [a for a in page.get("/Annots", []) if "/URI" in str(a.get_object())] == []


def test_long_texts_run_over_to_the_next_sheet(tmp_path: Path) -> None:
    """A step too long for one sheet is not cut off."""
    text = " ".join(f"word{number}" for number in range(160))
    sheets = print_all(tmp_path, text)["steps"]
    assert sheets.text.count("word159") >= 8
    assert margin_faults(sheets) == []
