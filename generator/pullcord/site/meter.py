"""The shop's meter out of a project's settings file."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import Any

from pullcord.errors import FindingsError
from pullcord.model.meter import MeterSheet
from pullcord.rules.document import Document, locate
from pullcord.rules.shop_meter import parse_meter_sheet
from pullcord.source.settings import options_place

OPTION = "meter"
_MOST_LEVELS = 3
"""A meter has ranges, and a range has figures."""


def read_meter(option: object, config_file: Path | None) -> MeterSheet | None:
    """Return the meter of the option `meter`, or None for the cheap one that is the default.

    `option` is what the settings hold, numbers and all. Raises FindingsError with everything that
    is wrong with it, at its line of the settings file.
    """
    if option is None or config_file is None:
        return None
    sheet = parse_meter_sheet(_as_text(option))
    if isinstance(sheet, MeterSheet):
        return sheet
    raw = config_file.read_bytes()
    place = (*options_place(raw), OPTION)
    flaws = (replace(flaw, at=(*place, *flaw.at)) for flaw in sheet)
    raise FindingsError(locate(Document(_shown(config_file), raw, None, (), ()), flaws))


def _as_text(value: Any, levels: int = _MOST_LEVELS) -> Any:
    """Return data as the model reads it: every scalar is the text of a file again.

    What is nested deeper is left empty: MkDocs reads aliases, and so data without an end.
    """
    if isinstance(value, dict):
        return {str(key): _as_text(part, levels - 1) for key, part in value.items() if levels}
    if isinstance(value, list):
        return [_as_text(part, levels - 1) for part in value if levels]
    return "" if value is None else str(value)


def _shown(path: Path) -> str:
    whole, here = path.resolve(), Path.cwd()
    return (whole.relative_to(here) if whole.is_relative_to(here) else whole).as_posix()
