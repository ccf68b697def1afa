"""A built site in the shop's network: read, never changed, and nothing else is given out."""

from __future__ import annotations

import http.client
import os
import socket
import threading
from collections.abc import Iterator
from pathlib import Path

import pytest

from pullcord.errors import SiteError
from pullcord.site.beside import claim, swap
from pullcord.site.lan import LanServer, find_file, lan_server, own_address
from tests.shed import write_files

FILES = {
    "shed/site/index.html": "<p>home</p>",
    "shed/site/procedures/no spark.html": "<p>no spark</p>",
    "shed/site/assets/walk.js": "walk()",
    "shed/site/print/chart.pdf": "%PDF-",
    "shed/site/empty/note.txt": "Ω",
    "shed/site/.git/config": "secret",
    "shed/site/.hidden": "secret",
    "shed/secret.txt": "secret",
    "secret.txt": "secret",
}
POLL_SECONDS = 0.01
"""How soon a server that is shut down takes notice."""


@pytest.fixture
def site(tmp_path: Path) -> Path:
    """Write a site beside what must not get out, with links that lead out of it."""
    write_files(tmp_path, FILES)
    site = tmp_path / "shed" / "site"
    (site / "out.txt").symlink_to(tmp_path / "secret.txt")
    (site / "outer").symlink_to(tmp_path)
    (site / "round").symlink_to(site / "round")
    (site / "in.html").symlink_to(site / "index.html")
    return site


@pytest.fixture
def server(site: Path) -> Iterator[LanServer]:
    """Serve the site on a free port."""
    with lan_server(site, "127.0.0.1", 0) as server:
        thread = threading.Thread(target=server.serve_forever, args=(POLL_SECONDS,))
        thread.start()
        yield server
        server.shutdown()
        thread.join()


def ask(
    server: LanServer, path: str, method: str = "GET"
) -> tuple[int, bytes, http.client.HTTPMessage]:
    """Ask for a path exactly as it is written."""
    connection = http.client.HTTPConnection("127.0.0.1", server.server_address[1], timeout=10)
    connection.putrequest(method, path, skip_host=False)
    connection.endheaders()
    answer = connection.getresponse()
    body = answer.read()
    connection.close()
    return answer.status, body, answer.headers


GIVEN = {
    "/": ("text/html; charset=utf-8", "<p>home</p>"),
    "/index.html?x=1": ("text/html; charset=utf-8", "<p>home</p>"),
    "/procedures/no%20spark.html": ("text/html; charset=utf-8", "<p>no spark</p>"),
    "/assets/walk.js": ("text/javascript; charset=utf-8", "walk()"),
    "/print/chart.pdf": ("application/pdf", "%PDF-"),
    "/empty/note.txt": ("text/plain; charset=utf-8", "Ω"),
    "//index.html": ("text/html; charset=utf-8", "<p>home</p>"),
    "/in.html": ("text/html; charset=utf-8", "<p>home</p>"),
}


@pytest.mark.parametrize("path", GIVEN)
def test_files_are_given(server: LanServer, path: str) -> None:
    """Each file comes whole and as what it is, and a browser may not take it for anything else."""
    status, body, headers = ask(server, path)
    kind, text = GIVEN[path]
    assert (status, body.decode(), headers["Content-Type"]) == (200, text, kind)
    assert headers["Content-Length"] == str(len(body))
    assert headers["X-Content-Type-Options"] == "nosniff"
    assert headers["Cache-Control"] == "no-cache"


@pytest.mark.parametrize("path", GIVEN)
def test_head_tells_without_giving(server: LanServer, path: str) -> None:
    """HEAD has the same headers and no body."""
    status, body, headers = ask(server, path, "HEAD")
    assert (status, body) == (200, b"")
    assert headers["Content-Length"] == str(len(GIVEN[path][1].encode()))


REFUSED = (
    "/procedures/",
    "/procedures",
    "/empty/",
    "/nothing.html",
    "/../secret.txt",
    "/procedures/../../secret.txt",
    "/%2e%2e/secret.txt",
    "/%2E%2E%2Fsecret.txt",
    "/..%2fsecret.txt",
    "/..%5csecret.txt",
    "/..\\secret.txt",
    "//../../secret.txt",
    "/./../secret.txt",
    "/%252e%252e/secret.txt",
    "/.hidden",
    "/%2ehidden",
    "/.git/config",
    "/out.txt",
    "/outer/secret.txt",
    "/outer/shed/secret.txt",
    "/round",
    "/index.html%00.txt",
    "/index.html/",
    "/%ff%fe",
    "/" + "a" * 5000,
    "/" + "a/" * 5000,
    "//[",
    "/C:/secret.txt",
)


@pytest.mark.parametrize("path", REFUSED, ids=[path[:40] for path in REFUSED])
def test_nothing_else_is_given(server: LanServer, path: str) -> None:
    """No folder is listed, nothing hidden shown, and no way leads out of the site."""
    status, body, _ = ask(server, path)
    assert status == 404
    assert b"secret" not in body.replace(path.encode(), b"")
    assert b"note.txt" not in body


def test_an_absolute_path_does_not_lead_out(server: LanServer, site: Path) -> None:
    """The path of another file on the disk is looked for inside the site."""
    assert ask(server, f"/{site.parent}/secret.txt")[0] == 404
    assert ask(server, f"/{site.parent}/secret.txt".replace("/", "%2f"))[0] == 404


@pytest.mark.parametrize("method", ["POST", "PUT", "DELETE", "PATCH", "OPTIONS"])
def test_nothing_can_be_changed(server: LanServer, site: Path, method: str) -> None:
    """There is nothing but reading."""
    assert ask(server, "/index.html", method)[0] == 405
    assert (site / "index.html").read_text("utf-8") == "<p>home</p>"


@pytest.mark.parametrize("said", [b"\r\n\r\n", b"NONSENSE\r\n\r\n", b"GET / HTTP/9.9\r\n\r\n", b""])
def test_nonsense_does_not_stop_it(server: LanServer, said: bytes) -> None:
    """Whoever says something else, or walks away, is no trouble to the next reader."""
    with socket.create_connection(server.server_address[:2], timeout=10) as line:
        line.sendall(said)
        line.shutdown(socket.SHUT_WR)
        line.recv(1024)
    assert ask(server, "/")[0] == 200


def test_a_new_build_is_served_at_once(server: LanServer, site: Path) -> None:
    """The folder may be replaced while the site is being read."""
    for name in ("out.txt", "outer", "round", "in.html"):
        (site / name).unlink()
    beside = claim(site)
    (beside.new / "index.html").write_text("<p>new</p>", encoding="utf-8")
    swap(beside)
    assert ask(server, "/")[1] == b"<p>new</p>"


def test_only_a_built_site_is_served(tmp_path: Path) -> None:
    """A folder without a home page is no site, and the words say what to do."""
    with pytest.raises(SiteError, match="run `pullcord build` first"):
        lan_server(tmp_path, "127.0.0.1", 0)


def test_a_port_that_is_taken_is_told(server: LanServer, site: Path) -> None:
    """The words name the way out."""
    with pytest.raises(SiteError, match="Name another port"):
        lan_server(site, "127.0.0.1", server.server_address[1])


def test_a_link_to_a_site_is_followed(site: Path, tmp_path: Path) -> None:
    """The site's own folder may be a link; links inside it may not lead out all the same."""
    link = tmp_path / "link"
    link.symlink_to(site)
    assert find_file(link, "/index.html") == site / "index.html"
    assert find_file(link, "/out.txt") is None


def test_a_site_that_is_gone_gives_nothing(tmp_path: Path) -> None:
    """While a folder is not there, nothing is found."""
    assert find_file(tmp_path / "gone", "/index.html") is None


def test_own_address_is_one_of_this_computer() -> None:
    """It can be bound to, or there is none."""
    address = own_address()
    if address is not None:
        with socket.socket(socket.AF_INET) as probe:
            probe.bind((address, 0))
    assert address is None or os.sep not in address
