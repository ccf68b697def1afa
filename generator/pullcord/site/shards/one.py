"""One shard of a site: the pages and papers of its own procedures, and nothing else."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import partial
from pathlib import Path
from typing import Any

from pullcord.pages.outline import other_outline, own_outline
from pullcord.pages.page import Page
from pullcord.site.bound import is_machines_version
from pullcord.site.helpers import cores_at_hand, make_ahead
from pullcord.site.made import Found, Made, made_of
from pullcord.site.origin import Options
from pullcord.site.read import read_site
from pullcord.site.shards.manifest import write_manifest
from pullcord.site.shards.number import Shard
from pullcord.site.shards.stamp import Stamp, read_stamp
from pullcord.site.share import share_of


def make_shard(shard: Shard, config: Any, options: Options) -> Made:
    """Read and check the whole library, and make one shard of it; `config` is MkDocs's.

    The other pages are known, so that links and the navigation come out alike, but are not made.
    Raises PullcordError as `make_site`.
    """
    site = read_site(config, options)
    kit, project = site.kit, site.project
    names = tuple(name for name in project.files if shard.holds(name))
    make_ahead(site, names, cores_at_hand())
    share = share_of(site, frozenset(names))
    own = {page.src_uri: page for page in share.pages}
    outline = (*other_outline(kit, project), *own_outline(kit, project))
    uris = (*map(_html_uri, own), *share.later)
    stamp = read_stamp(config, options, kit)
    made = made_of(site, [own.get(page.src_uri, page) for page in outline], share.later)
    return replace(
        made,
        elsewhere=frozenset(made.pages.keys() - own.keys()),
        finish=partial(_write_shard, shard, stamp, uris, tuple(_for_binder(share.pages))),
    ).whole()


def _for_binder(pages: Sequence[Page]) -> Iterator[Page]:
    """Yield the pages that the binder holds, without the place of their file on this computer."""
    for page in pages:
        if page.src_uri.startswith("procedures/") and not is_machines_version(page):
            yield replace(page, source=None, html=str(page.html))


def _write_shard(
    shard: Shard, stamp: Stamp, uris: Sequence[str], pages: Sequence[Page], folder: Path,
    found: Found,
) -> None:  # fmt: skip
    _keep_only(folder, frozenset(uris))
    own = {page.src_uri: found[page.src_uri] for page in pages}
    write_manifest(folder, shard, stamp, uris, pages, own)


def _keep_only(folder: Path, uris: frozenset[str]) -> None:
    """Take away what every build of the site writes: the join writes it once."""
    for path in sorted(folder.rglob("*"), reverse=True):  # What is in a folder, then the folder.
        if path.is_dir():
            if not any(path.iterdir()):
                path.rmdir()
        elif path.relative_to(folder).as_posix() not in uris:
            path.unlink()


def _html_uri(src_uri: str) -> str:
    return f"{src_uri.removesuffix('.md')}.html"
