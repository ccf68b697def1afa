"""Which folders an `mkdocs.yml` names, read without MkDocs."""

from __future__ import annotations

import pytest

from pullcord.source.settings import FolderSettings, options_place, read_folder_settings

CASES = {
    "only named": ("plugins: [search, pullcord]", FolderSettings()),
    "alone": ("plugins:\n  - pullcord\n", FolderSettings()),
    "with nothing behind it": ("plugins:\n  - search\n  - pullcord:\n", FolderSettings()),
    "as a mapping with nothing behind it": ("plugins:\n  pullcord:\n", FolderSettings()),
    "with notes behind it": (
        "plugins:\n  - pullcord:\n      # currency: crowns\nsite_name: x\n",
        FolderSettings(),
    ),
    "given twice": (
        "plugins:\n  - pullcord:\n    pullcord:\nplugins:\n  - pullcord:\n",
        FolderSettings(),
    ),
    "with nothing behind it, below what cannot be read": (
        "plugins:\n- pullcord:\n ?   librar: false\n",
        None,
    ),
    "below a list that opens in the middle": (
        "{plugins: [{pullcord{ :library: {a: false}, cache: c}}]}",
        None,
    ),
    "a folder": (
        "plugins:\n  - pullcord:\n      procedures: [ours]\n",
        FolderSettings(procedures=("ours",)),
    ),
    "everything": (
        "plugins:\n  - pullcord:\n      procedures: [a, b]\n      machines: [m]\n      jobs: [j]\n"
        "      library: false\n      replaces: [no-spark]\n",
        FolderSettings(("a", "b"), ("m",), ("j",), False, ("no-spark",)),
    ),
    "a meter": (
        "plugins:\n  - pullcord: {meter: {leads: 0.2 ohm}}\n",
        FolderSettings(meter={"leads": "0.2 ohm"}),
    ),
    "as a mapping": ("plugins:\n  pullcord: {library: no}\n", FolderSettings(library=False)),
    "beside tags": (
        "x: !!python/name:os.system\ny: !ENV [A, b]\nplugins: [pullcord]\n",
        FolderSettings(),
    ),
    "beside an alias": ("x: &x [1]\ny: *x\nplugins: [pullcord]\n", FolderSettings()),
    "with nonsense": ("plugins:\n  - pullcord:\n      procedures: {a: b}\n", FolderSettings()),
    "without us": ("plugins: [search]", None),
    "without plugins": ("site_name: x", None),
    "broken": ("plugins: [", None),
    "empty": ("", None),
}


@pytest.mark.parametrize(("text", "settings"), CASES.values(), ids=CASES)
def test_settings(text: str, settings: FolderSettings | None) -> None:
    """Our options, or None where the plugin is not listed."""
    assert read_folder_settings(text.encode()) == settings


PLACES = {
    "plugins: [search, pullcord: {meter: {}}]": ("plugins", 1, "pullcord"),
    "plugins: {search: {}, pullcord: {}}": ("plugins", "pullcord"),
    "plugins: [search, pullcord]": ("plugins", 1),
    "plugins: [search]": ("plugins",),
    "site_name: x": ("plugins",),
    "plugins: [": ("plugins",),
}


@pytest.mark.parametrize(("text", "place"), PLACES.items())
def test_where_our_options_stand(text: str, place: tuple[str | int, ...]) -> None:
    """As far as they are there, so that a finding can point at them."""
    assert options_place(text.encode()) == place
