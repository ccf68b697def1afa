"""What the pages need to be told of a project. The project itself lives a layer above."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Protocol

from pullcord.model.job import Job
from pullcord.model.machine import Machine
from pullcord.model.procedure import Library, Procedure


class ReadProcedure(Protocol):
    """A procedure as it was read from its file."""

    @property
    def procedure(self) -> Procedure:
        """What was read."""

    @property
    def path(self) -> Path:
        """The file it was read from."""

    @property
    def digest(self) -> str:
        """The procedure's revision."""


class ReadMachine(Protocol):
    """A machine sheet as it was read from its file."""

    @property
    def machine(self) -> Machine:
        """What was read."""

    @property
    def path(self) -> Path:
        """The file it was read from."""

    @property
    def digest(self) -> str:
        """The sheet's revision."""


class ReadJob(Protocol):
    """A job log as it was read from its file."""

    @property
    def job(self) -> Job:
        """What was read."""

    @property
    def path(self) -> Path:
        """The file it was read from."""

    @property
    def digest(self) -> str:
        """The log's revision."""


class ReadProject(Protocol):
    """Everything that was read. Only procedures without errors are made into pages."""

    @property
    def files(self) -> Mapping[str, ReadProcedure]:
        """By procedure name, in the order of the list page."""

    @property
    def machines(self) -> Mapping[str, ReadMachine]:
        """By machine name, in the order of the list of machines."""

    @property
    def jobs(self) -> Mapping[str, ReadJob]:
        """By job name, in name order."""

    @property
    def library(self) -> Library:
        """Every procedure and machine, and the shop's meter."""
