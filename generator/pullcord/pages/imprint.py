"""What stands on every page and every sheet: how old it is, and what goes before it.

Of a page only the foot changes from one day to the next, and with every revision of the sources. So
pages are made, and kept, with marks for both, which get their values before anybody else sees them.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from functools import lru_cache

from markupsafe import Markup, escape

from pullcord.errors import PullcordError
from pullcord.pages.kit import Kit
from pullcord.pages.page import Page

Dating = Callable[[str], str]
"""Puts the day of the build and the revision of the sources into HTML."""
_CHARACTERS = 16
"""Of the digest of templates and texts, in every mark: no text holds them by chance."""
_IN_CSS = "css"
_CHANGED = (
    "a template or a text of this project changes the day or the revision that it prints: print "
    "`view.imprint.lines`, and `{value}` in a text, as they are"
)


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
    """Return the foot of a page with the revisions of the files it prints, to be dated later.

    Raises PullcordError when a project's own text cuts what is to be dated.
    """
    revisions = _revisions(procedure, sheet, job)
    lines, in_css = (
        _lines(kit, _mark(kit, f"{where}day"), _mark(kit, f"{where}revision"), revisions)
        for where in ("", _IN_CSS)
    )
    foot = css_string(f"{' · '.join(in_css)}\n{kit.words['sheet_deferral']}")
    return Imprint(lines, kit.standing.deferral, foot)


def printed_lines(kit: Kit, procedure: str = "", sheet: str = "", job: str = "") -> tuple[str, ...]:
    """Return the lines of the same for paper, which is made anew for every day."""
    revisions = _revisions(procedure, sheet, job)
    return _lines(kit, kit.settings.build_date, kit.settings.revision, revisions)


def dated(kit: Kit, page: Page) -> Page:
    """Return a page with the day and the revision in it.

    Raises PullcordError when a project's own template or text has changed a mark.
    """
    return replace(page, html=dating(kit)(page.html))


def dating(kit: Kit) -> Dating:
    """Return what dates HTML that has the imprint in it. It raises as `dated`."""
    unknown = kit.words["not_recorded"]
    told = {"day": kit.settings.build_date, "revision": kit.settings.revision}
    known = {name: value or unknown for name, value in told.items()}
    values = {_mark(kit, name): str(escape(value)) for name, value in known.items()}
    values |= {_mark(kit, _IN_CSS + name): _inner(value) for name, value in known.items()}
    # Of a string that is known for HTML, `replace` would escape what it puts in once more.
    return lambda html: _dated(str(html), tuple(values.items()), _mark(kit, ""))


@lru_cache(maxsize=2048)  # A preview dates the same pages again and again.
def _dated(html: str, values: tuple[tuple[str, str], ...], begin: str) -> str:
    for mark, value in values:
        html = html.replace(mark, value)
    if begin in html or begin.upper() in html:
        raise PullcordError(_CHANGED)
    return html


def _mark(kit: Kit, name: str) -> str:
    """Return what stands for a value: letters and figures, which are the same however quoted."""
    return f"pc{kit.digest[:_CHARACTERS]}{name}"


def css_string(text: str) -> Markup:
    """Return a CSS string literal in which nothing can end the string or the style element."""
    return Markup(f'"{_inner(text)}"')  # noqa: S704 (letters, digits and escapes only)


def _inner(text: str) -> str:
    return "".join(c if c.isalnum() and c.isascii() else f"\\{ord(c):x} " for c in text)


def _revisions(procedure: str, sheet: str, job: str) -> dict[str, str]:
    given = {"imprint_procedure": procedure, "imprint_sheet": sheet, "imprint_job": job}
    return {key: revision for key, revision in given.items() if revision}


def _lines(kit: Kit, day: str, revision: str, others: Mapping[str, str]) -> tuple[str, ...]:
    unknown = kit.words["not_recorded"]
    given = {"imprint_built": day, "imprint_revision": revision, **others}
    return tuple(_line(kit.words[key], value or unknown) for key, value in given.items())


def _line(pattern: str, value: str) -> str:
    line = pattern.format(value=value)
    if "{" in pattern and value not in line:
        raise PullcordError(_CHANGED)
    return line
