"""Which folders an `mkdocs.yml` names, read without MkDocs."""

from __future__ import annotations

import pytest

from pullcord.source.settings import FolderSettings, read_folder_settings

CASES = {
    "only named": ("plugins: [search, pullcord]", FolderSettings()),
    "alone": ("plugins:\n  - pullcord\n", FolderSettings()),
    "a folder": (
        "plugins:\n  - pullcord:\n      procedures: [ours]\n",
        FolderSettings(procedures=("ours",)),
    ),
    "everything": (
        "plugins:\n  - pullcord:\n      procedures: [a, b]\n      machines: [m]\n"
        "      library: false\n      replaces: [no-spark]\n",
        FolderSettings(("a", "b"), ("m",), False, ("no-spark",)),
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
