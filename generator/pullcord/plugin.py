"""The MkDocs plugin: puts Pullcord's pages into any MkDocs site. All thinking lies below it."""

from __future__ import annotations

import time
from collections.abc import Callable, Iterable, Sequence
from contextlib import suppress
from functools import partial
from itertools import chain
from pathlib import Path
from typing import Any

from mkdocs.commands.build import build
from mkdocs.config import Config, load_config
from mkdocs.config.config_options import Choice, Dir, ListOfItems, Optional, Type
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.plugins import BasePlugin, CombinedEvent, event_priority, get_plugin_logger
from mkdocs.structure.files import File, Files, InclusionLevel
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page
from mkdocs.structure.toc import AnchorLink, TableOfContents

from pullcord.drawing.cache import trim
from pullcord.errors import PullcordError
from pullcord.pages.address import HOME
from pullcord.site import assets, beside, find, heading, offline, origin, policy, report, scripts
from pullcord.site.around import head_of, surroundings
from pullcord.site.listing import list_without_hidden
from pullcord.site.made import Made, make_site, make_whole, nothing_made
from pullcord.site.preview import SETTLE_SECONDS, Preview, look_often
from pullcord.site.shards.join import make_joined
from pullcord.site.shards.number import Shard
from pullcord.site.shards.one import make_shard
from pullcord.site.shelf import Shelf, shelf_for
from pullcord.source.places import site_templates

log = get_plugin_logger("pullcord")
ELSEWHERE = "pullcord-elsewhere.html"
"""Of our theme folder: prints nothing."""
QUIET = {"pullcord", offline.SEARCH}
"""Plugins that do not mind whether a page is part of every build."""
FIRST, LAST = 100, -1000  # before whoever reads what we set, after whoever still writes files


class PullcordConfig(Config):  # type: ignore[no-untyped-call] # MkDocs types it not
    """What may stand below `- pullcord:` in `mkdocs.yml`."""

    procedures = Optional(ListOfItems(Dir(exists=True)))
    """Folders of procedures; `procedures` beside `mkdocs.yml` when none is named."""
    machines = Optional(ListOfItems(Dir(exists=True)))
    """Folders of machine sheets; `machines` beside `mkdocs.yml` when none is named."""
    jobs = Optional(ListOfItems(Dir(exists=True)))
    """Folders of job logs; `jobs` beside `mkdocs.yml` when none is named."""
    meter = Optional(Type(dict))
    """The shop's meter; a cheap 3½-digit one when none is described."""
    replaces = ListOfItems(Type(str), default=[])
    """Names of shipped procedures that one's own of the same name take the place of."""
    library = Type(bool, default=True)
    """Whether the procedures that come with Pullcord are part of the site."""
    layout_engine = Choice(("built-in", "dot"), default="built-in")
    """What places the boxes of a flowchart: the engine that comes along, or a Graphviz `dot`."""
    cache = Dir(default=".cache/pullcord")
    """Where all that is costly to make is kept between builds; safe to delete."""
    templates = ListOfItems(Dir(exists=True), default=[])
    """Folders whose templates, texts and assets go before those that come with Pullcord."""
    currency = Type(str, default="")
    """What stands behind an amount of money, such as `EUR`."""


class FinishedPage(Page):
    """A page of ours: there is no Markdown to be read."""

    def read_source(self, config: MkDocsConfig) -> None:
        """Read nothing."""
        self.markdown, self.meta = "", {}

    def render(self, config: MkDocsConfig, files: Files) -> None:
        """Make nothing: `on_page_content` has it."""
        self.content, self.toc = "", TableOfContents([])


class MadeFile(File):
    """Where a page of ours belongs. It is known to the others also if this build leaves it out."""

    is_left_out = False

    def is_documentation_page(self) -> bool:
        """Say whether MkDocs has a page to write here."""
        return not self.is_left_out and super().is_documentation_page()

    def copy_file(self, dirty: bool = False) -> None:
        """Copy nothing: there is no such file."""

    def leave_out(self, title: str, ids: Iterable[str], config: MkDocsConfig) -> None:
        """Have the page neither read nor written. Others may still name it, and link into it."""
        page = self.page or FinishedPage(None, self, config)
        page.markdown, page.content, page.meta = "", "", {"title": title}
        page.toc, page.present_anchor_ids = TableOfContents([]), set(ids)
        self.pass_over()

    def pass_over(self) -> None:
        """Have the page not written, whatever was read of it."""
        self.dest_uri, self.url = self.dest_uri, self.url  # Reckoned, until now, from what it is.
        self.is_left_out = True


class PullcordPlugin(BasePlugin[PullcordConfig]):  # type: ignore[no-untyped-call] # nor this
    """Adds the pages of all procedures and puts the finished site in its place."""

    make: Callable[[Any, Any], Made] = staticmethod(make_whole)
    """Makes all that is built from MkDocs's settings and ours: a site, or a part of one."""
    _swaps = True
    _begun = 0.0
    _place: beside.Beside | None = None
    _preview: Preview | None = None
    _shelf: Shelf | None = None
    _made = Made({}, "", "", (), ())
    _nav: Navigation
    _documents: Sequence[File] = ()
    """Every page of the site, also those that lie in it already."""
    _found: dict[str, find.Finding]
    """What gives what can be found, by page, in the order of the pages."""

    def on_startup(self, *, command: str, dirty: bool) -> None:
        """Build beside what readers use; only a partial build is written in place."""
        self._swaps, self._begun = not dirty, time.time()
        self._preview = Preview() if command == "serve" else None

    @event_priority(FIRST)
    def on_config(self, config: MkDocsConfig) -> None:
        """Take the site offline and send the build beside the last good one."""
        with report.told_as(PluginError):
            offline.take_offline(config, site_templates() / "theme")
            self._place = beside.claim(Path(config.site_dir)) if self._swaps else None
            if self._place:
                config.site_dir = str(self._place.new)
        list_without_hidden(config.theme)
        folders = origin.folders_to_read(config.config_file_path, self.config)
        config.watch.extend(map(str, (*folders, *self.config.templates)))
        if self._preview:
            watched = (config.docs_dir, *config.watch)
            self.config.cache = self._preview.cache_beside(self.config.cache, watched)
            config.theme.static_templates -= offline.FOR_SERVERS

    def on_pre_build(self, *, config: MkDocsConfig) -> None:
        """Read, check and render everything before anything is written."""
        self._found = {}
        with report.told_as(PluginError):
            self._made = self._make(config)
        for note in self._made.notes:
            log.warning(note)

    def _make(self, config: MkDocsConfig) -> Made:
        if self._preview is None:
            return self.make(config, self.config)
        is_first, self._preview.has_built = not self._preview.has_built, True
        try:
            return make_site(config, self.config)
        except PullcordError as error:
            if not is_first:
                raise
            self._preview.fail(error)
            return nothing_made(config)

    def on_files(self, files: Files, *, config: MkDocsConfig) -> None:
        """Add pages and assets; a file of the project's own at the same address wins."""
        offline.drop_needless(files, config)
        edit_uri = origin.edit_uris(config.docs_dir)
        for uri, made in self._made.pages.items():
            if files.get_file_from_path(uri):
                raise PluginError(f"{uri} is the address of a page Pullcord makes: rename yours")
            in_nav = made.in_nav and config.nav is None
            level = InclusionLevel.INCLUDED if in_nav else InclusionLevel.NOT_IN_NAV
            file = MadeFile.generated(config, uri, content="", inclusion=level)
            file.edit_uri = edit_uri(made.source)
            files.append(file)
            if config.nav is None:  # A navigation of the project's own gives pages its own titles.
                FinishedPage(None, file, config)
        for asset in self._made.assets:
            if not files.get_file_from_path(asset.uri):
                files.append(File.generated(config, asset.uri, content=asset.content))
        assets.list_in(config, self._made.assets)

    def _put_first(self, nav: Navigation, *, config: MkDocsConfig, files: Files) -> None:
        """Where the project lists no navigation, put our few pages first, in their own order."""
        if config.nav is None:
            self._made.put_first(nav.items)

    @event_priority(LAST)
    def _leave_out(self, nav: Navigation, *, config: MkDocsConfig, files: Files) -> None:
        """In a preview, leave out what it still has from last time."""
        if self._preview is None:
            return
        self._preview.come_to(surroundings(config, nav, map(self._titled, nav.pages)))
        may_leave_out = _is_alone(config)
        for file in files.documentation_pages():
            made = self._made.pages.get(file.src_uri)
            kept = self._preview.kept(made) if made and may_leave_out else None
            self._found[file.src_uri] = kept.finding if kept else tuple
            # A folder without a home page is not known for a site, and not replaced.
            if made and kept and isinstance(file, MadeFile) and made.src_uri != HOME:
                file.leave_out(heading.as_html(made.title), kept.ids, config)

    def _keep_nav(self, nav: Navigation, *, config: MkDocsConfig, files: Files) -> None:
        self._nav = nav

    on_nav = CombinedEvent(_put_first, _leave_out, _keep_nav)

    def _titled(self, page: Page) -> str:
        """Return what gives a page of the navigation its title there."""
        made = self._made.pages.get(page.file.src_uri)
        if made:
            return made.title
        with suppress(OSError, UnicodeError):  # MkDocs says what is wrong when it reads the page.
            return head_of(page.file.content_string)
        return ""

    def on_env(self, env: Any, *, config: MkDocsConfig, files: Files) -> None:
        """Lay down what would come out as it did before; by now every page has its title."""
        self._documents, self._shelf = files.documentation_pages(), None
        if self._preview:
            env.bytecode_cache = self._preview.compiled
        elif self._place and _is_alone(config) and not config.theme.custom_dir:
            told = ((str(page.title), repr(page.meta)) for page in self._nav.pages)
            around = surroundings(config, self._nav, chain.from_iterable(told))
            self._shelf = shelf_for(Path(self.config.cache), around, site_templates() / "theme")
            for file in self._documents:
                self._found[file.src_uri] = tuple  # Until it is found; the order stays.
                self._lay(self._shelf, file)

    def _lay(self, shelf: Shelf, file: File) -> None:
        made = self._made.pages.get(file.src_uri)
        if made is None or not isinstance(file, MadeFile) or file.src_uri in self._made.elsewhere:
            return
        if file.page and shelf.lay(made, file.edit_uri, Path(file.abs_dest_path)):
            if made.in_search:
                self._found[file.src_uri] = find.finding(file.page, shelf.folder)
            file.pass_over()

    def on_template_context(self, context: Any, **_: object) -> None:
        """Let a list of all pages, such as a sitemap, have them all."""
        context["pages"] = self._documents

    @event_priority(FIRST)
    def on_page_content(self, html: str, *, page: Page, config: MkDocsConfig, files: Files) -> str:
        """Give a generated page its finished HTML, and any other our frame."""
        made = self._made.pages.get(page.file.src_uri)
        if made is None:
            return self._made.frame(html)
        page.meta["title"] = heading.as_html(made.title)
        if made.src_uri in self._made.elsewhere:
            page.meta["template"] = ELSEWHERE
            page.present_anchor_ids = None
            return ""
        page.toc = TableOfContents(heading.link_tree(made.headings, AnchorLink))
        ids: Any = heading.AnchorIds(made.html)
        page.present_anchor_ids = ids
        return made.html

    @event_priority(LAST)
    def on_page_context(self, context: object, *, page: Page, **_: object) -> None:
        """Gather what can be found on a finished page, whoever wrote it."""
        made = self._made.pages.get(page.file.src_uri)
        uri = page.file.src_uri
        if made is None or made.in_search:
            is_here = uri not in self._made.elsewhere
            self._found[uri] = find.finding(page, Path(self.config.cache)) if is_here else tuple

    @event_priority(LAST)
    def on_post_page(self, output: str, *, page: Page, config: MkDocsConfig) -> str:
        """Let only the theme's scripts and ours run in a page of ours; a preview adds its own."""
        made = self._made.pages.get(page.file.src_uri)
        if made and self._preview:
            self._preview.remember(made, output, self._found.get(page.file.src_uri, tuple))
        elif made and self._place:
            allowed = policy.inline_scripts(output, page.content or "")
            output = policy.with_policy(scripts.fetched_early(scripts.ours_first(output)), allowed)
            if self._shelf and made.src_uri not in self._made.elsewhere:
                self._shelf.keep(made, page.file.edit_uri, output)
        return output

    @event_priority(LAST)
    def on_post_build(self, *, config: MkDocsConfig) -> None:
        """Put the finished site in its place, unless a strict build is about to be called off."""
        is_called_off = config.strict and report.has_counted_warnings()
        if not self._preview:
            with report.told_as(PluginError):
                found = {uri: finding() for uri, finding in self._found.items()}
                self._made.finish(Path(config.site_dir), found)
        if self._place and not is_called_off:
            with report.told_as(PluginError):
                config.site_dir = str(beside.swap(self._place))
            if not self._preview:
                log.info(f"the site is in {config.site_dir}")
        if not self._preview:
            trim(Path(self.config.cache), self._begun)
        elif not is_called_off:
            self._preview.take(self._made, self._found.values(), Path(config.site_dir))

    @event_priority(LAST)
    def on_serve(self, server: Any, **_: object) -> Any:
        """Let nothing stop a preview: what is wrong is shown on top of its pages."""
        if self._preview:
            look_often(server.observer)
            server.build_delay = SETTLE_SECONDS
            server.builder = self._preview.careful(server.builder)
            server.set_app(self._preview.app(server.get_app(), server.mount_path))
        return server

    @event_priority(LAST)
    def on_build_error(self, *, error: Exception) -> None:
        """Leave nothing behind; a full or failing disk gets plain words instead of a traceback."""
        if self._place:
            beside.discard(self._place)
        if isinstance(error, OSError):
            raise PluginError(
                f"the site could not be written, the last one stands: {report.disk_fault(error)}"
            ) from error

    def on_shutdown(self) -> None:
        """Give up the place beside the site, also when the build was interrupted."""
        if self._place:
            beside.discard(self._place)
        if self._preview:
            self._preview.close()
            trim(Path(self.config.cache), self._begun)


def _is_alone(config: MkDocsConfig) -> bool:
    """Say whether nobody else may want to see, or change, every page in every build."""
    return config.plugins.keys() <= QUIET and not config.hooks


def build_site(
    config_file: Path,
    site_dir: Path | None,
    strict: bool,
    make: Callable[[Any, Any], Made] = make_whole,
) -> Path:
    """Build the site of an `mkdocs.yml` and return the folder it is in.

    `make` gives what is in it, of MkDocs's settings and our own. Raises FindingsError with the
    errors in the procedures, or SiteError for anything else; in both cases the last good site stays
    as it was.
    """
    place = str(site_dir.resolve()) if site_dir else None
    with report.heard() as lines:
        try:
            config = load_config(str(config_file), strict=strict or None, site_dir=place)
            for plugin in config.plugins.values():
                if isinstance(plugin, PullcordPlugin):
                    plugin.make = make
            config.plugins.on_startup(command="build", dirty=False)
            try:
                build(config)
            finally:
                config.plugins.on_shutdown()
        except Exception as error:
            raise report.our_error(error, lines) from error
    return Path(config.site_dir)


def build_shard(config_file: Path, site_dir: Path | None, strict: bool, shard: Shard) -> Path:
    """Build one shard of that site into a folder beside it, and return that folder.

    Raises as `build_site`.
    """
    folder = shard.beside(site_dir or built_folder(config_file))
    return build_site(config_file, folder, strict, partial(make_shard, shard))


def join_site(
    config_file: Path, site_dir: Path | None, strict: bool, shards: Sequence[Path]
) -> Path:
    """Build that site of the folders of all its shards, and return the folder it is in.

    Raises as `build_site`; also SiteError when the shards do not go together.
    """
    return build_site(config_file, site_dir, strict, partial(make_joined, shards))


def preview_site(config_file: Path, address: str | None, open_browser: bool) -> None:
    """Serve the site of an `mkdocs.yml` to this computer, and build it anew when a file is saved.

    `address` is a host and a port, such as `127.0.0.1:8000`. Returns when it is interrupted. Raises
    SiteError when it cannot begin: what is wrong with a procedure is shown on its pages instead.
    """
    from mkdocs.commands.serve import serve  # A build must not wait for a server.

    with report.heard() as lines:
        try:
            serve(str(config_file), open_in_browser=open_browser, dev_addr=address)
        except (Exception, SystemExit) as error:
            raise report.our_error(error, lines) from error


def built_folder(config_file: Path) -> Path:
    """Return the folder an `mkdocs.yml` names for its site. Raises SiteError if it is unusable."""
    with report.heard() as lines:
        try:
            return Path(load_config(str(config_file)).site_dir)
        except Exception as error:
            raise report.our_error(error, lines) from error
