"""The styles, scripts and pictures that go into the site as they are."""

from __future__ import annotations

from collections.abc import Container, Iterable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path, PurePosixPath
from typing import Any

ADDRESS = "assets/pullcord"
"""Where they lie in the site."""
_JOINTS = {".css": b"\n", ".js": b"\n;\n"}
"""What goes between two files of a kind when they become one."""


@dataclass(frozen=True)
class Asset:
    """One file of the site that is no page."""

    uri: str
    """Its address in the site."""
    content: bytes


def read_assets(template_folders: Sequence[Path]) -> tuple[Asset, ...]:
    """Return the files of the folders' `assets`, by address; the first folder that has one wins."""
    paths: dict[str, Path] = {}
    for folder in reversed(template_folders):
        root = folder / "assets"
        found = (path for path in root.rglob("*") if path.is_file())
        paths |= {path.relative_to(root).as_posix(): path for path in found}
    return tuple(
        Asset(f"{ADDRESS}/{name}", paths[name].read_bytes())
        for name in sorted(paths)
        if not any(part.startswith(".") for part in name.split("/"))
    )


def joined(assets: Iterable[Asset], shipped: Container[str]) -> Iterator[Asset]:
    """Yield the assets with our styles in one file and our scripts in another.

    A slow tablet waits for each file anew. `shipped` holds the addresses of ours; what a project
    adds at addresses of its own stays in files of its own.
    """
    parts: dict[str, list[bytes]] = {kind: [] for kind in _JOINTS}
    others = []
    for asset in assets:
        kind = PurePosixPath(asset.uri).suffix
        if kind in parts and (asset.uri in shipped or asset.uri == f"{ADDRESS}/pullcord{kind}"):
            parts[kind].append(asset.content)
        else:
            others.append(asset)
    for kind, contents in parts.items():
        yield Asset(f"{ADDRESS}/pullcord{kind}", _JOINTS[kind].join(contents))
    yield from others


def list_in(config: Any, assets: Iterable[Asset]) -> None:
    """Have every page load our styles and scripts before those of the project.

    `config` is MkDocs's.
    """
    uris = [asset.uri for asset in assets]
    config.extra_css[:0] = [uri for uri in uris if uri.endswith(".css")]
    config.extra_javascript[:0] = [uri for uri in uris if uri.endswith(".js")]
