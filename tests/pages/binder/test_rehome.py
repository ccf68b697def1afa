"""A page keeps its inner links when it moves in with others, and leads to them instead of files."""

from __future__ import annotations

import pytest

from pullcord.pages.binder.rehome import home_of, rehome

HOMES = {
    "index.html": "index",
    "procedures/no-spark.html": "no-spark",
    "machines/damson.html": "machines-damson",
}
AT = "procedures/no-spark.html"

CASES = {
    "own id": ('<p id="step-plug">', '<p id="no-spark--step-plug">'),
    "own step": ('<a href="#step-plug">x</a>', '<a href="#no-spark--step-plug">x</a>'),
    "home": ('<a href="../index.html">x</a>', '<a href="#index">x</a>'),
    "step elsewhere": (
        '<a href="../machines/damson.html#plugs">x</a>',
        '<a href="#machines-damson--plugs">x</a>',
    ),
    "version for a machine": (
        '<a href="../machines/damson/no-spark.html#step-plug">x</a>',
        '<a href="#machines-damson">x</a>',
    ),
    "page not in it": (
        '<a class="w" href="../rules.html"><b>x</b></a>',
        '<span class="w"><b>x</b></span>',
    ),
    "page not in it, in a drawing": (
        '<svg><a href="../rules.html"><path/></a></svg><a href="../rules.html">x</a>',
        "<svg><g><path/></g></svg><span>x</span>",
    ),
    "label": ('<div aria-labelledby="a b">', '<div aria-labelledby="no-spark--a no-spark--b">'),
    "shared sign": ('<use href="#pc-sign-flame"/>', '<use href="#pc-sign-flame"/>'),
    "text stays text": (
        "<p>&lt;b&gt; &#34;id=&#34; &amp; Ω</p>",
        "<p>&lt;b&gt; &#34;id=&#34; &amp; Ω</p>",
    ),
    "hostile attribute": (
        '<p title="&#34; onclick=&#34;x" id="a">',
        '<p title="&#34; onclick=&#34;x" id="no-spark--a">',
    ),
    "hostile id": (
        '<p id="&#34; onclick=&#34;x">',
        '<p id="no-spark--&quot; no-spark--onclick=&quot;x">',
    ),
    "what looks like an attribute": ('<p title=" id=x > href=y">', '<p title=" id=x > href=y">'),
    "other quotes": (
        "<p id='a' class=b><a href=#a>x</a>",
        '<p id="no-spark--a" class=b><a href="#no-spark--a">x</a>',
    ),
    "capitals": ('<svg viewBox="0 0 1 1">', '<svg viewBox="0 0 1 1">'),
    "data block": (
        '<script type="application/json">{"a":"</b>"}</script>',
        '<script type="application/json">{"a":"</b>"}</script>',
    ),
    "no value": ("<p hidden>", "<p hidden>"),
    "for the index alone": ('<p data-search-exclude class="a">', '<p class="a">'),
    "for the index alone, with a value": (
        '<p data-search-exclude="" id=a>',
        '<p id="no-spark--a">',
    ),
    "what only looks so": (
        '<p title="a data-search-exclude b" data-search-excluded>',
        '<p title="a data-search-exclude b" data-search-excluded>',
    ),
}


@pytest.mark.parametrize(("before", "after"), CASES.values(), ids=CASES)
def test_rehome(before: str, after: str) -> None:
    """Ids and links are moved; everything else stays as it was."""
    assert rehome(before, AT, HOMES) == after


def test_a_machines_sheet_leads_to_the_procedure_itself() -> None:
    """Where the version for a machine is left out, its sheet does not lead back to itself."""
    link = '<a href="damson/no-spark.html">x</a>'
    assert rehome(link, "machines/damson.html", HOMES) == '<a href="#no-spark">x</a>'


def test_a_job_leads_to_the_step_of_the_procedure() -> None:
    """The next check is found in the binder too, on the general page."""
    link = '<a href="../machines/damson/no-spark.html#step-plug">x</a>'
    moved = rehome(link, "jobs/spring.html", HOMES | {"jobs/spring.html": "jobs-spring"})
    assert moved == '<a href="#no-spark--step-plug">x</a>'


def test_a_picture_stays_outside() -> None:
    """One file holds no pictures of others: what stands below the picture remains."""
    html = '<figure><img src="photos/spring/a.jpg" alt="x"></figure><p>Picture: a.jpg</p>'
    assert rehome(html, AT, HOMES) == "<figure></figure><p>Picture: a.jpg</p>"


@pytest.mark.parametrize(("uri", "home"), HOMES.items())
def test_homes_are_told_apart(uri: str, home: str) -> None:
    """A page's home is made from its whole address, so no two pages share one."""
    assert home_of(uri) == home
