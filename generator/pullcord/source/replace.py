"""A file changed in one go: whoever looks sees the old bytes or the new ones, never a part.

Beside `damson.yaml` stands, while it is changed, `.damson.yaml.part` with the new bytes, and in its
folder `.pullcord.lock`, which only one writer holds at a time. Whoever held it removes it; one who
waits for it then sees that it is gone, and begins anew.
"""

from __future__ import annotations

import errno
import os
import stat
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path

from filelock import FileLock, Timeout

from pullcord.errors import PullcordError
from pullcord.source.decode import MOST_BYTES
from pullcord.source.files import read_file

LOCK = ".pullcord.lock"
PATIENCE_SECONDS = 10.0
"""How long another writer is waited for; a change takes a few hundredths of a second."""


class WriteError(PullcordError):
    """A file could not be written; what stood there is untouched."""


def replace_file(
    path: Path,
    folder: Path,
    change: Callable[[bytes], bytes],
    patience_seconds: float = PATIENCE_SECONDS,
) -> bytes:
    """Put the bytes that `change` makes of a file's bytes in their place, and return them.

    `folder` is the one the file must lie in; a link inside of it is followed and stays a link. What
    `change` raises comes through, and the file stays as it was; so it does when it gives the same
    bytes. Raises WriteError when the file cannot be read or written, or another run holds it.
    """
    try:
        real = path.resolve()
        lock = FileLock(real.with_name(LOCK), timeout=patience_seconds)
        with lock:
            try:
                return _change(path, folder, change)
            finally:
                with suppress(OSError):
                    Path(lock.lock_file).unlink()
    except Timeout:
        raise WriteError(
            f"{path} is being written by another run: wait until it has ended, then say it again"
        ) from None
    except (OSError, RuntimeError) as error:
        raise _refused(path, error) from None


def _change(path: Path, folder: Path, change: Callable[[bytes], bytes]) -> bytes:
    old = read_file(path, folder)
    if not isinstance(old, bytes):
        raise WriteError(f"{path}: {old.message}")
    if len(old) > MOST_BYTES:
        raise WriteError(f"{path} has more than {MOST_BYTES} bytes, and is not touched")
    new = change(old)
    if new != old:
        real = path.resolve()
        write_whole(real, new, _mode_of(real))
    return new


def write_new(path: Path, raw: bytes) -> None:
    """Write a file that is not there yet. Raises WriteError, also when it is there."""
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        with path.open("xb") as file:
            file.write(raw)
            file.flush()
            os.fsync(file.fileno())
    except FileExistsError:
        raise WriteError(f"{path} is there already and is not written over") from None
    except OSError as error:
        raise _refused(path, error) from None


def write_whole(path: Path, raw: bytes, mode: int) -> None:
    """Write bytes beside a file and put them in its place. Raises OSError, the file untouched."""
    part = path.with_name(f".{path.name}.part")
    try:
        # A part that a killed run has left is no longer anybody's: the lock is ours.
        part.unlink(missing_ok=True)
        with part.open("xb") as file:
            file.write(raw)
            file.flush()
            part.chmod(mode)
            os.fsync(file.fileno())
        part.replace(path)
    except OSError:
        with suppress(OSError):
            part.unlink(missing_ok=True)
        raise
    _keep_name(path.parent)


def _mode_of(path: Path) -> int:
    mode = stat.S_IMODE(path.stat().st_mode)
    if not mode & stat.S_IWUSR:
        raise PermissionError(errno.EACCES, "it is write-protected")
    return mode


def _keep_name(folder: Path) -> None:
    """Have the disk keep the new name too. Not every system opens folders."""
    with suppress(OSError):
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)


def _refused(path: Path, error: Exception) -> WriteError:
    reason = getattr(error, "strerror", None) or str(error)
    return WriteError(f"{path} cannot be written: {reason}. What stood there is untouched.")
