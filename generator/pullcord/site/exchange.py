"""Two folders change places in one go, where the system can do that."""

from __future__ import annotations

import ctypes
import errno
import os
from pathlib import Path

_HERE = -100
_EXCHANGE = 2
"""AT_FDCWD and RENAME_EXCHANGE: renameat2(2) of Linux, `linux/fcntl.h` and `linux/fs.h`."""
_CANNOT = {errno.ENOSYS, errno.EINVAL, errno.EOPNOTSUPP}
"""What a system, or a disk of a kind, answers that does not know how."""


def exchange(one: Path, other: Path) -> bool:
    """Let two folders change places, so that there is no moment without either; False if it cannot.

    Only Linux can, on most of its disks. Raises OSError when it can and something else is wrong;
    then nothing has moved.
    """
    rename = _system_call()
    if rename is None:
        return False
    if rename(_HERE, os.fsencode(one), _HERE, os.fsencode(other), _EXCHANGE) == 0:
        return True
    reason = ctypes.get_errno()
    if reason in _CANNOT:
        return False
    raise OSError(reason, os.strerror(reason), str(other))


def _system_call() -> ctypes._NamedFuncPointer | None:
    try:
        return ctypes.CDLL(None, use_errno=True).renameat2
    except (AttributeError, OSError, TypeError):
        return None
