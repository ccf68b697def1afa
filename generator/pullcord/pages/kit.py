"""What every page is made with: the templates, the standing texts, the settings."""

from __future__ import annotations

from collections.abc import Mapping
from contextlib import suppress
from dataclasses import dataclass, replace
from functools import lru_cache
from hashlib import sha256
from pathlib import Path
from typing import Any

from jinja2 import ChoiceLoader, Environment, FileSystemLoader, StrictUndefined, TemplateError
from markupsafe import Markup

from pullcord.errors import PullcordError
from pullcord.model.base import Named
from pullcord.pages.settings import Settings
from pullcord.pages.texts import (
    Caution,
    GuideSection,
    Standing,
    Words,
    check_keys,
    read_texts,
)
from pullcord.source.files import files_below
from pullcord.source.places import site_templates


@dataclass(frozen=True)
class Kit:
    """Read once a build; pages are pure functions of it and of the project."""

    settings: Settings
    templates: Environment
    words: Mapping[str, str]
    standing: Standing
    cautions: Mapping[str, Caution]
    """What each hazard's box says, by hazard."""
    ready: Mapping[str, str]
    """What must be in place before the first step, by what a hazard asks for."""
    wear: Mapping[str, str]
    """Protective equipment, by what a hazard asks for."""
    walk_away: Mapping[str, str]
    """What to see to before one walks away, by what may be so at the machine."""
    signs: Mapping[str, str]
    """What each of our drawings says, by name."""
    guide: Mapping[str, GuideSection]
    walk: Mapping[str, str]
    """Words of the guided walk."""
    review: Mapping[str, str]
    """What the review says to a procedure's author."""
    digest: str
    """Tells one state of all of this from another: settings, templates, texts and signs.

    Day and revision are no part of it: pages are dated later."""
    job: Mapping[str, str]
    """Words of the job pages and of the job sheet."""


def template_folders(settings: Settings) -> tuple[Path, ...]:
    """Return where templates, texts and assets are looked for; the first that has a file wins."""
    return (*settings.template_dirs, site_templates())


def read_kit(settings: Settings) -> Kit:
    """Read templates and texts. Raises PullcordError when a text does not fit."""
    folders = template_folders(settings)
    digest = _digest(settings, folders)
    return Kit(
        settings=settings,
        templates=_environment(folders, digest),
        words=_known("words", Words, folders),
        standing=read_texts(folders, "standing", Standing),
        cautions=_known("cautions", Named[Caution], folders),
        ready=_known("ready", Words, folders),
        wear=_known("wear", Words, folders),
        walk_away=_known("walk-away", Words, folders),
        signs=_known("signs", Words, folders),
        guide=read_texts(folders, "guide", Named[GuideSection]),
        walk=_known("walk", Words, folders),
        review=_known("review", Words, folders),
        digest=digest,
        job=_known("job", Words, folders),
    )


def _digest(settings: Settings, folders: tuple[Path, ...]) -> str:
    lasting = replace(settings, cache_folder=None, template_dirs=(), build_date="", revision="")
    found = sha256(repr(lasting).encode())
    for folder in folders:
        for path in sorted(files_below(folder)):
            found.update(b"\0" + path.relative_to(folder).as_posix().encode("utf-8", "replace"))
            with suppress(OSError):  # Whoever needs it says that it cannot be read.
                found.update(b"\0" + sha256(path.read_bytes()).digest())
    return found.hexdigest()


def render(kit: Kit, template: str, view: object) -> Markup:
    """Lay a view out with `pages/TEMPLATE.html.j2`; everything in it is escaped.

    Raises PullcordError when a project's own template cannot be used.
    """
    try:
        page = kit.templates.get_template(f"pages/{template}.html.j2")
        return Markup(  # noqa: S704 (autoescaped)
            page.render(view=view, words=kit.words, walk=kit.walk, job=kit.job)
        )
    except TemplateError as error:
        raise PullcordError(f"template pages/{template}.html.j2: {error}") from error


@lru_cache(maxsize=4)
def _environment(folders: tuple[Path, ...], digest: str) -> Environment:
    """Return the templates of a state of the folders that is known by its digest."""
    return Environment(
        loader=ChoiceLoader([FileSystemLoader(folder) for folder in folders]),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        auto_reload=False,  # For another state of the files there is another environment.
    )


def _known(name: str, shape: Any, folders: tuple[Path, ...]) -> Any:
    """Read texts whose keys are all given by the shipped ones."""
    texts = read_texts(folders, name, shape)
    if len(folders) > 1:
        check_keys(name, texts, read_texts(folders[-1:], name, shape))
    return texts
