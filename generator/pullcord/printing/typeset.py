"""From data to a PDF. The typesetting engine comes as a package and needs no browser.

Templates lie in `paper` of the template folders. They get their data as JSON, so no text of a
procedure is ever read as markup. The PDF is tagged by PDF/UA-1 (ISO 14289-1), its fonts are inside.
"""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from datetime import UTC, date, datetime
from functools import lru_cache
from pathlib import Path
from typing import Any

import typst
from font_source_sans_pro import font_directory

from pullcord.drawing.cache import keep
from pullcord.errors import PullcordError
from pullcord.printing.clean import each_text, in_our_font, printable
from pullcord.source.files import state_of

_NO_FONT = "could not be displayed"


def typeset(
    folders: Sequence[Path], data: Mapping[str, Any], build_date: str, cache: Path | None = None
) -> bytes:
    """Return `paper/sheets.typ` filled with data, as a PDF dated by the day of the build.

    A character that no font at hand has is printed as U+FFFD. Raises PullcordError when a
    template, which a project may have changed, cannot be used.
    """
    files = _read_files(folders)
    text = json.dumps(each_text(data, printable), ensure_ascii=False)
    key = ["paper", build_date, text]
    key += [part for name in files for part in (name, files[name].decode("utf-8", "replace"))]
    return keep(cache, key, lambda: _compile(files, folders, text, build_date))


def _compile(files: dict[str, bytes], folders: Sequence[Path], text: str, build_date: str) -> bytes:
    try:
        try:
            return _run(files, folders, text, build_date)
        except typst.TypstError as error:
            if _NO_FONT not in error.message:
                raise
            plain = each_text(json.loads(text), in_our_font)
            return _run(files, folders, json.dumps(plain, ensure_ascii=False), build_date)
    except typst.TypstError as error:
        raise PullcordError(f"the templates in paper/ cannot be set: {error.message}") from error


def _run(files: dict[str, bytes], folders: Sequence[Path], text: str, build_date: str) -> bytes:
    places = _font_folders(folders)
    pdf = typst.compile(  # type: ignore[call-overload] # Its types forget a dict of files.
        files,
        root=folders[0],  # whatever else a template may read lies beside it
        font_paths=_fonts(places, tuple(map(state_of, places))),
        format="pdf",
        sys_inputs={"data": text},
        pdf_standards=["ua-1"],
        timestamp=_stamp(build_date),
    )
    if not isinstance(pdf, bytes):
        raise PullcordError("the typesetting engine gave no PDF")
    return pdf


def _font_folders(folders: Sequence[Path]) -> tuple[Path, ...]:
    return (Path(font_directory), *(folder / "paper" for folder in folders))


@lru_cache(maxsize=4)
def _fonts(folders: tuple[Path, ...], state: object) -> typst.Fonts:
    """Return the fonts of one state of the folders; to read them takes as long as a short sheet."""
    return typst.Fonts(include_system_fonts=False, font_paths=[*folders])


def _read_files(folders: Sequence[Path]) -> dict[str, bytes]:
    """Return the templates and the signs by name; those of the first folders win."""
    files: dict[str, bytes] = {}
    for folder in reversed(folders):
        files |= {path.name: path.read_bytes() for path in sorted(folder.glob("paper/*.typ"))}
        signs = sorted(folder.glob("signs/*.svg"))
        files |= {f"signs/{path.name}": path.read_bytes() for path in signs}
    files["main"] = files["sheets.typ"]
    return files


def _stamp(build_date: str) -> datetime:
    """Return midnight of the build's day, so that the same build gives the same bytes."""
    return datetime.combine(date.fromisoformat(build_date), datetime.min.time(), UTC)
