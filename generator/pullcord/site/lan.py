"""A built site for the shop's own network: to be read, and nothing else.

Files of the folder go out to whoever asks by GET or HEAD. No folder is listed; nothing hidden, and
nothing that lies or leads outside of the folder, is given out. A build may replace the folder at
any time: it is looked up anew for every request.
"""

from __future__ import annotations

import mimetypes
import os
import socket
from collections.abc import Callable
from functools import partial
from http import HTTPStatus
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from shutil import copyfileobj
from typing import Any, BinaryIO
from urllib.parse import unquote

from pullcord.errors import SiteError

START = "index.html"
PORT = 8000
_KINDS = {
    ".css": "text/css",
    ".html": "text/html",
    ".js": "text/javascript",
    ".json": "application/json",
    ".pdf": "application/pdf",
    ".svg": "image/svg+xml",
    ".woff2": "font/woff2",
}
_PATIENCE_SECONDS = 30.0
_ELSEWHERE = ("192.0.2.1", 9)
"""An address for documentation (RFC 5737). Nothing is sent: the system only says which of our own
addresses would be used."""


class LanServer(ThreadingHTTPServer):
    """Serves one folder until it is shut down."""

    daemon_threads = True

    def handle_error(self, *_: object) -> None:
        """Say nothing: a reader who walked out of reach is no fault."""


def lan_server(site_dir: Path, host: str, port: int) -> LanServer:
    """Return a server for a built site, ready to run. Port 0 takes any that is free.

    Raises SiteError when the folder is no built site or the address cannot be had.
    """
    if not (site_dir / START).is_file():
        raise SiteError(f"{site_dir} is not a built site: run `pullcord build` first")
    try:
        return LanServer((host, port), partial(_Reader, site_dir.absolute()))
    except (OSError, OverflowError) as error:
        reason = getattr(error, "strerror", None) or error
        raise SiteError(
            f"{host}:{port} cannot be used: {reason}. Name another port with `--port`."
        ) from None


def own_address() -> str | None:
    """Return this computer's address in the network it is in; None when it is in none."""
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as probe:
        try:
            probe.connect(_ELSEWHERE)
        except OSError:
            return None
        return str(probe.getsockname()[0])


def find_file(site_dir: Path, path: str) -> Path | None:
    """Return the file that a request's path names, or None when it is not given out."""
    names = [name for name in unquote(path, errors="replace").split("/") if name]
    if any(name.startswith(".") or "\\" in name or "\0" in name for name in names):
        return None
    try:
        root = site_dir.resolve(strict=True)
        start = [START] if path.endswith("/") else []
        file = root.joinpath(*names, *start).resolve(strict=True)
    except (OSError, RuntimeError, ValueError):
        return None
    return file if file.is_relative_to(root) and file.is_file() else None


class _Reader(BaseHTTPRequestHandler):
    """Answers one request."""

    server_version = "Pullcord"
    sys_version = ""
    timeout = _PATIENCE_SECONDS
    protocol_version = "HTTP/1.1"

    def __init__(self, site_dir: Path, *given: Any) -> None:
        self._site_dir = site_dir
        super().__init__(*given)

    def do_HEAD(self) -> None:
        """Answer without the file."""
        self._answer(lambda content: None)

    def do_GET(self) -> None:
        """Answer with the file."""
        self._answer(lambda content: copyfileobj(content, self.wfile))

    def do_POST(self) -> None:
        """Refuse: there is nothing to be changed here."""
        self.send_error(HTTPStatus.METHOD_NOT_ALLOWED)

    do_PUT = do_DELETE = do_PATCH = do_OPTIONS = do_POST  # noqa: N815

    def _answer(self, send: Callable[[BinaryIO], None]) -> None:
        file = find_file(self._site_dir, self.path.partition("?")[0].partition("#")[0])
        try:
            content = file.open("rb") if file else None
        except OSError:
            content = None
        if file is None or content is None:
            self.send_error(HTTPStatus.NOT_FOUND)
            return
        with content:
            self.send_response(HTTPStatus.OK)
            self.send_header("Content-Type", _kind(file))
            self.send_header("Content-Length", str(os.fstat(content.fileno()).st_size))
            self.send_header("Cache-Control", "no-cache")
            self.send_header("X-Content-Type-Options", "nosniff")
            self.end_headers()
            send(content)

    def log_message(self, *_: object) -> None:
        """Say nothing: who reads which page is nobody's business."""


def _kind(file: Path) -> str:
    # What a system's own list says of scripts, a browser may refuse to run.
    ending = file.suffix.lower()
    kind = _KINDS.get(ending) or mimetypes.guess_type(file.name)[0] or "application/octet-stream"
    return f"{kind}; charset=utf-8" if kind.startswith("text/") else kind
