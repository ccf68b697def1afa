"""The new site is built beside the last good one and takes its place in one go.

Whatever goes wrong before that leaves the last good site as it was. Beside `site` stands, while
a build runs, the folder `.site.building` with everything the build needs:

    lock    held by the one build that may run; the system lets go of it when the build dies
    new     the site that is being built; the last good one, once the two have changed places
    old     where a system cannot let folders change places: the last good site, for the moment
            between two renames. A build that dies in that moment leaves it to the next to put back
"""

from __future__ import annotations

import shutil
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

from filelock import BaseFileLock, FileLock, Timeout

from pullcord.errors import SiteError
from pullcord.site.exchange import exchange
from pullcord.site.report import disk_fault


@dataclass(frozen=True)
class Beside:
    """A claim on the place beside one site."""

    final: Path
    """Where readers find the site."""
    lock: BaseFileLock

    @property
    def holder(self) -> Path:
        """The folder that holds the other three; gone when no build runs."""
        return _holder(self.final)

    @property
    def new(self) -> Path:
        """Where the site is being built."""
        return self.holder / "new"

    @property
    def old(self) -> Path:
        """Where the last good site waits during the swap."""
        return self.holder / "old"


def claim(site_dir: Path) -> Beside:
    """Claim the place beside a site, clear what a killed build left there, make an empty `new`.

    A symbolic link is followed, so that the link itself stays.

    Raises SiteError when another build holds the place, nothing can be written there, or what
    stands there is no site.
    """
    try:
        final = site_dir.resolve()
    except ValueError:
        raise SiteError(
            f"{str(site_dir)!r} is a name no disk takes: name another folder for the site"
        ) from None
    _check_may_be_replaced(final)
    try:
        _holder(final).mkdir(parents=True, exist_ok=True)
        beside = Beside(final, FileLock(_holder(final) / "lock"))
        beside.lock.acquire(blocking=False)
    except (Timeout, FileNotFoundError):
        # Not found: the other run has just ended, and cleared the place away.
        raise SiteError(
            f"{final} is being built by another run. Wait until it has ended, then build again."
        ) from None
    except OSError as error:
        raise _refused(final, error) from None
    try:
        _clear(beside)
        beside.new.mkdir()
    except OSError as error:
        discard(beside)
        raise _refused(final, error) from None
    return beside


def swap(beside: Beside) -> Path:
    """Put the new site in the place of the old one, and return that place.

    Raises SiteError, with the old site in its place, when that cannot be done.
    """
    try:
        _keep_hidden(beside)
        if not beside.final.exists():
            beside.new.rename(beside.final)
        elif not exchange(beside.new, beside.final):
            beside.final.rename(beside.old)
            beside.new.rename(beside.final)
    except OSError as error:
        raise _refused(beside.final, error) from None
    finally:
        discard(beside)
    return beside.final


def discard(beside: Beside) -> None:
    """Give up the claim and leave nothing beside the site. May be called twice."""
    if not beside.lock.is_locked:
        return
    with suppress(OSError):
        _put_back(beside)
    shutil.rmtree(beside.new, ignore_errors=True)
    # A last good site that could not be put back stays there for the next build to put back.
    if beside.final.exists():
        shutil.rmtree(beside.old, ignore_errors=True)
    # The lock goes last and while it is held: what another run may have begun is not touched.
    with suppress(OSError):
        Path(beside.lock.lock_file).unlink()
    beside.lock.release()
    with suppress(OSError):
        beside.holder.rmdir()


def _holder(final: Path) -> Path:
    return final.with_name(f".{final.name}.building")


def _check_may_be_replaced(final: Path) -> None:
    """A slip of the pen must not cost anybody a folder of photographs."""
    if not final.exists():
        return
    seen = not final.is_dir() or any(not entry.name.startswith(".") for entry in final.iterdir())
    if seen and not (final / "index.html").is_file():
        raise SiteError(
            f"{final} holds something that is not a built site (it has no index.html), and a build "
            "would replace it. Name a new or an empty folder as the site's."
        )


def _clear(beside: Beside) -> None:
    _put_back(beside)
    for left in (beside.new, beside.old):
        if left.exists():
            shutil.rmtree(left)


def _put_back(beside: Beside) -> None:
    if beside.old.exists() and not beside.final.exists():
        beside.old.rename(beside.final)


def _keep_hidden(beside: Beside) -> None:
    """Take along what a shop keeps in its site under a name with a dot, as MkDocs does."""
    if not beside.final.is_dir():
        return
    for entry in beside.final.glob(".*"):
        target = beside.new / entry.name
        if target.exists():
            continue
        if entry.is_dir() and not entry.is_symlink():
            shutil.copytree(entry, target, symlinks=True)
        else:
            shutil.copy2(entry, target, follow_symlinks=False)


def _refused(final: Path, error: OSError) -> SiteError:
    return SiteError(
        f"The site cannot be written to {final}, what stood there is untouched: {disk_fault(error)}"
    )
