"""The two comments that tell an editor which schema a file follows.

The first is read by the YAML server most editors use, the second by JetBrains' editors. The way to
the schema is relative, so that it works with no network and wherever the folder is carried.
"""

from __future__ import annotations

import os
from pathlib import Path

SCHEMAS = "schemas"
"""The folder of schemas: below `site_templates`, and in a project that keeps its own."""


def schema_name(kind: str) -> str:
    """Return the file name of a kind's schema; the kinds are those of `model.schema`."""
    return f"{kind}.json"


def modelines(file: Path, kind: str, schemas: Path) -> str:
    """Return the two lines a file begins with, given the folder of schemas; each line ends.

    Both paths are seen from the same folder, or are absolute; neither need exist.
    """
    way = Path(os.path.relpath(schemas / schema_name(kind), file.parent)).as_posix()
    return f"# yaml-language-server: $schema={way}\n# $schema: {way}\n"
