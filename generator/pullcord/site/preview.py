"""A preview that follows what is saved: what it keeps from one build to the next.

A build that fails changes nothing in the folder that is served; what is wrong is put on top of the
pages as they go out. What no page shows, papers and files for one tablet, is made when it is asked
for. A page of ours that would come out as it did last time is not laid out again.
"""

from __future__ import annotations

import gc
import mimetypes
import os
import re
import tempfile
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from functools import cache, partial
from itertools import chain
from pathlib import Path
from threading import Lock, Timer
from typing import Any

from jinja2.bccache import Bucket, BytecodeCache

from pullcord.errors import PullcordError
from pullcord.pages.page import Page
from pullcord.site.assets import ADDRESS
from pullcord.site.find import Finding, index_assets
from pullcord.site.heading import anchor_ids
from pullcord.site.made import Made
from pullcord.site.report import heard, our_error
from pullcord.site.trouble import put_on_top, trouble_box

INDEX = f"{ADDRESS}/search-"
"""How the addresses of the search index begin."""
_REST_SECONDS = 1.0
"""How long after a build garbage is looked for."""
_FIRST_HEADING = re.compile(r"^(#|=+\s*$).*", re.MULTILINE)
App = Callable[[Mapping[str, Any], Callable[..., Any]], Iterable[bytes]]
"""A WSGI application (PEP 3333)."""


@dataclass(frozen=True)
class Kept:
    """A page as it last came out."""

    page: Page
    surroundings: str
    ids: frozenset[str]
    """What links may point at."""
    output: str
    finding: Finding
    """Gives what can be found on it."""


class Compiled(BytecodeCache):
    """The theme's templates, compiled once a preview and held in memory by their source."""

    def __init__(self) -> None:
        """Hold nothing yet."""
        self._held: dict[tuple[str, str], bytes] = {}

    def load_bytecode(self, bucket: Bucket) -> None:
        """Take up what is held."""
        held = self._held.get((bucket.key, bucket.checksum))
        if held is not None:
            bucket.bytecode_from_string(held)

    def dump_bytecode(self, bucket: Bucket) -> None:
        """Hold what was compiled."""
        self._held[bucket.key, bucket.checksum] = bucket.bytecode_to_string()


class Preview:
    """What is remembered while a preview runs."""

    def __init__(self) -> None:
        """Remember nothing yet."""
        self._later: Callable[[str], Callable[[], bytes] | None] = _nothing
        """Gives the maker of a file that is made when it is asked for, by its address."""
        self.compiled = Compiled()
        self.has_built = False
        """Whether there was a first build, good or not."""
        self._trouble = ""
        self._surroundings = ""
        self._kept: dict[str, Kept] = {}
        self._folder = Path()
        """What is served; every good build puts another in its place."""
        self._laying = Lock()
        self._cache: tempfile.TemporaryDirectory[str] | None = None

    def cache_beside(self, cache: str, watched: Iterable[str]) -> str:
        """Return the folder to keep things in: one that is not watched, or builds never end."""
        place = Path(cache).resolve()
        if not any(place.is_relative_to(Path(folder).resolve()) for folder in watched):
            return cache
        self._cache = self._cache or tempfile.TemporaryDirectory(prefix="pullcord-")
        return self._cache.name

    def take(self, made: Made, found: Iterable[Finding], folder: Path) -> None:
        """Take over what a good build leaves to be made: files, and the index of what is found.

        `folder` is the one that is served.
        """
        findings = tuple(found)

        @cache
        def index() -> Mapping[str, bytes]:
            entries = chain.from_iterable(finding() for finding in findings)
            return {asset.uri: asset.content for asset in index_assets(entries)}

        def maker(uri: str) -> Callable[[], bytes] | None:
            if uri.startswith(INDEX):
                return partial(index().__getitem__, uri) if uri in index() else None
            return made.later.get(uri)

        self._later, self._folder = maker, folder
        self._kept = {uri: kept for uri, kept in self._kept.items() if uri in made.pages}

    def fail(self, error: PullcordError) -> None:
        """Show on every page what is wrong, from now on."""
        self._trouble = trouble_box(error)

    def careful(self, build: Callable[[], None]) -> Callable[[], None]:
        """Return a build that never raises: it shows what is wrong, or that all is well again."""

        def build_or_tell() -> None:
            with heard() as lines, _collected_later():
                try:
                    build()
                except (Exception, SystemExit) as error:  # MkDocs calls a build off by SystemExit
                    self.fail(our_error(error, lines))
                else:
                    self._trouble = ""

        return build_or_tell

    def app(self, inner: App, mount: str) -> App:
        """Return an application that serves what `inner` does below `mount`, and what we add."""

        def serve(asked: Mapping[str, Any], begin: Callable[..., Any]) -> Iterable[bytes]:
            path = str(asked["PATH_INFO"]).encode("latin-1").decode("utf-8", "replace")
            make = self._later(path.removeprefix(mount))
            if make:
                return _made_now(path, make, begin)
            uri = f"{path}index.html" if path.endswith("/") else path
            kept = self._kept.get(f"{uri.removeprefix(mount).removesuffix('.html')}.md")
            whole = partial(self._with_kept, inner, kept) if kept else inner
            return _on_top(self._trouble, whole, asked, begin)

        return serve

    def _with_kept(
        self, inner: App, kept: Kept, asked: Mapping[str, Any], begin: Callable[..., Any]
    ) -> Iterable[bytes]:
        """Serve a page; lay it beside the others first if the last build left it out.

        `inner` waits for a build to end, and only then says that there is no such file.
        """
        told: list[Any] = []
        body = inner(asked, lambda *given: told.extend(given))
        if told[0].startswith("404"):
            with self._laying:
                path = self._folder / f"{kept.page.src_uri.removesuffix('.md')}.html"
                path.parent.mkdir(parents=True, exist_ok=True)
                path.write_text(kept.output, encoding="utf-8", errors="xmlcharrefreplace")
                return inner(asked, begin)
        begin(*told)
        return body

    def come_to(self, surroundings: Sequence[object]) -> None:
        """Note what stands around every page of this build: navigation, theme and settings."""
        self._surroundings = repr(surroundings)

    def kept(self, page: Page) -> Kept | None:
        """Return the page as it came out last time, if it would come out so again."""
        kept = self._kept.get(page.src_uri)
        is_same = kept and (kept.page, kept.surroundings) == (page, self._surroundings)
        return kept if is_same else None

    def remember(self, page: Page, output: str, finding: Finding) -> None:
        """Keep a page as it came out."""
        ids = frozenset(anchor_ids(page.html))
        self._kept[page.src_uri] = Kept(page, self._surroundings, ids, output, cache(finding))

    def close(self) -> None:
        """Leave nothing behind."""
        if self._cache:
            self._cache.cleanup()


@contextmanager
def _collected_later() -> Iterator[None]:
    """Look for garbage when the page is there. A build makes much, among far more that stays."""
    gc.disable()
    try:
        yield
    finally:
        gc.enable()
        later = Timer(_REST_SECONDS, gc.collect)
        later.daemon = True
        later.start()


def _nothing(uri: str) -> None:
    """Make nothing: before the first good build there is nothing to be made."""


def surroundings(config: Any, nav: Any, titles: Iterable[str]) -> list[object]:
    """Return what the theme prints around a page, or prints it by.

    `config` and `nav` are MkDocs's. Pages have no titles before they are read, hence the `titles`.
    """
    told = {key: value for key, value in config.items() if key not in ("plugins", "hooks", "theme")}
    theme = {key: config.theme[key] for key in sorted(config.theme)}
    folders = [config.theme.custom_dir] if config.theme.custom_dir else []
    files = [file for folder in folders for file in _files(Path(folder))]
    return [str(nav), repr(told), repr(theme), files, *titles]


def head_of(text: str) -> str:
    """Return the part of a Markdown page that can give it its title: up to its first heading."""
    found = _FIRST_HEADING.search(text)
    return text[: found.end()] if found else text


def _files(folder: Path) -> list[tuple[str, int, int]]:
    """Return every file of a folder with its time and size."""
    paths = (Path(parent, name) for parent, _, names in os.walk(folder) for name in names)
    found = ((path, path.stat()) for path in paths if path.is_file())
    return sorted((str(path), stat.st_mtime_ns, stat.st_size) for path, stat in found)


def _made_now(path: str, make: Callable[[], bytes], begin: Callable[..., Any]) -> Iterable[bytes]:
    try:
        content, status = make(), "200 OK"
        kind = mimetypes.guess_type(path)[0] or "application/octet-stream"
    except PullcordError as error:
        content, status, kind = str(error).encode(), "500 Internal Server Error", "text/plain"
    begin(status, [("Content-Type", kind), ("Content-Length", str(len(content)))])
    return [content]


def _on_top(
    box: str, inner: App, asked: Mapping[str, Any], begin: Callable[..., Any]
) -> Iterable[bytes]:
    if not box:
        return inner(asked, begin)
    told: list[Any] = []
    body = inner(asked, lambda *given: told.extend(given))
    status, headers = told[:2]
    if not any(key == "Content-Type" and "html" in value for key, value in headers):
        begin(status, headers)
        return body
    page = put_on_top(b"".join(body), box)
    rest = [(key, value) for key, value in headers if key != "Content-Length"]
    begin(status, [*rest, ("Content-Length", str(len(page)))])
    return [page]
