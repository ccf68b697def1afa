"""Which files of a theme are listed."""

from __future__ import annotations

from pathlib import Path
from types import SimpleNamespace

from jinja2 import Environment, FileSystemLoader

from pullcord.site.listing import list_without_hidden
from tests.shed import write_files


def test_hidden_folders_are_passed_over(tmp_path: Path) -> None:
    """Each name once, from whichever folder; what lies in a hidden one is left out."""
    files = ("page.html", "assets/a.css", ".icons/many/b.svg", "assets/.hidden/c.css")
    write_files(tmp_path / "theme", dict.fromkeys(files, "text"))
    write_files(tmp_path / "own", {"page.html": "text", "own.html": "text"})
    loader = FileSystemLoader([tmp_path / "own", tmp_path / "theme"])
    theme = SimpleNamespace(get_env=lambda: Environment(loader=loader, autoescape=True))
    list_without_hidden(theme)
    assert theme.get_env().list_templates() == ["assets/a.css", "own.html", "page.html"]
