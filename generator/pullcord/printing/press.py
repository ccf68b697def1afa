"""What all sheets of a project are made with, and what those of one procedure are about."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TypeVar

from pullcord.errors import PullcordError
from pullcord.model.nearest import did_you_mean
from pullcord.pages.imprint import printed_lines
from pullcord.pages.kit import Kit, read_kit, template_folders
from pullcord.pages.need import ReadJob, ReadProcedure, ReadProject
from pullcord.pages.order import reading_order
from pullcord.pages.settings import Settings
from pullcord.pages.sight import seen_from, sight_key
from pullcord.pages.subject import Subject, subject_of
from pullcord.pages.texts import Words, check_keys, read_texts
from pullcord.pages.way import Signposts
from pullcord.printing.frame import Frame, Said
from pullcord.printing.paper import PaperName, on_its_side, upright
from pullcord.readings import Meter, parse_meter
from pullcord.safety.notes import SafetyNotes, safety_notes


class UnknownNameError(PullcordError):
    """There is no procedure, machine or job of a name somebody asked for."""


@dataclass(frozen=True)
class Press:
    """Read once; every sheet is made from it."""

    kit: Kit
    words: Mapping[str, str]
    """What only paper says, by key."""
    project: ReadProject
    notes: Mapping[str, SafetyNotes]
    """By procedure."""
    meter: Meter
    subjects: Mapping[str, Subject]
    """The machines, by name."""
    paper: PaperName


@dataclass(frozen=True)
class Topic:
    """One procedure, for one machine or for machines in general."""

    press: Press
    read: ReadProcedure
    posts: Signposts
    notes: SafetyNotes

    @property
    def key(self) -> tuple[str, ...]:
        """Everything its sheets are made from, as the key of a cache."""
        posts, paper = self.posts, self.press.paper
        return (
            paper,
            *sight_key(self.press.kit, posts.library, self.read, self.notes, (posts.subject,)),
        )

    @property
    def is_fitting(self) -> bool:
        """Say whether the procedure applies to the machine."""
        return self.posts.subject.machine in self.posts.fitting

    def frames(self, title: str) -> tuple[Frame, Frame]:
        """Return upright and lying sheets with a title of the printed texts."""
        procedure, subject = self.posts.procedure, self.posts.subject
        said = Said(
            title=self.press.words[title].format(title=procedure.title),
            below=procedure.symptom,
            machine=subject.title,
            imprint=printed_lines(self.press.kit, self.read.digest, subject.digest),
            deferral=self.press.kit.standing.deferral,
        )
        return frames_for(self.press, said)


def read_press(project: ReadProject, settings: Settings, paper: PaperName) -> Press:
    """Read texts and templates, and work out the cautions of a project without error findings.

    Raises PullcordError when a text does not fit.
    """
    return press_with(read_kit(settings), project, paper)


def press_with(kit: Kit, project: ReadProject, paper: PaperName) -> Press:
    """Return the same with texts and templates that were read already."""
    folders = template_folders(kit.settings)
    words: Mapping[str, str] = read_texts(folders, "paper", Words)
    check_keys("paper", words, read_texts(folders[-1:], "paper", Words))
    meter = parse_meter(project.library.meter)
    subjects = {
        name: subject_of(read.machine, read.digest, meter)
        for name, read in project.machines.items()
    }
    return Press(kit, words, project, safety_notes(project.library), meter, subjects, paper)


def topic(press: Press, name: str, machine: str = "") -> Topic:
    """Return a procedure with what its sheets need. Raises UnknownNameError."""
    read = _find("procedure", name, press.project.files)
    procedure = read.procedure
    seen = seen_from(procedure, press.project.library)
    subject = subject_named(press, machine) if machine else Subject(press.meter)
    posts = Signposts(procedure, seen, reading_order(procedure), press.kit.words, subject)
    return Topic(press, read, posts, press.notes[name])


def subject_named(press: Press, machine: str) -> Subject:
    """Return a machine. Raises UnknownNameError."""
    return _find("machine", machine, press.subjects)


def job_named(press: Press, name: str) -> ReadJob:
    """Return a job. Raises UnknownNameError."""
    read: ReadJob = _find("job", name, press.project.jobs)
    return read


def frames_for(press: Press, said: Said) -> tuple[Frame, Frame]:
    """Return upright and lying sheets of the press's paper."""
    return Frame(said, upright(press.paper)), Frame(said, on_its_side(press.paper))


Found = TypeVar("Found")


def _find(kind: str, name: str, known: Mapping[str, Found]) -> Found:
    if name in known:
        return known[name]
    hint = did_you_mean(name, known, f"known are: {', '.join(known) or 'none'}")
    raise UnknownNameError(f"there is no {kind} `{name}`; {hint}")
