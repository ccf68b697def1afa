"""Two states of some files, read and found free of errors, to be held against each other."""

from __future__ import annotations

from pathlib import Path

from pullcord.analysis.diff.libraries import Side
from pullcord.errors import FindingsError
from pullcord.finding import Severity
from pullcord.project import Project
from pullcord.rules.catalogue import rules
from pullcord.site.own import load_chosen
from pullcord.source.choice import Choice, choose_side, is_asked


def read_side(path: Path) -> Side:
    """Return what a file, a folder or a project holds.

    Raises FindingsError with the errors in it: of a file that is wrong nobody can say what it
    means. Raises another PullcordError when there is nothing to read.
    """
    choice = choose_side(path)
    project = load_chosen(choice)
    about_files = {rule.id for rule in rules() if rule.group == "files"}
    errors = tuple(
        each
        for each in project.findings
        if each.severity is Severity.ERROR
        and each.rule not in about_files  # A copy under another name means what it says.
        and is_asked(each.file, choice)
    )
    if errors:
        raise FindingsError(errors)
    return _side(project, choice)


def _side(project: Project, choice: Choice) -> Side:
    own = (
        frozenset(name for name, read in kind.items() if is_asked(str(read.path), choice))
        for kind in (project.files, project.machines)
    )
    return Side(project.library, *own)
