"""The picture of where the time goes."""

from __future__ import annotations

from xml.etree import ElementTree

from pullcord.drawing.curve import CurveWords, render_curve

WORDS = CurveWords("Time & <trouble>", "Minutes", "Settled, %", "as written", "quickest <order>")
WRITTEN = ((5.0, 0.3), (12.0, 0.8), (45.0, 1.0))
BEST = ((4.0, 0.6), (30.0, 1.0))
SVG = "{http://www.w3.org/2000/svg}"


def lines(svg: str) -> list[ElementTree.Element]:
    """Return the curves: the paths cut to the frame."""
    root = ElementTree.fromstring(svg)  # noqa: S314 - our own picture
    return [path for path in root.iter(f"{SVG}path") if "-zclip1" in path.get("clip-path", "")]


def test_the_curves_differ_without_colour() -> None:
    """Both are black; one is thick and whole, the other thin and dashed."""
    written, best = lines(render_curve(WRITTEN, BEST, WORDS, "a"))
    assert written.get("stroke") == best.get("stroke") == "black"
    assert float(written.get("stroke-width", 0)) > float(best.get("stroke-width", 0))
    assert written.get("stroke-dasharray") is None
    assert best.get("stroke-dasharray")


def test_words_are_text_and_never_markup() -> None:
    """They stand in the picture as they were given, and name it for who cannot see it."""
    root = ElementTree.fromstring(render_curve(WRITTEN, BEST, WORDS, "a"))  # noqa: S314 - ours
    words = [each.text for each in root.iter(f"{SVG}text")]
    assert {"Minutes", "Settled, %", "as written", "quickest <order>"} <= set(words)
    assert root.get("aria-label") == root.findtext(f"{SVG}title") == "Time & <trouble>"


def test_without_a_best_order_one_curve_stands() -> None:
    """Nothing is drawn for what was not found."""
    assert len(lines(render_curve(WRITTEN, (), WORDS, "a"))) == 1
    assert len(lines(render_curve((), (), WORDS, "a"))) == 1


def test_nothing_is_fetched_and_the_same_input_gives_the_same_bytes() -> None:
    """No address but the SVG name space, no script, no style; ids begin as asked."""
    svg = render_curve(WRITTEN, BEST, WORDS, "stop")
    assert svg == render_curve(WRITTEN, BEST, WORDS, "stop")
    assert svg.count("http") == 1
    assert "<script" not in svg
    assert 'id="stop-zclip1"' in svg
    assert "url(#zclip" not in svg
