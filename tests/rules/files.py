"""Texts through the whole checking, as files of a project would go through it."""

from __future__ import annotations

import re
from collections.abc import Mapping

from pullcord.finding import Finding
from pullcord.model.machine import Machine
from pullcord.model.procedure import Procedure
from pullcord.rules.document import build_library, read_document
from pullcord.rules.run import check_library


def check_files(files: Mapping[str, bytes]) -> tuple[Finding, ...]:
    """Return every finding about the files of one project, given by name."""
    sheets = {name for name, raw in files.items() if re.search(rb"^machine:", raw, re.MULTILINE)}
    machines = [read_document(name, files[name], Machine) for name in files if name in sheets]
    procedures = [
        read_document(name, raw, Procedure) for name, raw in files.items() if name not in sheets
    ]
    library = build_library(procedures, machines)
    return check_library(procedures, library, machines)
