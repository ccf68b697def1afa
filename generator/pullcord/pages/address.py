"""Where things are: page addresses and anchors. They depend on names only, so links last."""

from __future__ import annotations

import posixpath

HOME = "index.md"
PROCEDURES = "procedures.md"
GUIDE = "how-to-read.md"
RULES = "rules.md"
MACHINES = "machines.md"
BENCH = "bench-tables.md"


def procedure_uri(name: str, machine: str = "") -> str:
    """Return the address of a procedure's page, in MkDocs's terms: general, or a machine's."""
    return f"machines/{machine}/{name}.md" if machine else f"procedures/{name}.md"


def machine_uri(name: str) -> str:
    """Return the address of a machine's page."""
    return f"machines/{name}.md"


def anchor(node: str) -> str:
    """Return the id of a graph node's section: `step:plug` is `step-plug`."""
    return node.replace(":", "-")


def link(from_uri: str, to_uri: str, fragment: str = "") -> str:
    """Return the relative link between two pages, which works with no server."""
    path = posixpath.relpath(to_uri, posixpath.dirname(from_uri) or ".")
    html = f"{path.removesuffix('.md')}.html"
    return f"{html}#{fragment}" if fragment else html
