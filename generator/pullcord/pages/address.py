"""Where things are: page addresses and anchors. They depend on names only, so links last."""

from __future__ import annotations

import posixpath
from typing import Literal

HOME = "index.md"
PROCEDURES = "procedures.md"
GUIDE = "how-to-read.md"
RULES = "rules.md"
MACHINES = "machines.md"
BENCH = "bench-tables.md"
JOBS = "jobs.md"
FINDER = "finder.md"
MAP = "map.md"
BINDER = "binder.html"
"""Everything in one file."""
PaperKind = Literal["flowchart", "steps", "record", "walkaway"]
GENERAL_PAPER: tuple[PaperKind, ...] = ("flowchart", "steps", "record", "walkaway")
"""What lies ready as a PDF beside each procedure."""
MACHINE_PAPER: tuple[PaperKind, ...] = ("flowchart", "record")
"""What does so for each machine as well: the sheets that hold its own limits."""


def procedure_uri(name: str, machine: str = "") -> str:
    """Return the address of a procedure's page, in MkDocs's terms: general, or a machine's."""
    return f"machines/{machine}/{name}.md" if machine else f"procedures/{name}.md"


def machine_uri(name: str) -> str:
    """Return the address of a machine's page."""
    return f"machines/{name}.md"


def job_uri(name: str) -> str:
    """Return the address of a job's page."""
    return f"jobs/{name}.md"


def job_paper_uri(name: str) -> str:
    """Return the address of a job's sheet, a PDF."""
    return f"print/jobs/{name}.pdf"


def photo_uri(job: str, photo: str) -> str:
    """Return the address of a picture, by the job and by the path its log names it with."""
    return f"jobs/photos/{job}/{photo}"


def review_uri(name: str) -> str:
    """Return the address of the page for a procedure's author."""
    return f"authors/{name}.md"


def keys_uri(kind: str) -> str:
    """Return the address of the page of all keys of a kind of file."""
    return f"authors/keys/{kind}.md"


def is_for_authors(src_uri: str) -> bool:
    """Say whether a page is for whoever writes procedures, not for whoever works by them."""
    return src_uri == RULES or src_uri.startswith("authors/")


def one_file_uri(name: str) -> str:
    """Return the address of the single file a procedure is in."""
    return f"one-file/{name}.html"


def paper_uri(kind: PaperKind, name: str, machine: str = "") -> str:
    """Return the address of a procedure's PDF: for machines in general, or for one."""
    stem = name if kind == "flowchart" else f"{name}-{kind}"
    return f"print/{machine}/{stem}.pdf" if machine else f"print/{stem}.pdf"


def file_link(from_uri: str, to_uri: str) -> str:
    """Return the relative link from a page to a file that is no page."""
    return posixpath.relpath(to_uri, posixpath.dirname(from_uri) or ".")


def anchor(node: str) -> str:
    """Return the id of a graph node's section: `step:plug` is `step-plug`."""
    return node.replace(":", "-")


def link(from_uri: str, to_uri: str, fragment: str = "") -> str:
    """Return the relative link between two pages, which works with no server."""
    path = posixpath.relpath(to_uri, posixpath.dirname(from_uri) or ".")
    html = f"{path.removesuffix('.md')}.html"
    return f"{html}#{fragment}" if fragment else html
