"""`pullcord schema`."""

from __future__ import annotations

from pathlib import Path

from click.testing import CliRunner

from pullcord.commands.schema import schema
from pullcord.model.schema import KINDS, schema_text


def test_one_is_printed() -> None:
    """Nothing else stands on the standard output."""
    done = CliRunner().invoke(schema, ["machine"])
    assert (done.exit_code, done.stdout) == (0, schema_text("machine"))


def test_all_are_written(tmp_path: Path) -> None:
    """One file a kind, into a folder that need not be there; the same bytes every time."""
    for _ in range(2):
        done = CliRunner().invoke(schema, ["-o", str(tmp_path / "a" / "schemas")])
        assert done.exit_code == 0
        found = {path.stem: path.read_bytes() for path in (tmp_path / "a" / "schemas").iterdir()}
        assert found == {kind: schema_text(kind).encode() for kind in KINDS}


def test_one_is_written(tmp_path: Path) -> None:
    """To the file that was named."""
    done = CliRunner().invoke(schema, ["job", "-o", str(tmp_path / "x.json")])
    assert done.exit_code == 0
    assert (tmp_path / "x.json").read_text(encoding="utf-8") == schema_text("job")


def test_what_cannot_be(tmp_path: Path) -> None:
    """2 for what nobody can mean, 1 for a place that cannot be written; no traceback."""
    assert CliRunner().invoke(schema, []).exit_code == 2
    assert CliRunner().invoke(schema, ["engine"]).exit_code == 2
    (tmp_path / "file").write_text("x")
    done = CliRunner().invoke(schema, ["-o", str(tmp_path / "file")])
    assert done.exit_code == 1
    assert "cannot be written" in done.stderr
