"""The layout engine: a program that may be missing, hang, die or talk nonsense."""

from __future__ import annotations

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from pullcord.drawing.layout import engine_version, find_engine, lay_out
from pullcord.drawing.plan import Request, RequestEdge, RequestNode
from pullcord.errors import LayoutError

PAIR = Request(
    nodes=(RequestNode("decision", 120, 72), RequestNode("process", 80, 48)),
    edges=(RequestEdge(0, 1, True, (40, 20)),),
    below=(),
    rows=(),
    beside_px=20,
    below_px=24,
)
FORK = Request(
    nodes=(*PAIR.nodes, RequestNode("terminator", 90, 48)),
    edges=(RequestEdge(0, 1, False, None), RequestEdge(0, 2, False, (60, 40))),
    below=(),
    rows=((2, 1),),
    beside_px=20,
    below_px=24,
)


def put_dot(folder: Path, script: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """Make a shell script the only `dot` of this machine."""
    path = folder / "dot"
    path.write_text(f"#!/bin/sh\n{script}\n", encoding="utf-8")
    path.chmod(0o755)
    monkeypatch.setenv("PATH", f"{folder}:/usr/bin:/bin")


def test_built_in_engine_is_the_installed_package() -> None:
    """The program lies beside the Python that runs, wherever PATH leads."""
    assert find_engine("built-in").parent == Path(sys.executable).parent
    assert "graphviz" in engine_version("built-in")


def test_sizes_are_kept_and_nothing_overlaps() -> None:
    """The head stands below the tail by both half heights, the answer and the gaps."""
    (plan,) = lay_out([PAIR], "built-in")
    (_, top), (_, bottom) = plan.nodes
    assert bottom - top >= 72 / 2 + 20 + 48 / 2
    assert plan.width_px >= 120
    (edge,) = plan.edges
    assert edge.label is not None
    assert top + 36 <= edge.label[1] - 10
    assert edge.label[1] + 10 <= bottom - 24


def test_arrow_runs_from_outline_to_outline() -> None:
    """It begins at the tail's lower tip and its head ends on the head's upper side."""
    (plan,) = lay_out([PAIR], "built-in")
    (tail, head), (edge,) = plan.nodes, plan.edges
    assert edge.curve[0] == pytest.approx((tail[0], tail[1] + 36), abs=1.5)
    assert edge.tip == pytest.approx((head[0], head[1] - 24), abs=1.5)


def test_a_row_keeps_its_order() -> None:
    """What is to share a row does, from the left as asked."""
    (plan,) = lay_out([FORK], "built-in")
    assert plan.nodes[1][1] == plan.nodes[2][1]
    assert plan.nodes[2][0] < plan.nodes[1][0]


def test_many_charts_in_one_run_are_the_same_as_one_by_one() -> None:
    """The engine takes a stream of charts; none of them colours the next."""
    together = lay_out([PAIR, FORK, PAIR], "built-in")
    assert together == tuple(lay_out([one], "built-in")[0] for one in (PAIR, FORK, PAIR))
    assert lay_out([], "built-in") == ()


def test_the_machines_own_engine_can_be_chosen(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """`dot` is looked for where the system looks, and is told the same things."""
    shutil.copy(find_engine("built-in"), tmp_path / "dot")
    monkeypatch.setenv("PATH", str(tmp_path))
    assert find_engine("dot") == tmp_path / "dot"
    assert lay_out([FORK], "dot") == lay_out([FORK], "built-in")


@pytest.mark.parametrize("engine", ["built-in", "dot"])
def test_missing_engine_is_told(
    engine: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Without the program the message names it and says what to do."""
    monkeypatch.setenv("PATH", str(tmp_path))
    monkeypatch.setattr(sys, "executable", str(tmp_path / "python"))
    with pytest.raises(LayoutError, match=r"is not there\. Install"):
        lay_out([PAIR], engine)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("script", "message"),
    [
        ("exec sleep 60", "gave no answer in 0.5 s"),
        ("echo 'out of ink' >&2; exit 3", "stopped with code 3: out of ink"),
        ("exit 1", "stopped with code 1: it said nothing"),
        ("kill -9 $$", "stopped with code -9"),
        ("echo hello", "not this chart"),
        ("echo '{}'", "not this chart"),
        ("echo '[1, 2]'", "not this chart"),
        ("true", "not this chart"),
        ("printf '\\377\\376'", "not this chart"),
        ('echo \'{"bb": "0,0,nan,9"}\'', "not this chart"),
        ('echo \'{"bb": "0,0,9,9", "objects": [{"name": "n0", "pos": "1,2"}]}\'', "not this chart"),
    ],
    ids=[
        "hangs", "dies loudly", "dies silently", "killed", "chatter", "no chart", "a list",
        "says nothing", "no text", "not a number", "half a chart",
    ],
)  # fmt: skip
def test_a_faulty_engine_is_told(
    script: str, message: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Whatever the program does, there is one plain message and no traceback of ours."""
    put_dot(tmp_path, script, monkeypatch)
    with pytest.raises(LayoutError, match=message):
        lay_out([PAIR], "dot", timeout_seconds=0.5 if "sleep" in script else 20)


def test_an_engine_that_cannot_be_started_is_told(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A file that only looks like a program is no reason for a traceback."""
    (tmp_path / "dot").write_bytes(b"\x7fELF nonsense")
    (tmp_path / "dot").chmod(0o755)
    monkeypatch.setenv("PATH", str(tmp_path))
    with pytest.raises(LayoutError, match="cannot be started"):
        lay_out([PAIR], "dot")


def test_a_dead_engine_has_no_version(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Asking for the version fails as asking for a layout does."""
    put_dot(tmp_path, "exit 9", monkeypatch)
    with pytest.raises(LayoutError, match="code 9"):
        engine_version("dot")


def test_the_engine_sees_no_text(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """What is sent consists of numbers and our own names, and goes through no shell."""
    put_dot(tmp_path, f'echo "$@" >{tmp_path}/args; cat >{tmp_path}/source', monkeypatch)
    with pytest.raises(LayoutError):
        lay_out([FORK], "dot")
    assert (tmp_path / "args").read_text(encoding="ascii") == "-Kdot -Tjson0\n"
    source = (tmp_path / "source").read_text(encoding="ascii")
    assert "n0 -> n2 [label=<<TABLE" in source
    assert 'WIDTH="60" HEIGHT="40"' in source
    again = subprocess.run(
        [find_engine("built-in"), "-Tcanon"], input=source.encode(), capture_output=True, check=True
    )
    assert b"n0 -> n2" in again.stdout
