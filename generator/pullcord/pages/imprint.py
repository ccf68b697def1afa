"""What stands on every page and every sheet: how old it is, and what goes before it.

Of a page only the foot changes from one day to the next, and with every revision of the sources. So
pages are made, and kept, with marks for both, which get their values before anybody else sees them.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import lru_cache

from markupsafe import Markup, escape

from pullcord.errors import PullcordError
from pullcord.pages.kit import Kit
from pullcord.pages.page import Page

Dating = Callable[[str], str]
"""Puts the day of the build and the revision of the sources into HTML."""
_DAY, _REVISION = "\ufdd0day\ufdd1", "\ufdd0revision\ufdd1"
"""Around the words stand two of the characters that no text may hold (Unicode, section 23.7)."""
_LEFT = ("\ufdd0", "\\fdd0", "\\ufdd0", "%EF%B7%90")
"""How a mark may begin that a template has cut, or quoted for JSON or for a link."""


@dataclass(frozen=True)
class Imprint:
    """The foot of a page."""

    lines: tuple[str, ...]
    """Build date, revision of the sources, revision of the procedure."""
    deferral: tuple[str, ...]
    """What goes before these pages."""
    sheet_foot: Markup
    """All of it short, as a CSS string: it is printed in the foot of every sheet."""


def imprint(kit: Kit, procedure: str = "", sheet: str = "", job: str = "") -> Imprint:
    """Return the foot of a page with the revisions of the files it prints, to be dated later."""
    lines = _lines(kit, _DAY, _REVISION, procedure, sheet, job)
    foot = css_string(f"{' · '.join(lines)}\n{kit.words['sheet_deferral']}")
    return Imprint(lines, kit.standing.deferral, foot)


def printed_lines(kit: Kit, procedure: str = "", sheet: str = "", job: str = "") -> tuple[str, ...]:
    """Return the lines of the same for paper, which is made anew for every day."""
    return _lines(kit, kit.settings.build_date, kit.settings.revision, procedure, sheet, job)


def dated(kit: Kit, page: Page) -> Page:
    """Return a page with the day and the revision in it.

    Raises PullcordError when a project's own template or text has changed a mark.
    """
    return replace(page, html=dating(kit)(page.html))


def dating(kit: Kit) -> Dating:
    """Return what dates HTML that has the imprint in it. It raises as `dated`."""
    unknown = kit.words["not_recorded"]
    told = {_DAY: kit.settings.build_date or unknown, _REVISION: kit.settings.revision or unknown}
    marks = {mark: str(escape(value)) for mark, value in told.items()}
    marks |= {_inner(mark): _inner(value) for mark, value in told.items()}
    # Of a string that is known for HTML, `replace` would escape what it puts in once more.
    return lambda html: _dated(str(html), tuple(marks.items()))


@lru_cache(maxsize=2048)  # A preview dates the same pages again and again.
def _dated(html: str, marks: tuple[tuple[str, str], ...]) -> str:
    for mark, value in marks:
        html = html.replace(mark, value)
    if any(begin in html for begin in _LEFT):
        raise PullcordError(
            "a template or a text of this project changes the day or the revision that it prints: "
            "print `view.imprint.lines`, and `{value}` in a text, as they are"
        )
    return html


def css_string(text: str) -> Markup:
    """Return a CSS string literal in which nothing can end the string or the style element."""
    return Markup(f'"{_inner(text)}"')  # noqa: S704 (letters, digits and escapes only)


def _inner(text: str) -> str:
    return "".join(c if c.isalnum() and c.isascii() else f"\\{ord(c):x} " for c in text)


def _lines(
    kit: Kit, day: str, revision: str, procedure: str, sheet: str, job: str
) -> tuple[str, ...]:
    given = {"imprint_built": day, "imprint_revision": revision}
    given |= {"imprint_procedure": procedure} if procedure else {}
    given |= {"imprint_sheet": sheet} if sheet else {}
    given |= {"imprint_job": job} if job else {}
    unknown = kit.words["not_recorded"]
    return tuple(kit.words[key].format(value=value or unknown) for key, value in given.items())
