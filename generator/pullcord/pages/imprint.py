"""What stands on every page and every sheet: how old it is, and what goes before it."""

from __future__ import annotations

from dataclasses import dataclass

from pullcord.pages.kit import Kit


@dataclass(frozen=True)
class Imprint:
    """The foot of a page."""

    lines: tuple[str, ...]
    """Build date, revision of the sources, revision of the procedure."""
    deferral: tuple[str, ...]
    """What goes before these pages."""


def imprint(kit: Kit, digest: str | None = None) -> Imprint:
    """Return the foot of a page; `digest` is the revision of the procedure it prints, if any."""
    given = {
        "imprint_built": kit.settings.build_date,
        "imprint_revision": kit.settings.revision,
    }
    if digest is not None:
        given["imprint_procedure"] = digest
    lines = tuple(
        kit.words[key].format(value=value or kit.words["not_recorded"])
        for key, value in given.items()
    )
    return Imprint(lines, kit.standing.deferral)
