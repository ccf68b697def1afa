"""`pullcord build --shard` and `pullcord join`, as they are typed."""

from __future__ import annotations

import os
import re
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner

from pullcord.cli import main
from tests.shed import write_shed


def test_a_site_of_one_shard(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Each command says where its folder is; the second finds what the first wrote."""
    write_shed(tmp_path)
    monkeypatch.chdir(tmp_path)
    built = CliRunner().invoke(main, ["build", "--shard", "1/1", "--site-dir", "out"])
    folder = tmp_path / "out.shard-1-of-1"
    assert (built.exit_code, built.stdout) == (0, f"Shard 1/1 is in {folder}\n")
    joined = CliRunner().invoke(main, ["join", folder.name, "--site-dir", "out"])
    assert (joined.exit_code, joined.stdout) == (0, f"The site is in {tmp_path / 'out'}\n")
    assert (tmp_path / "out" / "procedures" / "dark-lamp.html").is_file()


def test_what_is_no_shard_is_wrong_usage(tmp_path: Path) -> None:
    """It is said how to write one, and nothing is built."""
    config = write_shed(tmp_path)
    result = CliRunner().invoke(main, ["build", "-f", str(config), "--shard", "4/3"])
    assert result.exit_code == 2
    assert "`4/3` is no shard: write the second of five as `2/5`" in result.output
    assert not list(tmp_path.glob("site*"))


def test_what_is_not_joined_is_told_without_a_traceback(tmp_path: Path) -> None:
    """Exit code 1, one line that names the folder, and no site."""
    config = write_shed(tmp_path)
    result = CliRunner().invoke(main, ["join", "-f", str(config), str(tmp_path / "docs")])
    assert result.exit_code == 1
    assert result.stderr.startswith(f"error: {tmp_path / 'docs'} is not a shard")
    assert not (tmp_path / "site").exists()


def test_the_lines_of_the_guide_make_a_site(tmp_path: Path) -> None:
    """What the page on large libraries shows for a terminal does what it says."""
    page = Path(__file__).parents[2] / "guide" / "large-libraries.md"
    (lines,) = re.findall(r"^```sh\n(.*?)^```$", page.read_text("utf-8"), re.MULTILINE | re.DOTALL)
    write_shed(tmp_path)
    path = f"{Path(sys.executable).parent}{os.pathsep}{os.environ['PATH']}"
    subprocess.run(
        ["sh", "-eu", "-c", lines],
        cwd=tmp_path,
        env={**os.environ, "PATH": path},
        check=True,
        timeout=300,
    )
    made = {path.name for path in tmp_path.glob("site*")}
    assert made == {"site", *(f"site.shard-{number}-of-4" for number in range(1, 5))}
    assert (tmp_path / "site" / "procedures" / "dark-lamp.html").is_file()
