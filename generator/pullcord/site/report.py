"""What goes wrong, in words: errors and findings handed from one face to another."""

from __future__ import annotations

import errno
import logging
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager

from pullcord.errors import FindingsError, PullcordError, SiteError
from pullcord.finding import Finding
from pullcord.rules.show import count_findings, show_finding

MKDOCS = "mkdocs"
"""The logger below which everything MkDocs and its plugins say is heard."""
FAULT = (
    "This is a fault in Pullcord or in another plugin, not in your files: the site stays as it "
    "was, and `mkdocs build --verbose` shows where it lies"
)
_FULL = {errno.ENOSPC, errno.EDQUOT, errno.EFBIG}
_FORBIDDEN = {errno.EACCES, errno.EPERM, errno.EROFS}


def disk_fault(error: OSError) -> str:
    """Return what a disk has refused, where, and what to do about it, as sentences."""
    reason, place = error.strerror or str(error), error.filename2 or error.filename
    return f"{reason} ({place}). {_mend(error)}" if place else f"{reason}. {_mend(error)}"


def _mend(error: OSError) -> str:
    if error.errno in _FULL:
        return "Free some room on that disk, then build again."
    if error.errno in _FORBIDDEN:
        return "Allow writing there, or name another folder as the site's, then build again."
    return "Mend that, or name another folder as the site's, then build again."


def list_findings(findings: tuple[Finding, ...]) -> str:
    """Return every finding with its place and how to mend it, below a line that counts them."""
    return "\n".join([count_findings(findings), *map(show_finding, findings)])


@contextmanager
def told_as(kind: Callable[[str], Exception]) -> Iterator[None]:
    """Turn our errors into the kind a face prints without a traceback."""
    try:
        yield
    except FindingsError as error:
        raise kind(list_findings(error.findings)) from error
    except PullcordError as error:
        raise kind(str(error)) from error


def our_error(error: BaseException, said: Iterable[str]) -> PullcordError:
    """Return our own error behind one of MkDocs's, else one of ours with what was said."""
    cause: BaseException | None = error
    while cause is not None:
        if isinstance(cause, PullcordError):
            return cause
        cause = cause.__cause__ or cause.__context__
    lines = list(dict.fromkeys(said))
    if hasattr(error, "format_message"):
        # Where MkDocs calls a build off by an exit, it has said why, and the error says no more.
        is_new = not isinstance(error, SystemExit) and str(error) not in lines
        lines += [str(error)] if is_new else []
    else:
        lines.append(f"{type(error).__name__}: {error}\n{FAULT}")
    return SiteError("\n".join(lines or [str(error)]))


def has_counted_warnings() -> bool:
    """Tell whether a strict build will be called off at its end: one handler counts warnings."""
    handlers = logging.getLogger(MKDOCS).handlers
    return any(handler.get_counts() for handler in handlers if hasattr(handler, "get_counts"))


@contextmanager
def heard() -> Iterator[list[str]]:
    """Give a list that fills with the errors MkDocs logs meanwhile; warnings go where logs go."""
    listener = _Listener()
    logger = logging.getLogger(MKDOCS)
    logger.addHandler(listener)
    try:
        yield listener.errors
    finally:
        logger.removeHandler(listener)


class _Listener(logging.Handler):
    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.errors: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        if record.levelno >= logging.ERROR:
            self.errors.append(record.getMessage())
        elif logging.lastResort and not _is_shown():
            # Where nobody set up logging, Python shows warnings only while no handler listens.
            logging.lastResort.handle(record)


def _is_shown() -> bool:
    """Tell whether somebody has set up a handler that writes."""
    loggers = (logging.getLogger(), logging.getLogger(MKDOCS))
    return any(isinstance(each, logging.StreamHandler) for log in loggers for each in log.handlers)
