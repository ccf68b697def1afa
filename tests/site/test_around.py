"""What stands around a page."""

from __future__ import annotations

import pytest

from pullcord.site.around import head_of


@pytest.mark.parametrize(
    ("text", "head"),
    [
        ("# Lamp\n\nText\n", "# Lamp"),
        ("Text\n\nLamp\n====\n\nMore\n", "Text\n\nLamp\n===="),
        ("---\n# a remark\ntitle: Lamp\n---\n\n# Head\nText\n",
         "---\n# a remark\ntitle: Lamp\n---\n\n# Head"),
        ("no heading\n", "no heading\n"),
    ],
)  # fmt: skip
def test_what_can_give_a_page_its_title(text: str, head: str) -> None:
    """Front matter is whole, whatever stands in it; below the first heading nothing counts."""
    assert head_of(text) == head
