"""A file put into canonical form, or told what keeps it from that."""

from __future__ import annotations

from functools import partial
from pathlib import Path

from pullcord.errors import FindingsError
from pullcord.model.order import in_order
from pullcord.rules.document import Document, locate, model_of
from pullcord.source.files import read_file
from pullcord.source.flaw import TextFlaw
from pullcord.source.replace import replace_file
from pullcord.source.tidy import tidy
from pullcord.source.tree import read_tree


def is_tidy(path: Path, folder: Path) -> bool:
    """Whether a file of a folder is in canonical form.

    Raises FindingsError when its text has flaws, TidyError when it is not understood.
    """
    raw = read_file(path, folder)
    if isinstance(raw, TextFlaw):
        raise FindingsError(locate(Document(path.as_posix(), b"", None, (raw,), ()), ()))
    return _tidy(path, raw) == raw


def tidy_file(path: Path, folder: Path) -> None:
    """Put a file of a folder into canonical form. Raises what `is_tidy` does, and WriteError."""
    replace_file(path, folder, partial(_tidy, path))


def _tidy(path: Path, raw: bytes) -> bytes:
    flaws = read_tree(raw).flaws
    if flaws:
        raise FindingsError(locate(Document(path.as_posix(), raw, None, flaws, ()), ()))
    return tidy(raw, partial(in_order, model_of(raw)))
