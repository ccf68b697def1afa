"""How often a command that reads much and keeps nearly all of it looks for garbage."""

from __future__ import annotations

import atexit
import gc
from collections.abc import Iterator
from contextlib import contextmanager

_NEW_THINGS = 50_000


@contextmanager
def garbage_collected_seldom() -> Iterator[None]:
    """Let Python look for garbage among new things only, and not so often.

    Nearly all that is read is kept to the end: looking through it again and again, as Python
    otherwise does, takes a tenth of the time. Nor is it taken apart, piece by piece, when the
    process ends.
    """
    atexit.register(gc.freeze)
    before = gc.get_threshold()
    gc.set_threshold(_NEW_THINGS, 1000, 1000)
    try:
        yield
    finally:
        # All that is there counts as old from here on, without having been looked through.
        gc.freeze()
        gc.unfreeze()
        gc.set_threshold(*before)
