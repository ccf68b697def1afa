"""Other processes that make a share of a large build each, so that every core has work.

They read the same files and fill the folder of what is kept, and hand nothing back. The build then
finds everything there, and makes what it does not find: a helper that fails costs time, no more.
"""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager, suppress
from dataclasses import dataclass, replace
from tempfile import TemporaryFile

from pydantic import TypeAdapter

from pullcord.printing.output import is_kept, orders
from pullcord.printing.press import press_with
from pullcord.site.read import Inputs, ReadSite, read_inputs
from pullcord.site.share import share_of

LEAST_SHARE = 12
"""With fewer procedures to be made, a process spends more time on its start than it saves."""
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
    count = min(cores, missing(site, names) // LEAST_SHARE)
    if count < 2 or site.inputs.settings.cache_folder is None:
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

    A change to a few is not worth a process, and one to all of them shows in any sample.
    """
    if len(names) < 2 * LEAST_SHARE:
        return 0
    sample = names[:: -(-len(names) // _SAMPLE)]
    files = {name: site.project.files[name] for name in sample}
    press = press_with(site.kit, replace(site.project, files=files), "a4")
    are_kept = [is_kept(order) for order in orders(press, ("flowchart",))]
    return len(names) * are_kept.count(False) // len(are_kept)


def cores_at_hand() -> int:
    """Return how many cores this process may use."""
    if sys.platform == "linux":
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1


@contextmanager
def _at_work(tasks: Iterable[Task]) -> Iterator[None]:
    """Have processes do tasks meanwhile; they are waited for, unless something goes wrong here."""
    begun = [process for task in tasks for process in _begin(task)]
    try:
        yield
    except BaseException:
        for process in begun:
            process.terminate()
        raise
    finally:
        for process in begun:
            process.wait()


def _begin(task: Task) -> Iterator[subprocess.Popen[bytes]]:
    """Yield the process that does a task, if one can be had."""
    with suppress(OSError), TemporaryFile() as given:
        given.write(TASK.dump_json(task))
        given.seek(0)
        yield subprocess.Popen(  # noqa: S603 (Python itself, and a module of ours)
            [PYTHON, "-m", __name__],
            stdin=given,
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
        )


def main(given: bytes) -> None:
    """Do a task that was given as JSON."""
    task = TASK.validate_json(given)
    make_share(read_inputs(task.inputs, "", ()), task.names)


if __name__ == "__main__":
    main(sys.stdin.buffer.read())
