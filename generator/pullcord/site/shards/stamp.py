"""What a site is made from, as a few digests: shards that go together have the same."""

from __future__ import annotations

import os
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from hashlib import sha256
from importlib.metadata import version
from pathlib import Path
from typing import Any

from pullcord.drawing.cache import PACKAGES
from pullcord.pages.kit import Kit
from pullcord.site.origin import Options, folders_to_read

_SITE_PACKAGES = ("mkdocs", "mkdocs-material", "markdown", "pymdown-extensions")
TEXTS = "templates and texts"


@dataclass(frozen=True)
class Stamp:
    """Everything that has a say in the bytes of a site."""

    versions: Mapping[str, str]
    """Of Pullcord and of the packages it builds with."""
    day: str
    """The day of the build, as the foot of every page says it."""
    revision: str
    """Of the repository, likewise; empty where none is known."""
    sources: Mapping[str, str]
    """The SHA-256 of the settings and of each folder that is read, by name."""


def read_stamp(config: Any, options: Options, kit: Kit) -> Stamp:
    """Return the stamp of a build; `config` is MkDocs's."""
    settings = Path(config.config_file_path)
    folders = [*folders_to_read(str(settings), options), Path(config.docs_dir)]
    folders += [Path(config.theme.custom_dir)] if config.theme.custom_dir else []
    sources = {_name(folder, settings): _digest(_files(folder), folder) for folder in folders}
    sources[settings.name] = _digest([settings], settings.parent)
    return Stamp(
        versions={name: version(name) for name in sorted({*PACKAGES, *_SITE_PACKAGES})},
        day=kit.settings.build_date,
        revision=kit.settings.revision,
        sources={**sources, TEXTS: kit.digest},
    )


def differences(one: Stamp, other: Stamp) -> Iterator[str]:
    """Yield, in words, what keeps two builds from going together, and how to mend it."""
    for name in sorted({*one.versions, *other.versions}):
        versions = (one.versions.get(name, "unknown"), other.versions.get(name, "unknown"))
        if versions[0] != versions[1]:
            yield f"{name} {versions[0]} and {versions[1]}: install the same one for every run"
    if one.day != other.day:
        yield (
            f"the days {one.day} and {other.day}, which every page shows: set SOURCE_DATE_EPOCH "
            "to the same number for every run"
        )
    if one.revision != other.revision:
        yield (
            f"the revisions {one.revision or 'none'} and {other.revision or 'none'}: check out the "
            "same one for every run"
        )
    for name in sorted({*one.sources, *other.sources}):
        if one.sources.get(name) != other.sources.get(name):
            yield f"files that differ in `{name}`: build every shard from the same files"


def _name(folder: Path, settings: Path) -> str:
    base = settings.resolve().parent
    is_below = folder.resolve().is_relative_to(base)
    return folder.resolve().relative_to(base).as_posix() if is_below else f"…/{folder.name}"


def _files(folder: Path) -> Iterator[Path]:
    for parent, folders, names in os.walk(folder):
        folders[:] = [name for name in folders if not name.startswith(".")]
        yield from (Path(parent, name) for name in names if not name.startswith("."))


def _digest(paths: Iterable[Path], folder: Path) -> str:
    whole = sha256()
    for path in sorted(path for path in paths if path.is_file()):
        whole.update(path.relative_to(folder).as_posix().encode("utf-8", "replace") + b"\0")
        whole.update(sha256(path.read_bytes()).digest())
    return whole.hexdigest()
