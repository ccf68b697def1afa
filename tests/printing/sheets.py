"""What was printed, read back by programs that know nothing of Pullcord."""

from __future__ import annotations

import io
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import pypdf
import pypdfium2
import pypdfium2.raw as pdfium

from pullcord.pages.settings import Settings
from pullcord.printing.output import print_sheets
from pullcord.printing.paper import Kind, PaperName
from pullcord.printing.press import Press, Topic, read_press, topic
from pullcord.project import Project, load_project

ROOT = Path(__file__).parents[2]
BUILT = "2026-03-01"
REVISION = "0123456789ab"
SETTINGS = Settings(build_date=BUILT, revision=REVISION, cache_folder=ROOT / ".cache" / "pullcord")
"""Layouts that several tests need are made once; what is kept is of this very source."""
MM = 72 / 25.4


@dataclass(frozen=True)
class Sheet:
    """One page of a PDF."""

    text: str
    sizes_pt: tuple[float, ...]
    """Of every run of text, by the text and graphics matrices it was shown with; read by pypdf."""
    width_mm: float
    height_mm: float


@dataclass(frozen=True)
class Printed:
    """A whole PDF."""

    content: bytes
    sheets: tuple[Sheet, ...]

    @property
    def text(self) -> str:
        """All text, without any space: lines may be broken anywhere."""
        return squeezed(" ".join(sheet.text for sheet in self.sheets))


@cache
def shed() -> Project:
    """Read the shipped procedures and the demo's machines."""
    return load_project([ROOT / "procedures", ROOT / "demo" / "machines"])


@cache
def press(paper: PaperName = "a4") -> Press:
    """Return what the shed's sheets are made with."""
    return read_press(shed(), SETTINGS, paper)


@cache
def about(name: str, machine: str = "") -> Topic:
    """Return a shipped procedure, for a machine of the demo."""
    return topic(press(), name, machine)


@cache
def printed(kind: Kind, name: str = "", machine: str = "", paper: PaperName = "a4") -> Printed:
    """Print something of the shed once, and read it back; what is long, with PDFium."""
    content = print_sheets(press(paper), kind, name, machine)
    return read_quickly(content) if kind in ("steps", "binder") else read(content)


def read(content: bytes) -> Printed:
    """Read a PDF with pypdf."""
    pages = pypdf.PdfReader(io.BytesIO(content)).pages
    return Printed(content, tuple(_read_page(page) for page in pages))


def read_quickly(content: bytes) -> Printed:
    """Read the text and the size of the pages of a PDF with PDFium, which is ten times as fast."""
    document = pypdfium2.PdfDocument(content)
    sheets = []
    for page in document:
        text = page.get_textpage().get_text_range()
        sheets.append(Sheet(text, (), page.get_width() / MM, page.get_height() / MM))
        page.close()
    document.close()
    return Printed(content, tuple(sheets))


def squeezed(text: str) -> str:
    """Return a text without spaces and without characters that only say where it may break."""
    return "".join(text.replace("\u200b", "").split())


def text_colours(content: bytes) -> set[tuple[int, int, int]]:
    """Return the fill colour of every run of text, read with PDFium."""
    colours: set[tuple[int, int, int]] = set()
    document = pypdfium2.PdfDocument(content)
    for page in document:
        for part in page.get_objects(filter=[pdfium.FPDF_PAGEOBJ_TEXT], max_depth=8):
            rgba = [pdfium.c_uint() for _ in range(4)]
            assert pdfium.FPDFPageObj_GetFillColor(part.raw, *rgba)
            colours.add((rgba[0].value, rgba[1].value, rgba[2].value))
        page.close()
    document.close()
    return colours


def ink_mm(content: bytes) -> list[tuple[float, float, float, float]]:
    """Return how far ink stays from the left, top, right and bottom edge of each page."""
    document = pypdfium2.PdfDocument(content)
    found = [_ink_of(page) for page in document]
    document.close()
    return found


def margin_faults(printed: Printed) -> list[str]:
    """Return where ink comes within 20 mm of the edge that is punched, or 10 mm of another.

    Sheets are bound along their long side: ISO 838 punches them 12 mm from it.
    """
    faults = []
    for number, (sheet, ink) in enumerate(
        zip(printed.sheets, ink_mm(printed.content), strict=True), start=1
    ):
        left, top, right, bottom = ink
        is_upright = sheet.height_mm > sheet.width_mm
        free = {"left": left, "top": top, "right": right, "bottom": bottom}
        least = {"left" if is_upright else "top": 20.0}
        faults += [
            f"sheet {number}: {free[side]:.1f} mm at the {side}"
            for side in free
            if free[side] < least.get(side, 10.0) - 0.5
        ]
    return faults


def _read_page(page: pypdf.PageObject) -> Sheet:
    sizes: list[float] = []

    def visit(text: str, cm: list[float], tm: list[float], _font: object, size: float) -> None:
        if text.strip():
            sizes.append(size * abs(tm[3] * cm[3]))

    text = page.extract_text(visitor_text=visit)
    box = page.mediabox
    return Sheet(text, tuple(sizes), float(box.width) / MM, float(box.height) / MM)


def _ink_of(page: pypdfium2.PdfPage) -> tuple[float, float, float, float]:
    pixels = page.render(scale=1, grayscale=True).to_numpy() < 200
    rows, columns = pixels.any(axis=1).nonzero()[0], pixels.any(axis=0).nonzero()[0]
    height, width = pixels.shape
    page.close()
    return (
        columns[0] / MM,
        rows[0] / MM,
        (width - 1 - columns[-1]) / MM,
        (height - 1 - rows[-1]) / MM,
    )
