"""A preview that follows what is saved: what it keeps from one build to the next.

A build that fails changes nothing in the folder that is served; what is wrong is put on top of the
pages as they go out. What no page shows, papers and files for one tablet, is made when it is asked
for. A page of ours that would come out as it did last time is not laid out again.
"""

from __future__ import annotations

import gc
import mimetypes
import tempfile
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from contextlib import contextmanager, suppress
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
LOOK_SECONDS = 0.1
"""How long a preview rests between two looks for changes; MkDocs's own half a second is felt."""
SETTLE_SECONDS = 0.05
"""How long it waits for more changes before it builds; one that comes later gets a build too."""
_TRIES = 3
"""How often a page is asked for that a build may have taken away again."""
_REST_SECONDS = 1.0
"""How long after a build garbage is looked for."""
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
        """By source, the pages of the last good build."""
        self._coming: dict[str, Kept] = {}
        """Those that came out anew in the build that runs."""
        self._folder = Path()
        """What is served; every good build puts another in its place."""
        self._changing = Lock()
        """Held by whoever changes what is served."""
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
        kept = {**self._kept, **self._coming}
        self._kept = {uri: kept[uri] for uri in made.pages if uri in kept}

    def fail(self, error: PullcordError) -> None:
        """Show on every page what is wrong, from now on."""
        self._trouble = trouble_box(error)

    def careful(self, build: Callable[[], None]) -> Callable[[], None]:
        """Return a build that never raises: it shows what is wrong, or that all is well again."""

        def build_or_tell() -> None:
            with self._changing, heard() as lines, _collected_later():
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
            uri = path.removeprefix(mount)
            make = self._later(uri)
            if make:
                return _made_now(path, make, begin)
            if uri.endswith(".html"):
                return _on_top(self._trouble, partial(self._with_kept, inner, uri), asked, begin)
            return _on_top(self._trouble, inner, asked, begin)

        return serve

    def _with_kept(
        self, inner: App, uri: str, asked: Mapping[str, Any], begin: Callable[..., Any]
    ) -> Iterable[bytes]:
        """Serve a page; lay it beside the others first if the last build left it out.

        `inner` waits for a build to end, and only then says that there is no such file.
        """
        for _ in range(_TRIES):
            told: list[Any] = []
            body = inner(asked, lambda *given, told=told: told.extend(given))
            if not told[0].startswith("404") or not self._lay(uri):
                break
        begin(*told)
        return body

    def _lay(self, uri: str) -> bool:
        """Write a page as it last came out, if the last good build left it out."""
        with self._changing:
            kept = self._kept.get(f"{uri.removesuffix('.html')}.md")
            if kept is None:
                return False
            path = self._folder / uri
            with suppress(OSError):
                path.parent.mkdir(parents=True, exist_ok=True)
                beside = path.with_suffix(".new")
                beside.write_text(kept.output, encoding="utf-8", errors="xmlcharrefreplace")
                beside.replace(path)
            return path.exists()

    def come_to(self, surroundings: Sequence[object]) -> None:
        """Begin a build with what stands around every page."""
        self._surroundings, self._coming = repr(surroundings), {}

    def kept(self, page: Page) -> Kept | None:
        """Return the page as it came out last time, if it would come out so again."""
        kept = self._kept.get(page.src_uri)
        is_same = kept and (kept.page, kept.surroundings) == (page, self._surroundings)
        return kept if is_same else None

    def remember(self, page: Page, output: str, finding: Finding) -> None:
        """Note a page as it comes out; it is kept if the build ends well."""
        ids = frozenset(anchor_ids(page.html))
        self._coming[page.src_uri] = Kept(page, self._surroundings, ids, output, cache(finding))

    def close(self) -> None:
        """Leave nothing behind."""
        if self._cache:
            self._cache.cleanup()


def look_often(observer: Any) -> None:
    """Have whatever watches for changes look for them more often; `observer` is watchdog's."""
    for one in (observer, *observer.emitters):
        one._timeout = LOOK_SECONDS


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
