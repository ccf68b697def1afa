"""Where things come from: folders of procedures, the day of the build, the file behind a page."""

from __future__ import annotations

import os
from collections.abc import Callable, Mapping, Sequence
from datetime import UTC, datetime
from functools import cache
from pathlib import Path
from typing import Protocol

import pullcord
from pullcord.errors import SiteError
from pullcord.pages.address import HOME
from pullcord.pages.settings import Settings
from pullcord.source.places import shipped_procedures
from pullcord.source.revision import read_revision

REVISION_DIGITS = 12
START = "start.md"
"""Where the page of symptoms goes when a project has a home page of its own."""


class Options(Protocol):
    """What a project may write in its settings."""

    @property
    def procedures(self) -> Sequence[str] | None:
        """Folders of procedures."""

    @property
    def machines(self) -> Sequence[str] | None:
        """Folders of machine sheets."""

    @property
    def jobs(self) -> Sequence[str] | None:
        """Folders of job logs."""

    @property
    def meter(self) -> Mapping[str, object] | None:
        """The shop's meter."""

    @property
    def replaces(self) -> Sequence[str]:
        """Shipped files that files of the project's own take the place of."""

    @property
    def library(self) -> bool:
        """Whether the shipped procedures are read."""

    @property
    def layout_engine(self) -> str:
        """What places the boxes of a flowchart."""

    @property
    def cache(self) -> str:
        """The folder finished charts are kept in."""

    @property
    def templates(self) -> Sequence[str]:
        """Folders that go before those shipped."""

    @property
    def currency(self) -> str:
        """What stands behind an amount of money."""


def folders_to_read(config_file: str, options: Options) -> tuple[Path, ...]:
    """Return the folders of procedures and machine sheets, each once: the library, then one's own.

    A project that names none has `procedures`, `machines` and `jobs` beside its `mkdocs.yml`, if
    they are there.
    """
    beside = Path(config_file).resolve().parent
    folders = [
        *([shipped_procedures()] if options.library else []),
        *_named_or(options.procedures, beside / "procedures"),
        *_named_or(options.machines, beside / "machines"),
        *_named_or(options.jobs, beside / "jobs"),
    ]
    return tuple(dict.fromkeys(folder.resolve() for folder in folders))


def read_settings(config_file: str, options: Options, docs_dir: str) -> Settings:
    """Return what the pages need to know of the project's options and of this build.

    Raises SiteError as `build_date` does.
    """
    revision = read_revision(Path(config_file).parent)
    has_own_home = any((Path(docs_dir) / name).is_file() for name in (HOME, "README.md"))
    return Settings(
        build_date=build_date(os.environ),
        revision=(revision or "")[:REVISION_DIGITS],
        template_dirs=tuple(Path(folder) for folder in options.templates),
        currency=options.currency,
        layout_engine="dot" if options.layout_engine == "dot" else "built-in",
        cache_folder=Path(options.cache),
        home_uri=START if has_own_home else HOME,
    )


def _named_or(named: Sequence[str] | None, default: Path) -> list[Path]:
    if named is not None:
        return [Path(folder) for folder in named]
    return [default] if default.is_dir() else []


def build_date(environment: Mapping[str, str]) -> str:
    """Return the day of the build in UTC, or the one SOURCE_DATE_EPOCH names, as YYYY-MM-DD.

    Raises SiteError when it names none: <https://reproducible-builds.org/specs/source-date-epoch/>
    """
    epoch = environment.get("SOURCE_DATE_EPOCH")
    try:
        moment = datetime.now(UTC) if epoch is None else datetime.fromtimestamp(int(epoch), UTC)
    except (ValueError, OverflowError, OSError):
        raise SiteError(
            f"SOURCE_DATE_EPOCH is `{epoch}`, which is no number of seconds since 1970: set it to "
            "one such as 1767225600, or take it out of the environment."
        ) from None
    return f"{moment:%Y-%m-%d}"


def edit_uris(docs_dir: str) -> Callable[[Path | None], str | None]:
    """Return what gives the way from the pages' folder to a source file that has one.

    That is a file in the nearest folder above the pages that holds `.git`, else in the one they lie
    in. What lies in an installed package is nobody's to edit.
    """
    docs, package = Path(docs_dir).resolve(), Path(pullcord.__file__).parent
    repository = next((each for each in docs.parents if (each / ".git").exists()), docs.parent)

    @cache
    def edit_uri(source: Path | None) -> str | None:
        file = source.resolve() if source else package
        if package in (file, *file.parents) or repository not in file.parents:
            return None
        return Path(os.path.relpath(file, docs)).as_posix()

    return edit_uri
