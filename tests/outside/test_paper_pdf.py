"""Printed PDFs against PDF/UA-1 (ISO 14289-1) and the contrast formula of WCAG 2.2."""

from __future__ import annotations

import io
from itertools import pairwise
from typing import Any
from xml.etree import ElementTree

import numpy as np
import pypdf
import pypdfium2
import pytest

from tests.printing.sheets import Printed, printed, text_colours

XMP = {
    "rdf": "http://www.w3.org/1999/02/22-rdf-syntax-ns#",
    "dc": "http://purl.org/dc/elements/1.1/",
    "ua": "http://www.aiim.org/pdfua/ns/id/",
}
LEAST_CONTRAST = 7.0


@pytest.fixture(scope="module", params=["flowchart", "steps"])
def sheets(request: pytest.FixtureRequest) -> Printed:
    """Two kinds of sheets: drawn and written."""
    return printed(request.param, "leaks-fuel")


def root_of(sheets: Printed) -> Any:
    """Return the document catalogue."""
    return pypdf.PdfReader(io.BytesIO(sheets.content)).trailer["/Root"]


def test_it_claims_pdf_ua(sheets: Printed) -> None:
    """ISO 14289-1, 5: the identifier; 7.1: a title in the metadata, shown by the reader."""
    root = root_of(sheets)
    xmp = ElementTree.fromstring(root["/Metadata"].get_object().get_data())  # noqa: S314 - our own
    part = xmp.find(".//ua:part", XMP)
    about = xmp.find(".//rdf:Description", XMP)
    assert about is not None
    claimed = part.text if part is not None else about.get(f"{{{XMP['ua']}}}part")
    assert claimed == "1"
    title = xmp.find(".//dc:title//rdf:li", XMP)
    assert title is not None
    assert (title.text or "").startswith("Petrol leaks or smells")
    assert root["/ViewerPreferences"]["/DisplayDocTitle"]


def test_it_is_tagged_and_says_its_language(sheets: Printed) -> None:
    """ISO 14289-1, 7.1 and 7.2."""
    root = root_of(sheets)
    assert root["/MarkInfo"]["/Marked"]
    assert root["/Lang"] == "en"
    assert tags_of(root["/StructTreeRoot"]) >= {"/H1"}


def test_headings_go_down_one_level_at_a_time(sheets: Printed) -> None:
    """ISO 14289-1, 7.4.2: none is skipped on the way down."""
    levels = [int(tag[2:]) for tag in walk(root_of(sheets)["/StructTreeRoot"]) if tag[1] == "H"]
    assert levels[0] == 1
    assert all(after - before <= 1 for before, after in pairwise(levels))


def test_figures_have_a_text_in_their_place(sheets: Printed) -> None:
    """ISO 14289-1, 7.3."""
    figures = [
        node for node in nodes(root_of(sheets)["/StructTreeRoot"]) if node["/S"] == "/Figure"
    ]
    assert figures
    assert all(node.get("/Alt") for node in figures)


def test_text_stands_out_from_its_ground(sheets: Printed) -> None:
    """WCAG 2.2, 1.4.6: 7 to 1, by relative luminance, for the colour of every run of text."""
    colours = text_colours(sheets.content)
    document = pypdfium2.PdfDocument(sheets.content)
    for page in document:
        ground = np.bincount(page.render(grayscale=True).to_numpy().ravel()).argmax()
        page.close()
        for red, green, blue in colours:
            text = 0.2126 * linear(red) + 0.7152 * linear(green) + 0.0722 * linear(blue)
            assert (linear(ground) + 0.05) / (text + 0.05) >= LEAST_CONTRAST
    document.close()


def linear(level: float) -> float:
    """Return a channel of sRGB, 0 to 255, as light, by WCAG 2.2's relative luminance."""
    share = level / 255
    return float(share / 12.92 if share <= 0.04045 else ((share + 0.055) / 1.055) ** 2.4)


def nodes(node: Any) -> list[Any]:
    """Return all elements of the structure tree below a node, in order."""
    found: list[Any] = []
    kids = node.get("/K", [])
    for kid in kids if isinstance(kids, list) else [kids]:
        inner = kid.get_object() if hasattr(kid, "get_object") else kid
        if isinstance(inner, dict) and "/S" in inner:
            found += [inner, *nodes(inner)]
    return found


def walk(node: Any) -> list[str]:
    """Return the tags below a node, in order."""
    return [str(inner["/S"]) for inner in nodes(node) if str(inner["/S"])[2:].isdigit()]


def tags_of(node: Any) -> set[str]:
    """Return which tags are used below a node."""
    return {str(inner["/S"]) for inner in nodes(node)}
