"""Other processes that make a share of a large build each, so that every core has work.

They read the same files and fill the folder of what is kept, and hand nothing back. The build then
finds everything there, and makes what it does not find: a helper that fails costs time, no more.
"""

from __future__ import annotations

import _thread
import os
import subprocess
import sys
from collections.abc import Iterable, Iterator, Sequence
from contextlib import ExitStack, contextmanager, suppress
from dataclasses import dataclass, replace
from pathlib import Path
from tempfile import TemporaryDirectory
from threading import Thread

from pydantic import TypeAdapter

from pullcord.drawing.cache import is_there, put
from pullcord.printing.output import is_kept, orders
from pullcord.printing.press import press_with
from pullcord.site.read import Inputs, ReadSite, read_inputs
from pullcord.site.share import share_of

LEAST_SHARE = 12
"""With fewer procedures to be made, a process spends more time on its start than it saves."""
MOST_PROCESSES = 8
"""Each holds the whole library in memory."""
PYTHON = sys.executable
_SAMPLE = 16
"""How many procedures are looked at to tell how much of a library is kept already."""


@dataclass(frozen=True)
class Task:
    """What one process is to make."""

    inputs: Inputs
    names: tuple[str, ...]
    """Of the procedures whose pages and papers it makes."""


TASK = TypeAdapter(Task)


def make_ahead(site: ReadSite, names: Sequence[str], cores: int) -> None:
    """Make what is costly about many procedures on so many cores, unless it is kept already.

    Raises PullcordError as `make_site`.
    """
    count = min(cores, MOST_PROCESSES, missing(site, names) // LEAST_SHARE)
    if count < 2 or not _can_keep(site.inputs.settings.cache_folder):
        return
    mine, *others = (tuple(names[first::count]) for first in range(count))
    with _at_work(Task(site.inputs, each) for each in others):
        make_share(site, mine)


def make_share(site: ReadSite, names: Iterable[str]) -> None:
    """Make all that is some procedures' own, for the folder of what is kept."""
    for make in share_of(site, frozenset(names)).later.values():
        make()


def missing(site: ReadSite, names: Sequence[str]) -> int:
    """Return of how many procedures the sheets are not kept, as far as a sample of them tells.

    None counts as missing while most are kept: a change to a few is not worth a process.
    """
    if len(names) < 2 * LEAST_SHARE:
        return 0
    sample = names[:: -(-len(names) // _SAMPLE)]
    files = {name: site.project.files[name] for name in sample}
    press = press_with(site.kit, replace(site.project, files=files), "a4")
    are_kept = [is_kept(order) for order in orders(press, ("flowchart",))]
    share = are_kept.count(False) / len(are_kept)
    return int(len(names) * share) if share > 1 / 2 else 0


def cores_at_hand() -> int:
    """Return how many cores this process may use."""
    if sys.platform == "linux":
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1


def _can_keep(folder: Path | None) -> bool:
    if folder is None:
        return False
    put(folder, ("nothing",), b"")
    return is_there(folder, ("nothing",))


@contextmanager
def _at_work(tasks: Iterable[Task]) -> Iterator[None]:
    """Have processes do tasks meanwhile. They are waited for; if anything goes wrong, they end."""
    with ExitStack() as ends:
        folder = Path(ends.enter_context(TemporaryDirectory(prefix="pullcord-")))
        begun: list[subprocess.Popen[bytes]] = []
        for number, task in enumerate(tasks):
            # Whether a helper can be had hangs on much that is not ours, and the build on none.
            with suppress(OSError, ValueError, TypeError):
                path = folder / str(number)
                path.write_bytes(TASK.dump_json(task))
                begun.append(_begin(path))
                ends.callback(_end, begun[-1])
        yield
        for process in begun:
            process.wait()


def _begin(task: Path) -> subprocess.Popen[bytes]:
    return subprocess.Popen(  # noqa: S603 (Python itself, and a module of ours)
        # Without -P a file of the project could take the place of a module.
        [PYTHON, "-P", "-m", __name__, task],
        stdin=subprocess.PIPE,
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
    )


def _end(process: subprocess.Popen[bytes]) -> None:
    process.terminate()  # If it has not ended by itself.
    process.wait()
    if process.stdin:
        process.stdin.close()


def main(path: Path) -> None:
    """Do a task that was written to a file; leave it when the build that wrote it is gone."""
    Thread(target=_watch_build, daemon=True).start()
    task = TASK.validate_json(path.read_bytes())
    make_share(read_inputs(task.inputs, "", ()), task.names)


def _watch_build() -> None:
    """Wait for the end of the build: the system then closes what it had open."""
    os.read(sys.stdin.fileno(), 1)
    _thread.interrupt_main()


if __name__ == "__main__":
    main(Path(sys.argv[1]))
