"""Only real pictures below the log's own folder are ever taken into a site."""

from __future__ import annotations

from pathlib import Path

import pytest

from pullcord.source.photo import MOST_BYTES, find_photo

JPEG = b"\xff\xd8\xff\xe0rest"
PNG = b"\x89PNG\r\n\x1a\nrest"


@pytest.fixture
def log(tmp_path: Path) -> Path:
    """Give a log with pictures beside it, and one outside of its folder."""
    folder = tmp_path / "jobs"
    (folder / "pictures").mkdir(parents=True)
    for name, content in {
        "pictures/coil.jpg": JPEG,
        "pictures/COIL.JPEG": JPEG,
        "plug.png": PNG,
        "script.svg": b"<svg onload='x'/>",
        "page.jpg": b"<html><script>x</script>",
        "empty.png": b"",
        "large.jpg": JPEG + b"0" * MOST_BYTES,
    }.items():
        (folder / name).write_bytes(content)
    (tmp_path / "outside.jpg").write_bytes(JPEG)
    (folder / "link.jpg").symlink_to(tmp_path / "outside.jpg")
    (folder / "folder.jpg").mkdir()
    return folder / "spring.yaml"


@pytest.mark.parametrize("photo", ["pictures/coil.jpg", "pictures/COIL.JPEG", "plug.png"])
def test_a_picture_is_found(log: Path, photo: str) -> None:
    """By the path the log names it with, whatever the case of its ending."""
    assert find_photo(log, photo) == (log.parent / photo).resolve()


@pytest.mark.parametrize(
    "photo",
    [
        "../outside.jpg", "link.jpg", "script.svg", "page.jpg", "empty.png", "large.jpg",
        "missing.jpg", "folder.jpg", "spring.yaml", "/etc/hostname",
    ],
)  # fmt: skip
def test_anything_else_is_left_out(log: Path, photo: str) -> None:
    """Outside, a link that leads there, no picture by its bytes, too large, or not there."""
    assert find_photo(log, photo) is None
