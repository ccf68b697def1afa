"""Text from a file is data. Whatever it says, the page has the same elements."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from typing import Any

import pytest
import yaml

from pullcord.model.procedure import Procedure
from pullcord.pages.prose import pieces
from tests.pages.make import NO_SPARK, SETTINGS, WONT_IDLE, pages_of, procedure, tree_of
from tests.pages.tree import Element

HOSTILE = "</p></style><script>x</script><img src=x onerror=x>\"'{{7*7}}{% x %}&amp;\\"
BENIGN = "Words"

Path = tuple[str | int, ...]


def text_places(data: Any, path: Path = ()) -> Iterator[Path]:
    """Yield where a procedure's text holds free words: all but names, targets and numbers."""
    if isinstance(data, dict):
        for key, value in data.items():
            yield from text_places(value, (*path, key))
    elif isinstance(data, list):
        for number, value in enumerate(data):
            yield from text_places(value, (*path, number))
    elif not is_name(path, str(data)):
        yield path


def is_name(path: Path, value: str) -> bool:
    """Return whether a value is no free text: limits are read and said anew."""
    key = next(str(part) for part in reversed(path) if isinstance(part, str))
    fixed = {"procedure", "start", "then", "quantity", "limits", "needs", "makes", "near"}
    fixed |= {"opens", "closes", "minutes", "odds", "parts", "ignition", "strokes", "general"}
    return key in fixed or "answers" in path


def put(data: Any, path: Path, value: str) -> Any:
    """Return the data with one value put in."""
    if not path:
        return value
    head, *rest = path
    if isinstance(data, list):
        return [put(v, tuple(rest), value) if n == head else v for n, v in enumerate(data)]
    return {k: put(v, tuple(rest), value) if k == head else v for k, v in data.items()}


@cache
def pages_with(text: str) -> dict[str, Element]:
    """Return every page with a text put into every place, each followed by the place's number."""
    data = DATA
    for number, place in enumerate(PLACES):
        data = put(data, place, f"{text}{number}.")
    pages = pages_of(Procedure.model_validate(data), procedure(WONT_IDLE))
    return {uri: tree_of(page) for uri, page in pages.items()}


def shape(page: Element) -> list[tuple[str, frozenset[tuple[str, str]]]]:
    """Return every element outside drawings with the attributes that hold no text."""
    return [
        (element.tag, frozenset(p for p in element.attrs.items() if not p[0].startswith("aria")))
        for element in page.walk()
        if element.tag not in DRAWN
    ]


def links(page: Element) -> list[str]:
    """Return where the page's links lead, the drawing's too, in no order."""
    return sorted(link.attrs["href"] for link in page.tags("a"))


OWN = "procedures/no-spark.md"
DRAWN = {"svg", "path", "text", "g", "use", "figure", "figcaption", "a"}
# Every scalar stays text, as in a procedure file.
DATA: dict[str, Any] = yaml.load(NO_SPARK, Loader=yaml.BaseLoader)  # noqa: S506
PLACES = list(text_places(DATA))


@pytest.mark.parametrize("place", PLACES, ids=lambda place: ".".join(map(str, place)))
def test_hostile_text_comes_out_as_text(place: Path) -> None:
    """The page says exactly what the file says."""
    assert f"{HOSTILE}{PLACES.index(place)}." in pages_with(HOSTILE)[OWN].text


@pytest.mark.parametrize("uri", ["index.md", "procedures.md", OWN, "procedures/wont-idle.md"])
def test_hostile_text_makes_no_element(uri: str) -> None:
    """With hostile words a page has the elements and attributes it has with plain ones."""
    assert shape(pages_with(HOSTILE)[uri]) == shape(pages_with(BENIGN)[uri])
    assert links(pages_with(HOSTILE)[uri]) == links(pages_with(BENIGN)[uri])
    page = pages_with(HOSTILE)[uri]
    assert page.runs() == page.tags("img") == []


def test_a_hostile_answer_comes_out_as_text() -> None:
    """An answer is a key of the file, and text on the page."""
    data = put(DATA, ("steps", "plug", "answers"), {HOSTILE: "step look", "no": "cause coil"})
    pages = pages_of(Procedure.model_validate(data), procedure(WONT_IDLE))
    page = tree_of(pages[OWN])
    assert page.by_id("step-plug").all("pc-way__said")[0].text == HOSTILE
    assert page.runs() == page.tags("img") == []


@pytest.mark.parametrize("field", ["build_date", "revision", "currency"])
def test_hostile_settings_come_out_as_text(field: str) -> None:
    """Also inside the style element that prints the foot of each sheet."""
    settings = replace(SETTINGS, **{field: HOSTILE})
    page = tree_of(pages_of(procedure(WONT_IDLE), settings=settings)["procedures/wont-idle.md"])
    assert page.runs() == page.tags("img") == []
    (style,) = page.tags("style")
    assert "<" not in style.text
    assert style.text.count('"') == 2


PIECES = {
    "none": ("Plain words.", [("Plain words.", False)]),
    "one": ("Write `a: b` here.", [("Write ", False), ("a: b", True), (" here.", False)]),
    "unpaired": ("A ` alone.", [("A ` alone.", False)]),
    "only code": ("`done`", [("done", True)]),
}


@pytest.mark.parametrize("case", PIECES)
def test_backticks_mark_what_is_typed(case: str) -> None:
    """Our own sentences about files may hold code; nothing else is read in them."""
    text, expected = PIECES[case]
    assert [(piece.text, piece.is_code) for piece in pieces(text)] == expected
