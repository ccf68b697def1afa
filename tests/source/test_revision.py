"""The revision of a folder, as Git itself tells it."""

from __future__ import annotations

import subprocess
from pathlib import Path

import pytest

from pullcord.source.revision import read_revision


def git(folder: Path, *words: str) -> str:
    """Run the real Git, with nothing of this machine's settings."""
    settings = ("-c", "user.name=A", "-c", "user.email=a@b.example", "-c", "commit.gpgsign=false")
    environment = {"GIT_CONFIG_GLOBAL": "/dev/null", "GIT_CONFIG_SYSTEM": "/dev/null", "PATH": PATH}
    done = subprocess.run(
        ["git", *settings, *words],
        cwd=folder,
        env=environment,
        check=True,
        capture_output=True,
        text=True,
    )
    return done.stdout.strip()


PATH = "/usr/local/bin:/usr/bin:/bin"


@pytest.fixture
def repository(tmp_path: Path) -> Path:
    """Make a repository with one commit."""
    git(tmp_path, "init", "--initial-branch=main", "house")
    house = tmp_path / "house"
    (house / "procedures").mkdir()
    git(house, "commit", "--allow-empty", "-m", "one")
    return house


def test_a_branch(repository: Path) -> None:
    """The commit the branch is at, from any folder below."""
    revision = git(repository, "rev-parse", "HEAD")
    assert read_revision(repository) == revision
    assert read_revision(repository / "procedures") == revision


def test_packed_references(repository: Path) -> None:
    """Git moves references into one file when it tidies up."""
    git(repository, "tag", "-a", "v1", "-m", "v1")
    git(repository, "pack-refs", "--all", "--prune")
    assert not (repository / ".git/refs/heads/main").exists()
    assert read_revision(repository) == git(repository, "rev-parse", "HEAD")


def test_no_branch(repository: Path) -> None:
    """A build server checks out a commit by itself."""
    git(repository, "checkout", "--detach")
    assert read_revision(repository) == git(repository, "rev-parse", "HEAD")


def test_a_worktree(repository: Path) -> None:
    """A second checkout has a file that tells where Git keeps its things."""
    git(repository, "worktree", "add", "-b", "second", "../second")
    git(repository, "commit", "--allow-empty", "-m", "two")
    second = repository.parent / "second"
    assert read_revision(second) == git(second, "rev-parse", "HEAD")
    assert read_revision(second) != read_revision(repository)


def test_no_commit_yet(tmp_path: Path) -> None:
    """There is no revision to tell."""
    git(tmp_path, "init")
    assert read_revision(tmp_path) is None


DAMAGED = {
    "empty": "",
    "not a revision": "abc",
    "out of the store": "ref: refs/../../secret",
    "a path of its own": "ref: /etc/passwd",
    "in a circle": "ref: refs/heads/main",
    "not text": "\udcff",
}


@pytest.mark.parametrize("head", DAMAGED.values(), ids=DAMAGED)
def test_a_damaged_store(tmp_path: Path, head: str) -> None:
    """Nothing is told rather than something wrong, and nothing else is read."""
    store = tmp_path / ".git"
    (store / "refs/heads").mkdir(parents=True)
    (tmp_path / "secret").write_text("0" * 40)
    (store / "HEAD").write_bytes(head.encode("utf-8", "surrogateescape"))
    (store / "refs/heads/main").write_text("ref: refs/heads/main")
    assert read_revision(tmp_path) is None


def test_no_repository(tmp_path: Path) -> None:
    """A folder that came as a zip has none, whatever lies around it."""
    (tmp_path / ".git").write_text("not a place\n")
    assert read_revision(tmp_path) is None
