"""What lies in a shard's folder: files of the site as they are, and these beside them.

shard.json        which shard it is, what it was made from, every file with its SHA-256
shard-pages.json  the general page of each procedure, for the binder
shard-found.json  what can be found on its pages, for the search
index.html        tells whoever opens the folder what it is
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path, PurePosixPath
from typing import TypeVar

from pydantic import TypeAdapter, ValidationError

from pullcord.errors import SiteError
from pullcord.pages.page import PAGES, Page
from pullcord.pages.search.entry import Entry
from pullcord.site.shards.number import Shard
from pullcord.site.shards.stamp import Stamp

MANIFEST = "shard.json"
PAGES_FILE = "shard-pages.json"
FOUND_FILE = "shard-found.json"
NOTE = "index.html"
_NOTE = """\
<!doctype html>
<html lang="en"><meta charset="utf-8"><title>Shard {shard}</title>
<p>This folder holds shard {shard} of a site. <code>pullcord join</code> makes the site of all.</p>
</html>
"""

Found = Mapping[str, tuple[Entry, ...]]
"""What can be found, by the address of the page."""
Value = TypeVar("Value")
_FOUND = TypeAdapter(dict[str, tuple[Entry, ...]])


@dataclass(frozen=True)
class Manifest:
    """What a shard says of itself."""

    shard: Shard
    stamp: Stamp
    files: Mapping[str, str]
    """The SHA-256 of each file, by its address."""


_MANIFEST = TypeAdapter(Manifest)


def write_manifest(
    folder: Path, shard: Shard, stamp: Stamp, uris: Sequence[str], pages: Sequence[Page],
    found: Found,
) -> None:  # fmt: skip
    """Write all that stands beside the files of a shard. Raises OSError."""
    (folder / PAGES_FILE).write_bytes(PAGES.dump_json(tuple(pages)))
    (folder / FOUND_FILE).write_bytes(_FOUND.dump_json(dict(found)))
    (folder / NOTE).write_text(_NOTE.format(shard=shard), encoding="utf-8")
    names = sorted((*uris, PAGES_FILE, FOUND_FILE))
    files = {name: sha256((folder / name).read_bytes()).hexdigest() for name in names}
    (folder / MANIFEST).write_bytes(_MANIFEST.dump_json(Manifest(shard, stamp, files), indent=1))


def read_manifest(folder: Path) -> Manifest:
    """Return what a shard says of itself. Raises SiteError when the folder holds none."""
    try:
        manifest = _MANIFEST.validate_json((folder / MANIFEST).read_bytes())
    except (OSError, ValidationError):
        raise SiteError(
            f"{folder} is not a shard (it has no {MANIFEST} that can be read): name the folders "
            "that `pullcord build --shard` wrote, and copy each of them whole"
        ) from None
    for uri in manifest.files:
        if PurePosixPath(uri).is_absolute() or ".." in uri.split("/"):
            raise SiteError(f"{folder / MANIFEST} names a file outside of its folder: {uri}")
    return manifest


def read_part(folder: Path, manifest: Manifest, uri: str) -> bytes:
    """Return a file of a shard. Raises SiteError when it is not there as it was written."""
    try:
        content = (folder / uri).read_bytes()
    except OSError:
        content = None
    if content is None or sha256(content).hexdigest() != manifest.files.get(uri):
        raise SiteError(
            f"{folder / uri} is {'missing' if content is None else 'not as it was written'}: copy "
            f"the shard's folder again, or build it again with `--shard {manifest.shard}`"
        )
    return content


def read_pages(folder: Path, manifest: Manifest) -> tuple[Page, ...]:
    """Return the general pages of a shard. Raises SiteError as `read_part`."""
    return _read(folder, manifest, PAGES_FILE, PAGES)


def read_found(folder: Path, manifest: Manifest) -> Found:
    """Return what can be found on a shard's pages. Raises SiteError as `read_part`."""
    return _read(folder, manifest, FOUND_FILE, _FOUND)


def _read(folder: Path, manifest: Manifest, name: str, kind: TypeAdapter[Value]) -> Value:
    try:
        return kind.validate_json(read_part(folder, manifest, name))
    except ValidationError:
        raise SiteError(f"{folder / name} cannot be read: build the shard again") from None
