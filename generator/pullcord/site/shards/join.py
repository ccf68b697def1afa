"""The site of all its shards: what speaks of the whole library is made, the rest is copied."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from functools import partial
from pathlib import Path
from typing import Any

from pullcord.errors import SiteError
from pullcord.pages.imprint import dated
from pullcord.pages.outline import own_outline
from pullcord.pages.site import other_pages
from pullcord.site.bound import binder_file
from pullcord.site.made import Found, Made, in_order, made_of, write_index
from pullcord.site.origin import Options
from pullcord.site.prints import job_papers
from pullcord.site.read import read_site
from pullcord.site.shards.manifest import (
    FOUND_FILE,
    PAGES_FILE,
    Manifest,
    read_found,
    read_manifest,
    read_pages,
    read_part,
)
from pullcord.site.shards.number import Shard
from pullcord.site.shards.stamp import Stamp, differences, read_stamp

Shards = Mapping[Path, Manifest]
"""What each folder says of itself."""


def make_joined(folders: Sequence[Path], config: Any, options: Options) -> Made:
    """Read and check the whole library, and make what no shard holds; `config` is MkDocs's.

    Raises SiteError when the folders are not all shards of one site that is made from the same as
    this build, and PullcordError as `make_site`.
    """
    shards = read_shards(folders)
    site = read_site(config, options)
    kit, project = site.kit, site.project
    first = next(iter(shards))
    _check_same("this run", read_stamp(config, options, kit), str(first), shards[first].stamp)
    rest = [dated(kit, page) for page in other_pages(kit, project)]
    outline = tuple(own_outline(kit, project))
    whole = {page.src_uri: page for folder in shards for page in read_pages(folder, shards[folder])}
    bound = in_order([*rest, *(whole.get(page.src_uri, page) for page in outline)])
    later = {**binder_file(kit, site.title, bound, site.assets), **job_papers(kit, project)}
    return replace(
        made_of(site, [*rest, *outline], later),
        elsewhere=frozenset(page.src_uri for page in outline),
        finish=partial(_write_joined, shards, kit.settings.cache_folder),
    ).whole()


def read_shards(folders: Sequence[Path]) -> Shards:
    """Return what each shard says of itself, in their order.

    Raises SiteError unless they are all the shards of one site, each once.
    """
    read = ((read_manifest(folder), folder) for folder in folders)
    ordered = sorted(read, key=lambda each: each[0].shard)
    shards = {folder: manifest for manifest, folder in ordered}
    _check_complete(shards)
    (first, manifest), *others = shards.items()
    for folder, other in others:
        _check_same(str(first), manifest.stamp, str(folder), other.stamp)
    return shards


def _check_complete(shards: Shards) -> None:
    by_shard: dict[Shard, Path] = {}
    for folder, manifest in shards.items():
        other = by_shard.setdefault(manifest.shard, folder)
        if other != folder:
            raise SiteError(f"{other} and {folder} are both shard {manifest.shard}: name one only")
    counts = sorted({shard.count for shard in by_shard})
    if len(counts) != 1:
        told = ", ".join(f"{folder} is shard {shard}" for shard, folder in by_shard.items())
        raise SiteError(f"these are not shards of the same build: {told}")
    missing = [Shard(number, counts[0]) for number in range(1, counts[0] + 1)]
    missing = [shard for shard in missing if shard not in by_shard]
    if missing:
        raise SiteError(
            f"of {counts[0]} shards these are missing: {', '.join(map(str, missing))}. Build them "
            f"with `pullcord build --shard {missing[0]}` and the like, and name their folders too"
        )


def _check_same(one_name: str, one: Stamp, other_name: str, other: Stamp) -> None:
    found = tuple(differences(one, other))
    if found:
        lines = "\n".join(f"  {line}" for line in found)
        raise SiteError(f"{one_name} and {other_name} do not go together. They have\n{lines}")


def _write_joined(shards: Shards, cache: Path | None, folder: Path, found: Found) -> None:
    """Copy what the shards hold into the new site, and write the index of all."""
    ready: dict[str, Any] = {}
    for shard, manifest in shards.items():
        ready |= read_found(shard, manifest)
        for uri in _site_files(manifest):
            target = folder / uri
            target.parent.mkdir(parents=True, exist_ok=True)
            target.write_bytes(read_part(shard, manifest, uri))
    # The order is that of the pages, not of the shards: what stands earlier is found first.
    write_index(folder, {uri: ready.get(uri, entries) for uri, entries in found.items()}, cache)


def _site_files(manifest: Manifest) -> Iterator[str]:
    yield from (uri for uri in manifest.files if uri not in (PAGES_FILE, FOUND_FILE))
