"""Which shard a procedure belongs to."""

from __future__ import annotations

from hashlib import sha256
from pathlib import Path

import pytest

from pullcord.errors import SiteError
from pullcord.site.shards.number import Shard, parse_shard

NAMES = [f"made-up-{number}" for number in range(1000)]


@pytest.mark.parametrize(
    ("text", "shard"), [("1/1", Shard(1, 1)), ("2/5", Shard(2, 5)), ("100/100", Shard(100, 100))]
)
def test_what_is_written(text: str, shard: Shard) -> None:
    """A number and how many there are; written again it is the same."""
    assert parse_shard(text) == shard
    assert str(shard) == text


@pytest.mark.parametrize(
    "text", ["", "2", "0/3", "4/3", "1/0", "-1/3", "1/3/5", "a/b", "1 / 3", "01/3", "1/9999999"]
)
def test_what_is_no_shard(text: str) -> None:
    """It is said how to write one."""
    with pytest.raises(SiteError, match="is no shard: write the second of five as `2/5`"):
        parse_shard(text)


@pytest.mark.parametrize("count", [1, 2, 3, 7])
def test_every_procedure_has_one_shard(count: int) -> None:
    """None is lost, none is made twice, and the shards are about as large as each other."""
    shards = [Shard(number, count) for number in range(1, count + 1)]
    assert all([shard.holds(name) for shard in shards].count(True) == 1 for name in NAMES)
    sizes = [sum(map(shard.holds, NAMES)) for shard in shards]
    assert max(sizes) < 1.3 * len(NAMES) / count


def test_a_place_hangs_on_the_name_alone() -> None:
    """By SHA-256 (FIPS 180-4), so that every computer and every version finds the same place."""
    # The first example of FIPS 180-4's companion: SHA-256 of `abc` is ba7816bf ... f20015ad.
    last = 0xAD
    assert sha256(b"abc").digest()[-1] == last
    assert Shard(last % 2 + 1, 2).holds("abc")
    assert Shard(last % 256 + 1, 256).holds("abc")


def test_the_folder_stands_beside_the_site(tmp_path: Path) -> None:
    """Never in the site's own place."""
    assert Shard(2, 5).beside(tmp_path / "site") == tmp_path / "site.shard-2-of-5"
