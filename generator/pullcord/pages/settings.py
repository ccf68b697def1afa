"""What a project may decide about its pages, and what only the build knows."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from pullcord.drawing.layout import Engine


@dataclass(frozen=True)
class Settings:
    """Given by whoever builds the site; pages never look at a clock or a repository."""

    build_date: str
    """The day of the build, such as `2026-03-01`."""
    revision: str
    """The revision of the sources, in whatever words the project counts them."""
    template_dirs: tuple[Path, ...] = ()
    """Folders whose files go before those shipped in `site_templates`, first one first."""
    currency: str = ""
    """What stands behind an amount of money, such as `EUR`; empty for the reader's own money."""
    layout_engine: Engine = "built-in"
    """What places the boxes of a flowchart."""
    cache_folder: Path | None = None
    """Where all that is costly to make is kept between builds; None keeps nothing."""
    home_uri: str = "index.md"
    """Where the page of symptoms lies; elsewhere when the project has a home page of its own."""
