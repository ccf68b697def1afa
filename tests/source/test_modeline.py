"""The comments that tell an editor which schema a file follows."""

from __future__ import annotations

from pathlib import Path

import pytest

from pullcord.source.modeline import modelines
from pullcord.source.tree import read_tree

WAYS = {
    "beside the folder": ("machines/pump.yaml", "schemas", "../schemas/machine.json"),
    "deeper": ("a/b/pump.yaml", "schemas", "../../schemas/machine.json"),
    "in the same folder": ("pump.yaml", ".", "machine.json"),
    "elsewhere": ("/shed/machines/pump.yaml", "/yard/s", "../../yard/s/machine.json"),
}


@pytest.mark.parametrize(("file", "schemas", "way"), WAYS.values(), ids=WAYS)
def test_the_way_is_relative(file: str, schemas: str, way: str) -> None:
    """It holds wherever the whole folder is carried."""
    assert modelines(Path(file), "machine", Path(schemas)) == (
        f"# yaml-language-server: $schema={way}\n# $schema: {way}\n"
    )


def test_they_are_comments() -> None:
    """A file reads the same with them as without."""
    text = "machine: pump\n"
    with_lines = modelines(Path("pump.yaml"), "machine", Path("schemas")) + text
    read = read_tree(with_lines.encode())
    assert (read.data, read.flaws) == ({"machine": "pump"}, ())
