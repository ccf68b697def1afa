"""A project of one's own: settings, folders, an example of each kind of file, and schemas."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import Path

from pullcord.model.schema import KINDS, schema_text
from pullcord.site.begin import BeginError, as_name, render_start
from pullcord.site.begin_file import Kind, render_file
from pullcord.source.choice import SETTINGS
from pullcord.source.modeline import SCHEMAS, schema_name
from pullcord.source.replace import write_new

_TEXTS: Mapping[str, str] = {
    SETTINGS: "mkdocs.yml",
    "docs/our-shop.md": "our-shop.md",
    ".gitignore": "gitignore",
}
_EXAMPLES: tuple[tuple[Kind, str, str], ...] = (
    ("procedure", "procedures/lamp-stays-dark.yaml", "example.yaml"),
    ("machine", "machines/first-machine.yaml", "machine.yaml"),
    ("job", "jobs/first-job.yaml", "job.yaml"),
)


def begin_project(folder: Path, title: str, today: str) -> tuple[Path, ...]:
    """Write a project into a folder, and return its files in the order one meets them.

    `title` is the site's name; the folder's, when it is empty. Raises BeginError when one of the
    files is there already, and WriteError when one cannot be written.
    """
    own = as_name(folder.resolve().name).replace("-", " ").capitalize()
    files = dict(_files(folder, title.strip() or own or "Our shop", today))
    taken = next((path for path in files if path.exists() or path.is_symlink()), None)
    if taken is not None:
        raise BeginError(f"{taken} is there already: name a new or an empty folder")
    for path, text in files.items():
        write_new(path, text.encode())
    return tuple(files)


def _files(folder: Path, title: str, today: str) -> Iterator[tuple[Path, str]]:
    """Yield the text of each file."""
    for name, template in _TEXTS.items():
        yield folder / name, render_start(template, {"title": title})
    for kind, name, template in _EXAMPLES:
        path = folder / name
        answers = {
            "name": path.stem,
            "title": "First machine",
            "kind": "pump",
            "ignition": "",
            "strokes": "",
            "machine": "first-machine",
            "purpose": "To run on its own parts again.",
            "most": "100",
            "today": today,
            "has_stages": True,
        }
        yield path, render_file(path, kind, template, answers, folder / SCHEMAS)
    for each in KINDS:
        yield folder / SCHEMAS / schema_name(each), schema_text(each)
