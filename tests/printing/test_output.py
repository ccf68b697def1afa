"""Finished PDFs: those of a site, made once and the same every time."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from pullcord.drawing.chart import START, Chart, Edge, Node, Paragraph
from pullcord.errors import PullcordError
from pullcord.printing.chart.notes import NoteBook
from pullcord.printing.chart.sheets import ChartJob, flowchart_sheets
from pullcord.printing.output import pdf_uri, print_sheets, procedure_pdfs
from pullcord.printing.paper import KINDS, PAPERS, Kind
from pullcord.printing.press import UnknownNameError, read_press
from pullcord.project import load_project
from pullcord.rules.example import example
from tests.printing.sheets import SETTINGS, about, press, printed, read, shed

GOOD = example("title: Pump will not prime\n")


def small(folder: Path) -> Path:
    """Write one small procedure."""
    (folder / "no-prime.yaml").write_text(GOOD, encoding="utf-8")
    return folder


@pytest.mark.parametrize("kind", [k for k in KINDS if k not in ("pins", "record", "job")])
def test_the_same_input_gives_the_same_bytes(tmp_path: Path, kind: Kind) -> None:
    """Nothing of the clock, of chance or of the order of sets is in a PDF."""
    project = load_project([small(tmp_path)])
    settings = replace(SETTINGS, cache_folder=None)
    first = print_sheets(read_press(project, settings, "a4"), kind, "no-prime")
    assert first == print_sheets(read_press(project, settings, "a4"), kind, "no-prime")
    kept = replace(settings, cache_folder=tmp_path / "cache")
    assert first == print_sheets(read_press(project, kept, "a4"), kind, "no-prime")
    assert first == print_sheets(read_press(project, kept, "a4"), kind, "no-prime")


def test_what_was_kept_is_not_taken_for_something_else(tmp_path: Path) -> None:
    """Another text, another day or another paper gives another PDF."""
    settings = replace(SETTINGS, cache_folder=tmp_path / "cache")
    project = load_project([small(tmp_path)])
    (tmp_path / "other").mkdir()
    changed = tmp_path / "other" / "no-prime.yaml"
    changed.write_text(GOOD.replace("will not prime", "stays dry"), encoding="utf-8")
    made = [
        print_sheets(read_press(project, settings, "a4"), "flowchart", "no-prime"),
        print_sheets(read_press(project, settings, "letter"), "flowchart", "no-prime"),
        print_sheets(
            read_press(project, replace(settings, build_date="2026-03-02"), "a4"),
            "flowchart",
            "no-prime",
        ),
        print_sheets(
            read_press(load_project([changed.parent]), settings, "a4"), "flowchart", "no-prime"
        ),
    ]
    assert len(set(made)) == len(made)


def test_a_site_gets_the_sheets_of_every_procedure(tmp_path: Path) -> None:
    """Each has an address of its own; where nothing is read, there is no record sheet."""
    project = load_project([small(tmp_path)])
    made = list(procedure_pdfs(project, SETTINGS))
    assert [file.uri for file in made] == [
        "print/no-prime.pdf",
        "print/no-prime-steps.pdf",
        "print/no-prime-walkaway.pdf",
    ]
    assert all(file.content.startswith(b"%PDF-") for file in made)


def test_a_site_gets_record_sheets_for_its_machines() -> None:
    """A machine that a procedure does not fit gets none of its sheets."""
    made = procedure_pdfs(shed(), SETTINGS, kinds=("record",), machines=("quince",))
    sheets = {(file.uri, file.machine) for file in made}
    assert {
        ("print/no-spark-record.pdf", ""),
        ("print/quince/no-spark-record.pdf", "quince"),
        ("print/no-spark-points-record.pdf", ""),
    } < sheets
    assert ("print/quince/no-spark-points-record.pdf", "quince") not in sheets


def test_addresses_do_not_meet() -> None:
    """No two PDFs of a site have the same address."""
    uris = [
        pdf_uri(kind, name, machine)
        for kind in KINDS
        for name in ("no-spark", "wont-idle")
        for machine in ("", "quince", "damson")
    ]
    assert len(set(uris)) == len(uris)


def test_paper_has_the_size_it_is_called_by() -> None:
    """A larger sheet needs fewer of them, and every paper can be had."""
    found = {paper: printed("flowchart", "leaks-fuel", paper=paper) for paper in PAPERS}
    sizes = {
        paper: sorted((round(s.width_mm, 1), round(s.height_mm, 1)))
        for paper, chart in found.items()
        for s in chart.sheets
    }
    assert sizes == {"a4": [210, 297], "letter": [215.9, 279.4], "a3": [297, 420]}
    assert len(found["a3"].sheets) == 1 < len(found["a4"].sheets)


def test_a_small_chart_is_not_blown_up(tmp_path: Path) -> None:
    """It has one sheet, and type no larger than a book for people who stand."""
    project = load_project([small(tmp_path)])
    chart = read(print_sheets(read_press(project, SETTINGS, "a4"), "flowchart", "no-prime"))
    assert len(chart.sheets) == 1
    sizes = set(chart.sheets[0].sizes_pt)
    assert max(sizes - {13.0}) <= 11.001


@pytest.mark.parametrize(
    ("name", "machine", "said"),
    [
        pytest.param("no-sprk", "", "did you mean `no-spark`", id="procedure"),
        pytest.param("no-spark", "quinze", "did you mean `quince`", id="machine"),
        pytest.param("xxxxxxx", "", "known are: .*leaks-fuel, .*wont-idle", id="far off"),
    ],
)
def test_an_unknown_name_is_told(name: str, machine: str, said: str) -> None:
    """With the nearest known one, or with all of them."""
    with pytest.raises(UnknownNameError, match=said):
        print_sheets(press(), "flowchart", name, machine)


def _check_with(answers: int) -> Chart:
    nodes = [Node(START, "start", "Start", (Paragraph("Start", "title"),))]
    nodes += [Node("step:x", "decision", "X", (Paragraph("Which one?", "title"),))]
    nodes += [
        Node(f"cause:{n}", "cause", "C", (Paragraph(f"Cause {n}", "title"),))
        for n in range(answers)
    ]
    edges = [Edge(START, "step:x")]
    edges += [Edge("step:x", f"cause:{n}", (f"☐ answer {n}",)) for n in range(answers)]
    return Chart("many", "Many", "Many answers.", tuple(nodes), tuple(edges))


@pytest.mark.parametrize("answers", [2, 12, 30])
def test_a_check_with_many_answers_fits(answers: int) -> None:
    """Type is made smaller where only that lets all its answers stand together."""
    frames = about("leaks-fuel").frames("flowchart_title")
    notes = NoteBook(press().kit, {})
    laid = flowchart_sheets(ChartJob(_check_with(answers), ["step:x"], notes, frames, "{sheets}"))
    assert laid.type_pt >= 7 - 1e-9
    assert sum(len(sheet.geometry.edges) for sheet in laid.sheets) >= answers + 1


def test_a_check_with_too_many_answers_is_told() -> None:
    """The author learns what to do."""
    frames = about("leaks-fuel").frames("flowchart_title")
    job = ChartJob(_check_with(90), ["step:x"], NoteBook(press().kit, {}), frames, "{sheets}")
    with pytest.raises(PullcordError, match="take larger paper or ask in two steps"):
        flowchart_sheets(job)
