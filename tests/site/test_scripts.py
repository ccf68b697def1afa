"""Which scripts of a page run first."""

from __future__ import annotations

from pullcord.site.scripts import fetched_early, ours_first

BUNDLE = '<script src="../assets/javascripts/bundle.a5f9d56c.min.js"></script>'
WALK, SEARCH = (
    f'<script src="../assets/pullcord/{name}.js"></script>' for name in ("walk", "search")
)
OWN = '<script src="../own.js"></script>'


def test_the_theme_waits_for_ours() -> None:
    """A walk can be begun first; a project's own script still finds all it may use."""
    assert ours_first(f"<p>{BUNDLE}{SEARCH}{WALK}{OWN}") == f"<p>{SEARCH}{WALK}{BUNDLE}{OWN}"


def test_order_is_settled_once() -> None:
    """Asked again, nothing moves; nor where there is nothing to be moved."""
    settled = ours_first(f"{BUNDLE}{WALK}{OWN}")
    assert ours_first(settled) == settled
    assert ours_first(f"{BUNDLE}{OWN}") == f"{BUNDLE}{OWN}"
    assert ours_first(f"{WALK}{OWN}") == f"{WALK}{OWN}"


def test_ours_are_asked_for_in_the_head() -> None:
    """A script at the end of a long page is there when the page has been read that far."""
    asked = '<link rel="preload" as="script" href="../assets/pullcord/walk.js">'
    html = f"<head><title>Page</title></head><p>{WALK}{BUNDLE}"
    assert fetched_early(html) == html.replace("<head>", f"<head>{asked}")
    assert fetched_early(f"<head></head>{BUNDLE}{OWN}") == f"<head></head>{BUNDLE}{OWN}"
