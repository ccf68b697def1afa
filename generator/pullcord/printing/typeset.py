"""From data to a PDF. The typesetting engine comes as a package and needs no browser.

Templates lie in `site_templates/paper`. They get their data as JSON, so no text of a procedure is
ever read as markup. The PDF is tagged by PDF/UA-1 (ISO 14289-1), its fonts are inside it.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from datetime import UTC, date, datetime
from pathlib import Path
from typing import Any

import typst
from font_source_sans_pro import font_directory

from pullcord.errors import PullcordError


def typeset(folder: Path, template: str, data: Mapping[str, Any], build_date: str) -> bytes:
    """Return `folder/TEMPLATE.typ` filled with data, as a PDF dated by the day of the build.

    Raises PullcordError when the template, which a project may have changed, cannot be used.
    """
    try:
        pdf = typst.compile(
            folder / f"{template}.typ",
            root=folder,
            font_paths=[Path(font_directory)],
            ignore_system_fonts=True,
            format="pdf",
            sys_inputs={"data": json.dumps(data, ensure_ascii=False)},
            pdf_standards=["ua-1"],
            timestamp=_stamp(build_date),
        )
    except typst.TypstError as error:
        raise PullcordError(f"{folder / template}.typ cannot be set: {error.message}") from error
    if not isinstance(pdf, bytes):
        raise PullcordError(f"{folder / template}.typ gave no PDF")
    return pdf


def _stamp(build_date: str) -> datetime:
    """Return midnight of the build's day, so that the same build gives the same bytes."""
    return datetime.combine(date.fromisoformat(build_date), datetime.min.time(), UTC)
