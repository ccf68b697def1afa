"""What stands on every page and every sheet: how old it is, and what goes before it."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from pullcord.pages.kit import Kit


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
    """Return the foot of a page, with the revisions of the files it prints."""
    given = {
        "imprint_built": kit.settings.build_date,
        "imprint_revision": kit.settings.revision,
    }
    given |= {"imprint_procedure": procedure} if procedure else {}
    given |= {"imprint_sheet": sheet} if sheet else {}
    given |= {"imprint_job": job} if job else {}
    lines = tuple(
        kit.words[key].format(value=value or kit.words["not_recorded"])
        for key, value in given.items()
    )
    foot = css_string(f"{' · '.join(lines)}\n{kit.words['sheet_deferral']}")
    return Imprint(lines, kit.standing.deferral, foot)


def css_string(text: str) -> Markup:
    """Return a CSS string literal in which nothing can end the string or the style element."""
    kept = "".join(c if c.isalnum() and c.isascii() else f"\\{ord(c):x} " for c in text)
    return Markup(f'"{kept}"')  # noqa: S704 (letters, digits and escapes only)
