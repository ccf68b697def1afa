"""Where the shipped procedures and templates are, in an installed package and in a checkout."""

from __future__ import annotations

from pathlib import Path

_PACKAGE = Path(__file__).resolve().parents[1]
_CHECKOUT = _PACKAGE.parents[1]


def shipped_procedures() -> Path:
    """Return the folder of the procedures that come with Pullcord."""
    return _shipped("procedures")


def site_templates() -> Path:
    """Return the folder of the templates, texts, styles and scripts that come with Pullcord."""
    return _shipped("site_templates")


def _shipped(name: str) -> Path:
    inside = _PACKAGE / name
    return inside if inside.is_dir() else _CHECKOUT / name
