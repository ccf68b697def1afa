"""A part as it is typed at the command line: `Spark plug=4.50 #ORCH-7 for spark-proved`.

The title ends at the last `=` that a price follows. Behind the price may stand the part number,
after a `#`, and the stage it was bought for, after the word `for`. A comma never parts anything,
so that a price written `4,50` is told rather than taken for 4.
"""

from __future__ import annotations

import re
from collections.abc import Mapping

from pullcord.model.job import Wanted
from pullcord.source.item import Data, Figure, Value

FORM = "TITLE=PRICE, such as `Spark plug=4.50`, and behind it `#NUMBER` and `for STAGE`"

_PART = re.compile(
    r"(?P<title>.*\S)\s*=\s*(?P<price>[\d.,]+)"
    r"(?:\s+#(?P<number>.*?\S))??(?:\s+for\s+(?P<serves>[a-z0-9-]+))?\s*"
)


class PartError(ValueError):
    """A part cannot be read; says what to write."""


def parse_part(text: str, wanted: Mapping[str, Wanted]) -> Data:
    """Return a part as plain data.

    When its title is a name in `wanted`, the title, the number and the stage written there are
    taken over, and the part is no longer wanted. Raises PartError.
    """
    match = _PART.fullmatch(text.strip())
    if match is None:
        raise PartError(f"`{text[:60]}` is no part: write {FORM}")
    if "," in match["price"]:
        point = match["price"].replace(",", ".")
        raise PartError(f"the price `{match['price']}` has a comma: write `{point}`")
    title, number, serves = match["title"], match["number"], match["serves"]
    listed = wanted.get(title)
    data: dict[str, Value | None] = {
        "title": listed.title if listed else title,
        "price": Figure(match["price"]),
        "number": number or (listed.number if listed else None),
        "serves": serves or (listed.serves if listed else None),
        "wanted": title if listed else None,
    }
    return {key: value for key, value in data.items() if value is not None}
