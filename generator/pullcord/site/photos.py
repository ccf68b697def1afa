"""The pictures that job logs name, as files of the site."""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.pages.address import photo_uri
from pullcord.pages.job_page import shown_photos
from pullcord.project import Project
from pullcord.site.assets import Asset
from pullcord.source.photo import find_photo


def photo_assets(project: Project) -> Iterator[Asset]:
    """Yield every picture that a job's page shows."""
    for name, read in project.jobs.items():
        for photo in sorted(shown_photos(read)):
            if path := find_photo(read.path, photo):
                yield Asset(photo_uri(name, photo), path.read_bytes())
