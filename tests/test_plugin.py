"""The MkDocs plugin, by whole builds of small projects."""

from __future__ import annotations

import html.parser
import json
import os
import re
import shutil
import subprocess
import sys
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any
from urllib.parse import unquote, urlsplit

import pytest
from mkdocs.commands import build as mkdocs_build
from mkdocs.commands.build import build
from mkdocs.config import load_config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.pages import Page

from pullcord.errors import FindingsError, SiteError
from pullcord.plugin import build_site
from pullcord.site.beside import claim, discard
from tests.shed import SETTINGS, procedure, write_files, write_shed

REPOSITORY = SETTINGS + "repo_url: https://code.test/shed\nedit_uri: edit/main/docs/\n"


class Elements(html.parser.HTMLParser):
    """Every element of a page with its attributes, as a browser would read them."""

    def __init__(self, page: Path) -> None:
        """Read the page."""
        super().__init__()
        self.found: list[tuple[str, dict[str, str]]] = []
        self.feed(page.read_text(encoding="utf-8"))

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Keep it."""
        self.found.append((tag, {key: value or "" for key, value in attrs}))

    def values(self, *names: str) -> Iterator[str]:
        """Yield what these attributes say, on any element."""
        for _, attributes in self.found:
            yield from (attributes[name] for name in names if name in attributes)


@cache
def ids_of(page: Path) -> frozenset[str]:
    """Return where on a page a link may lead; nowhere when there is no such page."""
    return frozenset(Elements(page).values("id") if page.is_file() else ())


def mkdocs(config: Path, *options: str, **environment: str) -> subprocess.CompletedProcess[str]:
    """Run `mkdocs build` as a person would."""
    command = [sys.executable, "-m", "mkdocs", "build", "-f", str(config), *options]
    return subprocess.run(
        command,
        env={**os.environ, "NO_COLOR": "1", **environment},
        capture_output=True,
        text=True,
        check=False,
        timeout=120,
    )


def site_bytes(site: Path) -> dict[str, bytes]:
    """Return every file of a site."""
    files = (path for path in sorted(site.rglob("*")) if path.is_file())
    return {path.relative_to(site).as_posix(): path.read_bytes() for path in files}


def navigation(page: Path) -> list[str]:
    """Return where the menu of a page leads, without its own table of contents."""
    links = (
        attributes["href"]
        for tag, attributes in Elements(page).found
        if tag == "a" and "md-nav__link" in attributes.get("class", "")
    )
    return [link for link in links if not link.startswith("#")]


@pytest.fixture(scope="module")
def shed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Build a project of three procedures in a repository, and give its folder."""
    folder = tmp_path_factory.mktemp("shed")
    (folder / ".git").mkdir()
    config = write_shed(folder, ("lamp-0", "lamp-1", "lamp-2"), REPOSITORY)
    build_site(config, None, strict=True)
    return folder


@pytest.fixture(scope="module")
def good_shed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Build a good site once, and give its project's folder to be copied."""
    folder = tmp_path_factory.mktemp("good")
    build_site(write_shed(folder), None, strict=True)
    return folder


@pytest.fixture
def config(good_shed: Path, tmp_path: Path) -> Path:
    """Give the settings file of a project whose last build was good."""
    shutil.copytree(good_shed, tmp_path / "shed")
    return tmp_path / "shed" / "mkdocs.yml"


@pytest.fixture
def before(config: Path) -> dict[str, bytes]:
    """Give the last good site's bytes."""
    return site_bytes(config.parent / "site")


def test_pages_of_a_project(shed: Path) -> None:
    """Home, list, guide, one page a procedure, and the project's own pages; nothing half-done."""
    pages = {path.relative_to(shed / "site").as_posix() for path in shed.rglob("site/**/*.html")}
    assert pages >= {"index.html", "procedures.html", "how-to-read.html", "bench.html"}
    assert {page for page in pages if page.startswith("procedures/")} == {
        "procedures/lamp-0.html", "procedures/lamp-1.html", "procedures/lamp-2.html"
    }  # fmt: skip


def test_nothing_is_written_among_the_sources(shed: Path) -> None:
    """The folder of hand-written pages holds what the author put there, and no leftovers remain."""
    assert [path.name for path in (shed / "docs").rglob("*")] == ["bench.md"]
    assert {path.name for path in shed.iterdir()} == {
        ".cache", ".git", "docs", "mkdocs.yml", "procedures", "site"
    }  # fmt: skip


def test_every_link_leads_somewhere(shed: Path) -> None:
    """Each relative link of each page names a file of the site, and an id that is on it."""
    site = shed / "site"
    broken = []
    for page in site.rglob("*.html"):
        for link in Elements(page).values("href", "src", "xlink:href"):
            parts = urlsplit(link)
            if parts.scheme:
                continue
            target = (page.parent / unquote(parts.path)) if parts.path else page
            ids = ids_of(target.resolve()) if target.suffix == ".html" else frozenset()
            if not target.is_file() or (parts.fragment and parts.fragment not in ids):
                broken.append((page.name, link))
    assert broken == []


def test_no_page_loads_anything_from_a_network(shed: Path) -> None:
    """Only a link to the repository may name a host; styles, scripts and pictures are local."""
    for page in (shed / "site").rglob("*.html"):
        for tag, attributes in Elements(page).found:
            if tag != "a":
                hosts = [v for v in attributes.values() if v.startswith(("http:", "https:", "//"))]
                assert [v for v in hosts if not v.startswith("http://www.w3.org/")] == []
    for style in (shed / "site").rglob("*.css"):
        assert "url(http" not in style.read_text("utf-8").replace('"', "")


def test_edit_link_opens_the_yaml(shed: Path) -> None:
    """A procedure's page is edited in its YAML, a hand-written one in its Markdown."""
    edits = {
        page: [
            a["href"] for tag, a in Elements(shed / "site" / page).found if a.get("rel") == "edit"
        ]
        for page in ("procedures/lamp-1.html", "bench.html", "index.html")
    }
    assert edits == {
        "procedures/lamp-1.html": ["https://code.test/shed/edit/main/procedures/lamp-1.yaml"],
        "bench.html": ["https://code.test/shed/edit/main/docs/bench.md"],
        "index.html": [],
    }


def test_repository_link_asks_for_no_figures(shed: Path) -> None:
    """The link to the repository is a plain one: the theme's own would fetch stars and forks."""
    elements = Elements(shed / "site" / "bench.html")
    assert "https://code.test/shed" in set(elements.values("href"))
    assert "source" not in set(elements.values("data-md-component"))


def test_navigation_comes_in_our_order(shed: Path) -> None:
    """Our few pages come first, then the project's own; no procedure is among them."""
    own = shed / "site" / "bench.html"
    assert navigation(own)[:3] == ["index.html", "procedures.html", "how-to-read.html"]
    assert set(navigation(own)[3:]) <= {"bench.html", "./bench.html"}


def test_every_page_says_how_old_it_is(shed: Path) -> None:
    """Generated or written by hand, each page has its day and defers to the maker's manual."""
    for page in (shed / "site").rglob("*.html"):
        text = page.read_text("utf-8")
        assert 'class="pc-imprint"' in text, page.name
        bound = text.count('class="pc-binder__page"')
        assert text.count('class="pc-imprint"') == max(bound, 1), page.name


def places_of(site: Path) -> list[list[str]]:
    """Return what the search can lead to: address, title, page and first words."""
    script = (site / "assets" / "pullcord" / "search-places-0.js").read_text("utf-8")
    _, places = json.loads(f"[{script[script.index('(') + 1 : script.rindex(')')]}]")
    return [place.split("\t") for place in str(places).split("\n")]


def test_step_is_found_by_its_heading(shed: Path) -> None:
    """The search index has an entry for a step, at the step's own anchor."""
    steps = [
        title for place, title, *_ in places_of(shed / "site") if "lamp-1.html#step-swap" in place
    ]
    assert any("Swap the bulb" in title for title in steps)


def test_needless_files_stay_out(shed: Path) -> None:
    """No maps for developers, no other languages' stemmers, no sitemap, no foreign mark."""
    names = set(site_bytes(shed / "site"))
    assert not [name for name in names if name.endswith(".map") or "/lunr/" in name]
    assert names.isdisjoint({"sitemap.xml", "sitemap.xml.gz", "404.html"})
    assert "assets/images/favicon.png" not in names


def test_pages_do_not_grow_with_the_library(tmp_path: Path, shed: Path) -> None:
    """With twenty procedures each page but the two lists is as long as with three."""
    twenty = write_shed(tmp_path, tuple(f"lamp-{n}" for n in range(20)), REPOSITORY)
    (tmp_path / ".git").mkdir()
    few, many = site_bytes(shed / "site"), site_bytes(build_site(twenty, None, strict=True))
    same = ("procedures/lamp-0.html", "how-to-read.html", "bench.html")
    assert {name: len(many[name]) for name in same} == {name: len(few[name]) for name in same}
    assert b"lamp-19" in many["procedures.html"]


def test_own_home_page_is_kept(config: Path) -> None:
    """A project's own index.md is the home; the page of symptoms stands beside it."""
    write_files(config.parent, {"docs/index.md": "# Welcome\n\n[Start](start.md)\n"})
    site = build_site(config, None, strict=True)
    assert "Welcome" in (site / "index.html").read_text("utf-8")
    assert "What is it doing?" in (site / "start.html").read_text("utf-8")
    assert "start.html" in navigation(site / "bench.html")


def test_own_navigation_is_kept(config: Path) -> None:
    """Where a project lists its navigation, it is that and no more, and nothing is warned about."""
    settings = SETTINGS + "nav:\n  - Bench: bench.md\n  - Start here: index.md\n"
    config.write_text(settings, encoding="utf-8")
    site = build_site(config, None, strict=True)
    assert navigation(site / "procedures.html") == ["bench.html", "index.html"]
    assert "Start here" in (site / "bench.html").read_text("utf-8")


def test_own_asset_goes_before_ours(config: Path) -> None:
    """A file at the address of one of our assets replaces it."""
    write_files(config.parent, {"docs/assets/pullcord/mark.svg": "<svg/>"})
    site = build_site(config, None, strict=True)
    assert (site / "assets" / "pullcord" / "mark.svg").read_text("utf-8") == "<svg/>"


def test_hostile_title_is_text(config: Path) -> None:
    """What looks like HTML or a template in a title is shown as it was typed, everywhere."""
    title = "'Lamp <img src=x onerror=alert(1)> {{ config }} & <b>'"
    write_files(config.parent, {"procedures/dark-lamp.yaml": procedure("dark-lamp", title)})
    site = build_site(config, None, strict=False)
    for page in site.rglob("*.html"):
        for tag, attributes in Elements(page).found:
            assert "onerror" not in attributes
            assert not (tag == "img" and attributes.get("src") == "x")
    assert "{{ config }} &amp; &lt;b&gt;" in (site / "procedures/dark-lamp.html").read_text("utf-8")
    assert any(
        title == "Lamp <img src=x onerror=alert(1)> {{ config }} & <b>"
        for _, title, *_ in places_of(site)
    )
    assert "<" not in (site / "assets/pullcord/search-places-0.js").read_text("utf-8")


# What goes wrong: the last good site stands, and the words are plain.


def assert_untouched(config: Path, before: dict[str, bytes]) -> None:
    """Hold that the last good site is as it was, with nothing beside it."""
    assert site_bytes(config.parent / "site") == before
    assert not [path for path in config.parent.iterdir() if "building" in path.name]


BROKEN = (
    procedure("broken").replace("step swap", "step swop").replace("start: look", "start: loook")
)


def test_all_errors_come_at_once(config: Path, before: dict[str, bytes]) -> None:
    """Every finding is named with file, line, column, rule and mend; no traceback; exit code 1."""
    write_files(config.parent, {"procedures/broken.yaml": BROKEN})
    done = mkdocs(config)
    assert done.returncode == 1
    assert "Traceback" not in done.stderr
    lines = BROKEN.splitlines()
    for word in ("swop", "loook"):
        line = next(n for n, text in enumerate(lines, 1) if word in text)
        assert f"broken.yaml:{line}:" in done.stderr
    assert "mend: did you mean" in done.stderr
    assert_untouched(config, before)


def test_caller_gets_the_findings(config: Path, before: dict[str, bytes]) -> None:
    """Whoever builds from Python gets the findings themselves, sorted."""
    write_files(config.parent, {"procedures/broken.yaml": BROKEN})
    with pytest.raises(FindingsError) as caught:
        build_site(config, None, strict=False)
    assert len(caught.value.findings) >= 2
    assert list(caught.value.findings) == sorted(caught.value.findings)
    assert_untouched(config, before)


def test_a_meter_that_cannot_be_is_a_finding(config: Path, before: dict[str, bytes]) -> None:
    """It is named with file and line as a slip in a procedure is, and nothing is built."""
    meter = "      meter: {leads: 0.2 ohm, ranges: [{up-to: 200 ohm, step: 1 V, digits: few}]}\n"
    config.write_text(SETTINGS + meter, encoding="utf-8")
    done = mkdocs(config)
    assert done.returncode == 1
    assert f"mkdocs.yml:{SETTINGS.count(chr(10)) + 1}:" in done.stderr
    assert "`few` is not a number" in done.stderr
    assert "Traceback" not in done.stderr
    assert_untouched(config, before)


def test_strict_counts_warnings(config: Path, before: dict[str, bytes]) -> None:
    """A broken link in a hand-written page builds as it is, and not with --strict."""
    write_files(config.parent, {"docs/bench.md": "# Bench\n\n[gone](nowhere.md)\n"})
    strict = mkdocs(config, "--strict")
    assert strict.returncode == 1
    assert "nowhere.md" in strict.stderr
    assert "Traceback" not in strict.stderr
    assert_untouched(config, before)
    assert mkdocs(config).returncode == 0
    assert "gone" in (config.parent / "site" / "bench.html").read_text("utf-8")


def test_strict_counts_findings(config: Path, before: dict[str, bytes]) -> None:
    """A warning about a procedure lets a site be built, and not with --strict."""
    wordy = procedure("wordy").replace("Look whether", "Look with care and patience " * 40 + "if")
    write_files(config.parent, {"procedures/wordy.yaml": wordy})
    with pytest.raises(SiteError, match="strict"):
        build_site(config, None, strict=True)
    assert_untouched(config, before)
    done = mkdocs(config)
    assert done.returncode == 0
    assert "wordy.yaml:" in done.stderr


def test_another_plugin_breaks(config: Path, before: dict[str, bytes]) -> None:
    """The site stays, and the next build clears up; `tests/test_faults.py` has all other faults."""
    broken = "def on_env(env, **_):\n    raise RuntimeError('a plugin broke')\n"
    write_files(config.parent, {"hook.py": broken, "mkdocs.yml": f"{SETTINGS}hooks: [hook.py]\n"})
    with pytest.raises(SiteError, match="a plugin broke"):
        build_site(config, None, strict=False)
    assert_untouched(config, before)
    write_files(config.parent, {"mkdocs.yml": SETTINGS})
    build_site(config, None, strict=True)
    assert_untouched(config, before)


def test_two_builds_at_once(config: Path, before: dict[str, bytes]) -> None:
    """The second says that another is at work, and disturbs neither it nor the site."""
    place = claim(config.parent / "site")
    (place.new / "half.html").write_text("half", encoding="utf-8")
    done = mkdocs(config)
    assert done.returncode == 1
    assert "being built by another run" in done.stderr
    assert "Traceback" not in done.stderr
    assert (place.new / "half.html").exists()
    discard(place)
    assert_untouched(config, before)


@pytest.mark.parametrize(
    ("files", "words"),
    [
        pytest.param(
            {"mkdocs.yml": SETTINGS.replace("material", "mkdocs")},
            "write `theme: material`",
            id="another theme",
        ),
        pytest.param(
            {"docs/procedures/dark-lamp.md": "# Mine\n"}, "rename yours", id="address taken"
        ),
        pytest.param(
            {"mkdocs.yml": SETTINGS + "      procedures: [nowhere]\n"}, "nowhere", id="no folder"
        ),
        pytest.param(
            {"mkdocs.yml": SETTINGS + "      layout_engine: abacus\n"}, "abacus", id="no engine"
        ),
        pytest.param({"mkdocs.yml": "site_name: [\n"}, "mkdocs.yml", id="settings no YAML"),
    ],
)
def test_wrong_settings(
    config: Path, before: dict[str, bytes], files: dict[str, str], words: str
) -> None:
    """The message names what is wrong, and the last good site stays."""
    write_files(config.parent, files)
    with pytest.raises(SiteError, match=words):
        build_site(config, None, strict=False)
    assert_untouched(config, before)


def test_mkdocs_says_it_in_words_too(config: Path) -> None:
    """What stops a build is one plain message on MkDocs's own command line."""
    write_files(config.parent, {"docs/procedures/dark-lamp.md": "# Mine\n"})
    done = mkdocs(config)
    assert done.returncode == 1
    assert "rename yours" in done.stderr
    assert "Traceback" not in done.stderr


def test_no_settings_file(tmp_path: Path) -> None:
    """A name that leads nowhere is said in words."""
    with pytest.raises(SiteError, match="does not exist"):
        build_site(tmp_path / "mkdocs.yml", None, strict=False)


def test_site_elsewhere(config: Path, before: dict[str, bytes], tmp_path: Path) -> None:
    """The site is put where the caller wants it, and the project's own place stays as it was."""
    site = build_site(config, tmp_path / "stick" / "site", strict=True)
    assert site == tmp_path / "stick" / "site"
    assert (site / "index.html").is_file()
    assert os.listdir(tmp_path / "stick") == ["site"]
    assert_untouched(config, before)


def test_partial_build_is_written_in_place(config: Path, before: dict[str, bytes]) -> None:
    """With --dirty, MkDocs's way of updating single pages works on the site itself."""
    write_files(config.parent, {"docs/bench.md": "# Other bench\n"})
    assert mkdocs(config, "--dirty").returncode == 0
    after = site_bytes(config.parent / "site")
    assert b"Other bench" in after["bench.html"]
    assert after.keys() == before.keys()


def build_as(config: Path, command: str, site: Path | None = None) -> MkDocsConfig:
    """Build as one of MkDocs's own commands does, and return the settings as they are then."""
    settings = load_config(str(config), site_dir=str(site) if site else None)
    settings.plugins.on_startup(command=command, dirty=False)
    build(settings)
    settings.plugins.on_shutdown()
    return settings


def test_preview_does_not_wait_for_a_build(config: Path, tmp_path: Path) -> None:
    """A preview has a folder of its own, so a build of the site may go on meanwhile."""
    place = claim(config.parent / "site")
    write_files(config.parent, {"docs/bench.md": "# Previewed bench\n"})
    build_as(config, "serve", tmp_path / "preview")
    assert "Previewed" in (tmp_path / "preview" / "bench.html").read_text("utf-8")
    discard(place)


def test_publishing_finds_the_site_in_its_place(config: Path) -> None:
    """What comes after a build, such as publishing, is told where the finished site is."""
    assert Path(build_as(config, "gh-deploy").site_dir) == config.parent / "site"


def preview_twice(config_file: Path) -> Path:
    """Build a preview two times, as `mkdocs serve` does, and return its folder."""
    first = load_config(str(config_file))
    first.plugins.on_startup(command="serve", dirty=False)
    build(first)
    again = load_config(str(config_file))
    for name, plugin in first.plugins.items():
        vars(again.plugins[name]).update(
            {key: value for key, value in vars(plugin).items() if key == "_preview"}
        )
    build(again)
    return Path(again.site_dir)


def test_a_preview_leaves_out_what_did_not_change(tmp_path: Path) -> None:
    """Of a second build the pages of ours are no part; the home page marks it as a site."""
    site = preview_twice(write_shed(tmp_path))
    assert (site / "index.html").is_file()
    assert not (site / "procedures" / "dark-lamp.html").exists()


def test_a_preview_shows_every_page_to_others(tmp_path: Path) -> None:
    """A hook may change a page in every build, and so every page is built."""
    config_file = write_shed(tmp_path, settings=f"{SETTINGS}hooks: [hook.py]\n")
    (tmp_path / "hook.py").write_text("def on_env(env, **_):\n    return env\n", encoding="utf-8")
    assert (preview_twice(config_file) / "procedures" / "dark-lamp.html").is_file()


def pages_laid_out(monkeypatch: pytest.MonkeyPatch, config_file: Path) -> list[str]:
    """Build a site and return the pages MkDocs itself laid out."""
    seen: list[str] = []
    lay_out = mkdocs_build._build_page

    def lay_out_and_tell(page: Page, *given: Any, **named: Any) -> None:
        seen.append(page.file.src_uri)
        lay_out(page, *given, **named)

    monkeypatch.setattr(mkdocs_build, "_build_page", lay_out_and_tell)
    build_site(config_file, None, strict=False)
    return seen


@pytest.mark.parametrize(
    "more",
    [
        "",
        "site_url: https://shed.test/\n",
        "nav: [{Start here: index.md}, {The bench: bench.md}, map.md]\n",
        "extra_templates: [pages.txt]\n",
    ],
    ids=["as it comes", "a sitemap", "titles of one's own", "a list of pages"],
)
def test_a_second_build_lays_out_nothing_of_ours_and_is_the_same(
    more: str, config: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """What nothing was changed about comes from the folder of what is kept, byte for byte."""
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1772323200")
    config.write_text(config.read_text("utf-8") + more, encoding="utf-8")
    listing = "{% for page in pages %}{{ page.url }} {{ page.page.title }}\n{% endfor %}"
    write_files(config.parent, {"docs/pages.txt": listing})
    first = site_bytes(build_site(config, None, strict=False))
    assert pages_laid_out(monkeypatch, config) == ["bench.md"]
    assert site_bytes(config.parent / "site") == first


def test_a_build_lays_out_what_has_changed(config: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The pages of the other procedure stay, and say the same as in a build of everything."""
    build_site(config, None, strict=False)
    write_files(config.parent, {"procedures/dark-lamp.yaml": procedure("dark-lamp", "No light")})
    seen = pages_laid_out(monkeypatch, config)
    assert "procedures/dark-lamp.md" in seen
    warm = site_bytes(config.parent / "site")
    shutil.rmtree(config.parent / ".cache")
    assert site_bytes(build_site(config, None, strict=False)) == warm


def test_a_build_of_another_day_is_dated_anew(
    config: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Every page says the day of its build, whatever of it was kept."""
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1772323200")
    build_site(config, None, strict=False)
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1772409600")
    warm = site_bytes(build_site(config, None, strict=False))
    pages = [uri for uri in warm if uri.endswith(".html")]
    assert [uri for uri in pages if b"Built on 2026-03-02" not in warm[uri]] == []
    shutil.rmtree(config.parent / ".cache")
    assert site_bytes(build_site(config, None, strict=False)) == warm


IMPRINT = """<footer class="pc-imprint"><h2 id="age">Age</h2>
{% for line in view.imprint.lines %}<p>{{ line }}</p>{% endfor %}</footer>
"""


@pytest.mark.parametrize("imprint", [None, IMPRINT], ids=["ours", "one that is searched"])
@pytest.mark.parametrize("options", [[], ["--dirty"]], ids=["a build", "a partial build"])
def test_no_file_is_left_without_its_date(
    config: Path, options: list[str], imprint: str | None
) -> None:
    """No page, index or script holds a mark where a day or a revision should stand."""
    write_files(config.parent, {"docs/bench.md": "# Other bench\n"})
    if imprint:
        write_files(config.parent, {"own/pages/imprint.html.j2": imprint})
        own = "templates: [own]\n      library: false"
        settings = config.read_text("utf-8").replace("library: false", own)
        config.write_text(settings, encoding="utf-8")
    assert mkdocs(config, *options, SOURCE_DATE_EPOCH="1772323200").returncode == 0
    files = site_bytes(config.parent / "site")
    pages = [uri for uri in files if uri.endswith(".html")]
    assert [uri for uri in pages if b"Built on 2026-03-01" not in files[uri]] == []
    mark = re.compile(rb"pc[0-9a-f]{16}|PC[0-9A-F]{16}")
    assert [uri for uri in files if mark.search(files[uri])] == []


@pytest.mark.parametrize(
    "words", ["\ufdd0day\ufdd1", "\ufdd0", "\\ufdd0da", "%EF%B7%90day", "pc0123456789abcdefday"]
)
@pytest.mark.parametrize("own", [False, True], ids=["", "texts of one's own"])
def test_a_procedure_may_say_what_looks_like_a_mark(config: Path, words: str, own: bool) -> None:
    """Text is data: it neither turns into a day nor stops a build."""
    if own:
        write_files(config.parent, {"own/texts/words.yaml": "go_on: And on\n"})
        options = "templates: [own]\n      library: false"
        settings = config.read_text("utf-8").replace("library: false", options)
        config.write_text(settings, encoding="utf-8")
    file = config.parent / "procedures" / "dark-lamp.yaml"
    quoted = json.dumps(f"Look here {words} there.")
    text = file.read_text("utf-8").replace("Look whether the switch is on.", quoted)
    file.write_text(text, encoding="utf-8")
    page = build_site(config, None, strict=False) / "procedures" / "dark-lamp.html"
    assert f"Look here {words} there." in page.read_text("utf-8")


@pytest.mark.parametrize(
    ("more", "file", "before", "after", "seen"),
    [
        ("", "mkdocs.yml", "site_name: Test shed", "site_name: Shed at 0x10", "Shed at 0x10"),
        (
            "markdown_extensions: [{pymdownx.snippets: {base_path: [DOCS]}}]\n",
            "docs/head.txt",
            "First title",
            "Second title",
            "Second title",
        ),
        ("", "docs/bench.md", "# ", "---\nstatus: new\n---\n# ", "md-status--new"),
    ],
    ids=["a setting", "a title that is brought in", "the state of a page in the navigation"],
)
def test_what_stands_around_a_page_is_never_stale(
    config: Path, more: str, file: str, before: str, after: str, seen: str
) -> None:
    """A change anywhere that shows on every page is on every page."""
    bench = '--8<-- "head.txt"\n' if more else "# Bench\n"
    write_files(config.parent, {"docs/bench.md": bench, "docs/head.txt": "# First title\n"})
    more = more.replace("DOCS", str(config.parent / "docs"))
    config.write_text(config.read_text("utf-8") + more, encoding="utf-8")
    build_site(config, None, strict=False)
    changed = config.parent / file
    changed.write_text(changed.read_text("utf-8").replace(before, after), encoding="utf-8")
    assert seen in (build_site(config, None, strict=False) / "index.html").read_text("utf-8")


@pytest.mark.parametrize(
    ("more", "file", "text"),
    [
        ("hooks: [hook.py]\n", "hook.py", "def on_post_page(output, **_):\n    return output\n"),
        ("theme: {name: material, custom_dir: own}\n", "own/any.html", "any"),
    ],
    ids=["a hook", "a theme of one's own"],
)
def test_whoever_may_change_pages_is_given_all_of_them(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, more: str, file: str, text: str
) -> None:
    """Another may print the hour of the day: no page is taken from what was kept."""
    settings = SETTINGS.replace("theme: material\n", "") if "theme" in more else SETTINGS
    config_file = write_shed(tmp_path, settings=settings + more)
    write_files(tmp_path, {file: text})
    build_site(config_file, None, strict=False)
    assert "procedures/dark-lamp.md" in pages_laid_out(monkeypatch, config_file)


def test_a_page_loads_one_style_and_one_script_of_ours(config: Path) -> None:
    """The script is asked for in the head, so that it is there when the page is read."""
    page = Elements(build_site(config, None, strict=True) / "procedures" / "dark-lamp.html")
    ours = [
        (tag, attributes.get("rel", ""), attributes.get("href") or attributes.get("src"))
        for tag, attributes in page.found
        if tag in {"link", "script"} and "assets/pullcord/" in str(attributes)
    ]
    assert ours == [
        ("link", "preload", "../assets/pullcord/pullcord.js"),
        ("link", "icon", "../assets/pullcord/mark.svg"),
        ("link", "stylesheet", "../assets/pullcord/pullcord.css"),
        ("script", "", "../assets/pullcord/pullcord.js"),
    ]
