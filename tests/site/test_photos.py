"""Pictures go with the site when a job's page shows them, and only then."""

from __future__ import annotations

from pathlib import Path

from pullcord.project import load_project
from pullcord.site.photos import photo_assets
from tests.shed import write_files

JPEG = b"\xff\xd8\xff\xe0rest"
LOG = """\
job: {name}
machine: any
taken-in: 2026-02-14
purpose: To run.
most: 10
log:
  - {{date: 2026-02-21, did: Looked., photo: pictures/a.jpg}}
  - {{date: 2026-02-22, did: Again., photo: pictures/a.jpg}}
  - {{date: 2026-02-23, did: Gone., photo: pictures/gone.jpg}}
"""


def test_each_picture_once_for_each_job(tmp_path: Path) -> None:
    """At the address the job's page loads it from; what is not there is passed over."""
    write_files(tmp_path, {f"{name}.yaml": LOG.format(name=name) for name in ("one", "two")})
    (tmp_path / "pictures").mkdir()
    (tmp_path / "pictures" / "a.jpg").write_bytes(JPEG)
    (tmp_path / "pictures" / "unnamed.jpg").write_bytes(JPEG)
    found = {asset.uri: asset.content for asset in photo_assets(load_project([tmp_path]))}
    assert found == {
        "jobs/photos/one/pictures/a.jpg": JPEG,
        "jobs/photos/two/pictures/a.jpg": JPEG,
    }
