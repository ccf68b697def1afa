"""Builds that something happens to, each in a process of its own.

`python -m tests.faulty` loads everything once, then reads a line of JSON for every set of builds to
start at the same moment, forks for each of them, and answers with how they ended. So a build
costs what the build costs, and whatever a fault does to its process is gone with it.
"""

from __future__ import annotations

import ctypes
import errno
import importlib
import json
import os
import resource
import select
import signal
import subprocess
import sys
import time
import traceback
from collections.abc import Callable, Mapping, Sequence
from dataclasses import asdict, dataclass
from pathlib import Path
from types import FrameType
from typing import Any, BinaryIO, TextIO

ROOT = Path(__file__).parents[1]


@dataclass(frozen=True)
class Run:
    """One build to start."""

    config: str
    fault: str = ""
    """One of FAULTS, or nothing."""
    value: str = ""
    """What the fault is told."""
    kill_after_seconds: float | None = None
    face: str = "mkdocs"
    """The command that builds: `mkdocs` or `pullcord`."""


@dataclass(frozen=True)
class Ended:
    """How a build ended."""

    code: int
    """Of the process; below zero, the signal that killed it."""
    said: str
    seconds: float


class Builds:
    """The process that starts builds."""

    def __init__(self) -> None:
        """Start it."""
        self._process = subprocess.Popen(
            [sys.executable, "-m", "tests.faulty"],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            cwd=ROOT,
            text=True,
        )

    def run(self, *runs: Run) -> list[Ended]:
        """Start builds together and return how they ended, in the same order."""
        assert self._process.stdin
        assert self._process.stdout
        self._process.stdin.write(json.dumps([asdict(run) for run in runs]) + "\n")
        self._process.stdin.flush()
        return [Ended(**each) for each in json.loads(self._process.stdout.readline())]

    def close(self) -> None:
        """End it."""
        assert self._process.stdin
        assert self._process.stdout
        self._process.stdin.close()
        self._process.wait(60)
        self._process.stdout.close()


# What may happen to a build. Each is told a value, and runs in the build's own process.


def largest_file(bytes_: str) -> None:
    """Fill the disk: no file may grow beyond this, as if there were no room for the rest."""
    resource.setrlimit(resource.RLIMIT_FSIZE, (int(bytes_), int(bytes_)))


def no_room_for_folders(_: str) -> None:
    """Fill the disk so that not even a folder can be made."""

    def mkdir(path: Any, *_: object, **__: object) -> None:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC), os.fspath(path))

    os.mkdir = mkdir  # type: ignore[assignment]


def read_only(folders: str) -> None:
    """Make folders read-only, for the owner of all files too: capset(2), CAP_DAC_OVERRIDE."""
    for folder in folders.split(os.pathsep):
        Path(folder).chmod(0o555)
    head = (ctypes.c_uint32 * 2)(0x20080522, 0)
    caps = (ctypes.c_uint32 * 6)()
    libc = ctypes.CDLL(None, use_errno=True)
    assert libc.capset(head, caps) == 0, os.strerror(ctypes.get_errno())


def engine(folder: str) -> None:
    """Have no programs but those of a folder, and less patience with them than usual."""
    from pullcord.drawing import layout

    os.environ["PATH"] = folder
    layout.TIMEOUT_SECONDS = 0.3
    layout.lay_out.__defaults__ = (0.3,)


def clock(seconds: str) -> None:
    """Set the clock, to seconds since 1970."""
    time.time = lambda: float(seconds)


def killed_in_swap(line: str) -> None:
    """Kill the build before so many lines of the swap have been run."""
    from pullcord.site import beside

    left = int(line)
    swap = beside.swap

    def look(frame: FrameType, event: str, argument: object) -> Any:
        nonlocal left
        if not frame.f_code.co_filename.endswith(("beside.py", "exchange.py", "shutil.py")):
            return None
        left -= event == "line"
        if left < 0:
            os.kill(os.getpid(), signal.SIGKILL)
        return look

    def watched(place: beside.Beside) -> Path:
        sys.settrace(look)
        try:
            return swap(place)
        finally:
            sys.settrace(None)

    beside.swap = watched


FAULTS: Mapping[str, Callable[[str], None]] = {
    each.__name__: each
    for each in (largest_file, no_room_for_folders, read_only, engine, clock, killed_in_swap)
}


def _serve() -> None:
    importlib.import_module("pullcord.cli")
    importlib.import_module("pullcord.plugin")

    for line in sys.stdin:
        runs = [Run(**each) for each in json.loads(line)]
        ended = _wait([_start(run) for run in runs], runs)
        sys.stdout.write(json.dumps([asdict(each) for each in ended]) + "\n")
        sys.stdout.flush()


def _start(run: Run) -> tuple[int, BinaryIO]:
    reading, writing = os.pipe()
    pid = os.fork()
    if pid:
        os.close(writing)
        return pid, os.fdopen(reading, "rb")
    code = 1
    try:
        os.environ["NO_COLOR"] = "1"
        sys.stdout, sys.stderr = _said_to(writing, 1), _said_to(writing, 2)
        if run.fault:
            FAULTS[run.fault](run.value)
        _build(run)
        code = 0
    except SystemExit as end:
        code = end.code if isinstance(end.code, int) else int(end.code is not None)
    except BaseException:
        traceback.print_exc()
    finally:
        sys.stdout.flush()
        sys.stderr.flush()
        os._exit(code)


def _said_to(writing: int, number: int) -> TextIO:
    """Have what is said go to a pipe; a stream opened on something else would not know it."""
    os.dup2(writing, number)
    return os.fdopen(number, "w", encoding="utf-8", closefd=False)


def _build(run: Run) -> None:
    from mkdocs.__main__ import cli

    from pullcord.cli import main

    sys.argv = [run.face, "build", "-f", run.config]
    (main if run.face == "pullcord" else cli)()


def _wait(started: Sequence[tuple[int, BinaryIO]], runs: Sequence[Run]) -> list[Ended]:
    began = time.monotonic()
    ended = []
    for (pid, said), run in zip(started, runs, strict=True):
        if run.kill_after_seconds is not None:
            _kill_at(pid, said, began + run.kill_after_seconds)
        text = said.read().decode("utf-8", "replace")
        said.close()
        _, status = os.waitpid(pid, 0)
        code = os.waitstatus_to_exitcode(status)
        ended.append(Ended(code, text, time.monotonic() - began))
    return ended


def _kill_at(pid: int, said: BinaryIO, moment: float) -> None:
    """Kill a process at a moment, unless it has ended by then; what it says does not block it."""
    time.sleep(max(0.0, moment - time.monotonic()))
    os.kill(pid, signal.SIGKILL)
    select.select([said], [], [], 60)


if __name__ == "__main__":
    _serve()
