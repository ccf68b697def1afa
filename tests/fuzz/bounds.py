"""How long one input may take, and how much memory: told, and never waited for."""

from __future__ import annotations

import resource
import signal
from collections.abc import Iterator
from contextlib import contextmanager
from types import FrameType

from tests.fuzz.targets import Target

MOST_SECONDS = 10
"""Of the processor's time, for one input: the clock also counts what others do meanwhile."""
MOST_MEGABYTES = 400
"""More than the process had before, which is some 100 for a program that runs by itself."""


class OutOfBoundsError(AssertionError):
    """An input took too long, or too much memory."""


def hold_within_bounds(target: Target, raw: bytes) -> None:
    """Run a target on one input; raise OutOfBoundsError when it takes too much."""
    before = peak_megabytes()
    with _bounded_time():
        target(raw)
    if (used := peak_megabytes() - before) > MOST_MEGABYTES:
        raise OutOfBoundsError(f"{used} MB were needed; {MOST_MEGABYTES} are the most")


def peak_megabytes() -> int:
    """Return the most memory this process has had so far, in MB."""
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss // 1024


@contextmanager
def _bounded_time() -> Iterator[None]:
    before = signal.signal(signal.SIGPROF, _stop)
    signal.setitimer(signal.ITIMER_PROF, MOST_SECONDS)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_PROF, 0)
        signal.signal(signal.SIGPROF, before)


def _stop(_number: int, _frame: FrameType | None) -> None:
    raise OutOfBoundsError(f"it took more than {MOST_SECONDS} seconds")
