"""What every page is made with: the templates, the standing texts, the settings."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
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
    HomeGroup,
    Standing,
    Words,
    check_keys,
    read_texts,
)
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
    groups: Mapping[str, HomeGroup]
    walk: Mapping[str, str]
    """Words of the guided walk."""
    review: Mapping[str, str]
    """What the review says to a procedure's author."""
    job: Mapping[str, str]
    """Words of the job pages and of the job sheet."""


def template_folders(settings: Settings) -> tuple[Path, ...]:
    """Return where templates, texts and assets are looked for; the first that has a file wins."""
    return (*settings.template_dirs, site_templates())


def read_kit(settings: Settings) -> Kit:
    """Read templates and texts. Raises PullcordError when a text does not fit."""
    folders = template_folders(settings)
    return Kit(
        settings=settings,
        templates=_environment(folders),
        words=_known("words", Words, folders),
        standing=read_texts(folders, "standing", Standing),
        cautions=_known("cautions", Named[Caution], folders),
        ready=_known("ready", Words, folders),
        wear=_known("wear", Words, folders),
        walk_away=_known("walk-away", Words, folders),
        signs=_known("signs", Words, folders),
        guide=read_texts(folders, "guide", Named[GuideSection]),
        groups=read_texts(folders, "home", Named[HomeGroup]),
        walk=_known("walk", Words, folders),
        review=_known("review", Words, folders),
        job=_known("job", Words, folders),
    )


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


def _environment(folders: tuple[Path, ...]) -> Environment:
    return Environment(
        loader=ChoiceLoader([FileSystemLoader(folder) for folder in folders]),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        auto_reload=False,  # A kit serves one build, so no file need be looked at twice.
    )


def _known(name: str, shape: Any, folders: tuple[Path, ...]) -> Any:
    """Read texts whose keys are all given by the shipped ones."""
    texts = read_texts(folders, name, shape)
    if len(folders) > 1:
        check_keys(name, texts, read_texts(folders[-1:], name, shape))
    return texts
