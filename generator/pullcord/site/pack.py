"""One zip file of a finished site, to be carried to a tablet on a stick."""

from __future__ import annotations

import re
import zipfile
from collections.abc import Iterable, Iterator
from pathlib import Path

from pullcord.errors import SiteError

_EARLIEST = (1980, 1, 1, 0, 0, 0)
"""The first date a zip file can hold: every file gets it, so that the same site packs the same."""
_MODE = 0o644 << 16
_FORBIDDEN = re.compile(r'[<>:"\\|?*\x00-\x1f]')
_RESERVED = re.compile(r"(con|prn|aux|nul|com\d|lpt\d)(\..*)?", re.IGNORECASE)
_LONGEST = 240
"""Characters in a path: a FAT disk ends at 255, and the folder above needs some of them."""


def pack_site(site_dir: Path, zip_path: Path) -> Path:
    """Write the folder as a zip file, all in one folder of the site's name, and return its path.

    The same files give the same bytes. Raises SiteError when the folder is no built site, a name
    would not survive a FAT stick, or the file cannot be written; then nothing is left behind.
    """
    if not (site_dir / "index.html").is_file():
        raise SiteError(f"{site_dir} is not a built site: run `pullcord build` first")
    names = sorted(p.relative_to(site_dir).as_posix() for p in site_dir.rglob("*") if p.is_file())
    flaws = list(unsafe_names(names))
    if flaws:
        raise SiteError("these names do not survive a stick:\n" + "\n".join(flaws))
    part = zip_path.with_name(f".{zip_path.name}.part")
    try:
        _write(site_dir, names, part)
        part.replace(zip_path)
    except OSError as error:
        raise SiteError(f"{zip_path} could not be written: {error.strerror}") from error
    finally:
        part.unlink(missing_ok=True)
    return zip_path


def unsafe_names(names: Iterable[str]) -> Iterator[str]:
    """Yield, in words, every name that FAT, exFAT or a disk blind to capitals cannot keep apart."""
    seen: dict[str, str] = {}
    for name in names:
        parts = name.split("/")
        if _FORBIDDEN.search(name):
            yield f"{name}: holds a character that FAT does not know"
        if any(part.endswith((".", " ")) for part in parts):
            yield f"{name}: ends in a dot or a space"
        if any(_RESERVED.fullmatch(part) for part in parts):
            yield f"{name}: is the name of a device"
        if len(name) > _LONGEST:
            yield f"{name}: is longer than {_LONGEST} characters"
        if seen.setdefault(name.casefold(), name) != name:
            yield f"{name}: differs from {seen[name.casefold()]} by capitals only"


def _write(site_dir: Path, names: Iterable[str], part: Path) -> None:
    with zipfile.ZipFile(part, "w", zipfile.ZIP_DEFLATED, compresslevel=9) as pack:
        for name in names:
            entry = zipfile.ZipInfo(f"{site_dir.resolve().name}/{name}", _EARLIEST)
            entry.compress_type = zipfile.ZIP_DEFLATED
            entry.external_attr = _MODE
            entry.create_system = 3
            pack.writestr(entry, (site_dir / name).read_bytes())
