"""What the command line says to a procedure's author, from the project in the present folder."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from pathlib import Path

from pullcord.analysis.job.counts import count_outcomes
from pullcord.analysis.review import review
from pullcord.errors import FindingsError, PullcordError
from pullcord.finding import Severity
from pullcord.model.nearest import did_you_mean, listed
from pullcord.model.procedure import Procedure
from pullcord.pages.kit import read_kit
from pullcord.pages.review import review_sections
from pullcord.pages.review_guard import read_guard
from pullcord.pages.review_text import review_text
from pullcord.pages.review_words import Namer
from pullcord.project import Project
from pullcord.site.own import load_chosen
from pullcord.site.paper import project_settings
from pullcord.source.choice import choose


class UnknownWordError(PullcordError):
    """There is no procedure, or no tool, of the name that was given."""


def read_review(name: str, tools: Collection[str] | None, paths: Sequence[Path]) -> str:
    """Return the review of a procedure in plain words, to be printed.

    `tools` are the names of those in hand (None: all), `paths` what `check` takes. Raises
    FindingsError when the procedure's file has errors, UnknownWordError for a name nobody has, or
    another PullcordError when there is nothing to read or its texts cannot be used.
    """
    choice = choose(paths)
    project = load_chosen(choice)
    procedure = _procedure(project, name)
    if tools is not None:
        _refuse_unknown(procedure, tools)
    settings = project_settings(choice.settings)
    names = Namer(procedure, project.library, read_kit(settings).review)
    counts = count_outcomes(project.library.jobs.values(), procedure, project.library)
    found = review(procedure, counts, tools, read_guard(procedure))
    title = names.words["title"].format(title=procedure.title)
    return review_text(title, review_sections(names, found, settings.currency))


def _procedure(project: Project, name: str) -> Procedure:
    errors = [each for each in project.findings if each.severity is Severity.ERROR]
    own = tuple(each for each in errors if Path(each.file).stem == name)
    if own:
        raise FindingsError(own)
    read = project.files.get(name)
    if read is None:
        near = did_you_mean(name, project.files, f"there are: {listed(project.files)}")
        raise UnknownWordError(f"there is no procedure `{name}`; {near}")
    return read.procedure


def _refuse_unknown(procedure: Procedure, tools: Collection[str]) -> None:
    for tool in tools:
        if tool not in procedure.tools:
            known = listed(procedure.tools) or "none"
            near = did_you_mean(tool, procedure.tools, f"there are: {known}")
            raise UnknownWordError(f"`{procedure.procedure}` has no tool `{tool}`; {near}")
