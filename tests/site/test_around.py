"""What stands around a page."""

from __future__ import annotations

import pytest

from pullcord.site.around import head_of, surroundings


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


def around(**settings: object) -> list[str]:
    """Return what stands around the pages of a site with these settings."""
    config = Config({"plugins": {}, "hooks": {}, **settings})
    return surroundings(config, "navigation", ["title"])


class Theme(dict[str, object]):
    """A theme without settings, as MkDocs has it."""

    custom_dir = None


class Config(dict[str, object]):
    """Settings as MkDocs has them."""

    theme = Theme()


def test_a_function_is_known_by_its_name() -> None:
    """Not by where it lies in the memory of one process."""
    told = " ".join(around(mdx_configs={"emoji": {"index": head_of}, "other": [sorted, str.upper]}))
    assert "pullcord.site.around.head_of" in told
    assert " at 0x" not in told
    assert around(site_name="Shed at 0x10") != around(site_name="Shed at 0x20")


def test_whatever_a_project_writes_can_be_told() -> None:
    """Keys of several kinds in any order, and data that holds itself."""
    extra: dict[object, object] = {1: "a", "b": None, None: {"set", "of", "words"}}
    assert around(extra=extra) == around(extra=dict(reversed(extra.items())))
    extra["again"] = extra
    assert around(extra=extra) != around(extra={})


@pytest.mark.parametrize("setting", ["site_dir", "strict", "docs_dir", "watch"])
def test_what_no_page_shows_is_not_told(setting: str) -> None:
    """A site built into another folder takes its pages from the same place."""
    assert around(**{setting: "one"}) == around(**{setting: "other"})
