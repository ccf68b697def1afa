"""Symbols around their text."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pullcord.drawing.chart import Kind, Node, Paragraph
from pullcord.drawing.shape import label_of, shape_of
from pullcord.drawing.style import SCREEN_STYLES, Style
from pullcord.safety.box import SignalWord
from tests.drawing.examples import is_inside, text_corners
from tests.drawing.random_procedures import WORDS

KINDS: tuple[Kind, ...] = ("start", "process", "decision", "cause", "hand-over", "done")


def node(kind: Kind, *texts: str, signal: SignalWord | None = None) -> Node:
    """Return a node with a title and details."""
    first, *rest = texts
    paragraphs = (Paragraph(first, "title"), *(Paragraph(text, "detail") for text in rest))
    return Node(id="n", kind=kind, name="n", paragraphs=paragraphs, signal=signal)


@pytest.mark.parametrize(
    ("kind", "symbol"),
    [
        ("start", "terminator"),
        ("process", "process"),
        ("decision", "decision"),
        ("cause", "terminator"),
        ("hand-over", "predefined"),
        ("done", "terminator"),
    ],
)
def test_symbols_are_those_of_the_standard(kind: Kind, symbol: str) -> None:
    """Terminator, process, decision and predefined process stand for what ISO 5807 gives them to.

    From memory of ISO 5807:1985, clauses 9 and 10.
    """
    assert shape_of(node(kind, "Look"), Style()).symbol == symbol


@settings(max_examples=100, deadline=None, print_blob=True)
@given(
    kind=st.sampled_from(KINDS),
    texts=st.lists(WORDS, min_size=1, max_size=3),
    signal=st.none() | st.sampled_from(SignalWord),
    style=st.sampled_from(SCREEN_STYLES),
)
def test_text_and_mark_stay_inside(
    kind: Kind, texts: list[str], signal: SignalWord | None, style: Style
) -> None:
    """Every corner of every line, and of the hazard symbol, is inside the outline."""
    shape = shape_of(node(kind, *texts, signal=signal), style)
    corners = [corner for line in shape.lines for corner in text_corners(line)]
    corners += shape.mark.triangle if shape.mark else ()
    assert all(is_inside(shape, corner) for corner in corners)


@settings(max_examples=50, deadline=None, print_blob=True)
@given(kind=st.sampled_from(KINDS), texts=st.lists(WORDS, min_size=1, max_size=3))
def test_no_word_is_lost(kind: Kind, texts: list[str]) -> None:
    """The lines hold the whole text, in order."""
    shape = shape_of(node(kind, *texts), Style())
    written = "".join(line.text for line in shape.lines)
    assert written.replace(" ", "") == "".join(texts).replace(" ", "")


@pytest.mark.parametrize("kind", KINDS)
def test_a_gloved_thumb_hits_it(kind: Kind) -> None:
    """Even a symbol with a single letter is 48 px high and as wide."""
    shape = shape_of(node(kind, "i"), Style())
    assert shape.height >= 48
    assert shape.width >= 48


@pytest.mark.parametrize(
    ("signal", "has_mark"),
    [
        (SignalWord.DANGER, True),
        (SignalWord.WARNING, True),
        (SignalWord.CAUTION, True),
        (SignalWord.NOTICE, False),
    ],
)
def test_signal_word_stands_first_in_words(signal: SignalWord, has_mark: bool) -> None:
    """The hazard is said in words; the alert symbol goes with those that can hurt somebody.

    ANSI Z535.6 keeps the safety alert symbol off NOTICE (from memory).
    """
    shape = shape_of(node("decision", "Smell", "Any?", signal=signal), Style())
    assert shape.lines[0].text == signal.name
    assert (shape.mark is not None) is has_mark


def test_the_mark_stands_clear_of_the_signal_word() -> None:
    """The symbol is left of the word and does not touch it."""
    shape = shape_of(node("process", "Drain", signal=SignalWord.DANGER), Style())
    assert shape.mark is not None
    word = shape.lines[0]
    assert max(x for x, _ in shape.mark.triangle) < word.x - word.width / 2


def test_a_question_is_in_plain_type_below_a_bold_title() -> None:
    """Weight and order tell title and question apart."""
    shape = shape_of(node("decision", "Look", "What is there?"), Style())
    assert [line.weight for line in shape.lines] == ["bold", "regular"]
    assert shape.lines[0].y < shape.lines[1].y


def test_label_holds_all_answers_within_its_width() -> None:
    """Answers that share an arrow are all written, and the box holds every line."""
    label = label_of(("weak, yellow or now and then", "none"), Style())
    assert label is not None
    assert " ".join(line.text for line in label.lines) == "weak, yellow or now and then / none"
    assert all(line.width <= label.width for line in label.lines)
    assert label_of((), Style()) is None


def test_a_diamond_is_no_larger_than_it_must_be() -> None:
    """For a short text, taking 4 px off a diamond's width leaves no way to write it in.

    Every way of breaking four words into rows is tried.
    """
    style = Style()
    shape = shape_of(node("decision", "Is it wet there"), style)
    words = ["Is", "it", "wet", "there"]
    ways = [
        [" ".join(group) for group in _cut(words, cuts)] for cuts in range(2 ** (len(words) - 1))
    ]
    smaller = shape.width - 4
    assert not any(len(rows) <= 2 and _fits(rows, smaller, style) for rows in ways)


def _cut(words: list[str], cuts: int) -> list[list[str]]:
    groups = [[words[0]]]
    for number, word in enumerate(words[1:]):
        groups.append([word]) if cuts >> number & 1 else groups[-1].append(word)
    return groups


def _fits(rows: list[str], width: float, style: Style) -> bool:
    from pullcord.drawing.measure import text_width_px

    half = width / 2
    half_high = half * style.slope
    for number, row in enumerate(rows):
        top = (number - len(rows) / 2) * style.line_px
        edge = max(abs(top), abs(top + style.line_px))
        needed = (text_width_px(row, style.type_px, "bold") + style.padding_px) / 2
        if needed / half + edge / half_high > 1:
            return False
    return True
