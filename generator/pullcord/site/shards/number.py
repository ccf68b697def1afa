"""Which shard of a library a procedure belongs to."""

from __future__ import annotations

import re
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path

from pullcord.errors import SiteError

_WRITTEN = re.compile(r"([1-9]\d{0,5})/([1-9]\d{0,5})")


@dataclass(frozen=True, order=True)
class Shard:
    """One of several equal parts of a library."""

    number: int
    """From 1."""
    count: int
    """How many there are."""

    def __str__(self) -> str:
        """Write it as it is asked for."""
        return f"{self.number}/{self.count}"

    def holds(self, procedure: str) -> bool:
        """Say whether a procedure belongs here. It hangs on its name: a new one moves no other."""
        digest = sha256(procedure.encode()).digest()
        return int.from_bytes(digest) % self.count == self.number - 1

    def beside(self, site_dir: Path) -> Path:
        """Return the shard's own folder beside that of the whole site."""
        site = site_dir.resolve()
        return site.with_name(f"{site.name}.shard-{self.number}-of-{self.count}")


def parse_shard(text: str) -> Shard:
    """Read what is written `2/5`. Raises SiteError for anything else."""
    found = _WRITTEN.fullmatch(text)
    shard = Shard(*map(int, found.groups())) if found else Shard(1, 0)
    if shard.number > shard.count:
        raise SiteError(f"`{text}` is no shard: write the second of five as `2/5`")
    return shard
