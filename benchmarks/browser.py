"""Pages from a folder in a Chromium that is slowed 6 times, beside the same chart by Mermaid."""

from __future__ import annotations

import html
import re
import statistics
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from playwright.sync_api import Browser, Page, sync_playwright
from tests.browser.chromium import FLAGS, find_chromium

from benchmarks.build import write_project
from benchmarks.charts import mermaid_of, procedures_of
from benchmarks.library import WORDS, name_of
from benchmarks.table import Line, at_most
from benchmarks.timing import PULLCORD, spend

SLOWED = 6
STEPS = 30
MOST_WAIT_MS = 120_000
LEAST_OF_MERMAID, MOST_TAP_MS = 5.0, 100
MOST_FIRST_MS, MOST_KEY_MS = 1000, 100
SECOND_RANK = 39
"""How common the second word typed is."""
NOTE = (
    f"Opened from a folder with the processor slowed {SLOWED} times, no network, the window of a "
    f"tablet held upright; a new window each time. The page is that of a procedure of {STEPS} "
    "steps. For Mermaid it is the same page with the chart's source in the place of the chart, "
    "drawn by its own script when the page is there. Milliseconds from the start of the "
    "navigation; medians."
)
TABLET = {"width": 820, "height": 1180}
WATCH = """
window.seen = {};
const note = (name) => { window.seen[name] ??= performance.now(); };
const look = () => {
  const chart = document.querySelector("svg.pc-chart[role], .by-mermaid svg");
  const drawn = chart?.querySelector("text, foreignObject");
  if (drawn && chart.getBoundingClientRect().height > 1) note("chart");
  if (document.querySelector(".pc-page [data-deed=start] .pc-way__said")?.textContent) note("walk");
  requestAnimationFrame(look);
};
requestAnimationFrame(look);
new PerformanceObserver((list) => {
  for (const entry of list.getEntries()) window.seen[entry.name] = entry.startTime;
}).observe({ type: "paint", buffered: true });
"""
"""Notes when the chart stands with a size, and when a walk can be begun; checked each frame."""
DRAW = """<script>
mermaid.initialize({ startOnLoad: false });
mermaid.run({ querySelector: ".by-mermaid" });
</script>"""
TAP = """
(way) => new Promise((tell) => {
  const from = document.querySelector(".pc-here").id;
  way.addEventListener("click", () => {
    const begun = performance.now();
    const look = () => document.querySelector(".pc-here")?.id === from
      ? requestAnimationFrame(look)
      : requestAnimationFrame(() => setTimeout(() => tell(performance.now() - begun)));
    requestAnimationFrame(look);
  }, { capture: true, once: true });
  way.click();
})
"""
"""From a tap to the frame after the one in which another step stands there."""
TYPE = """
([input, typed]) => new Promise((tell) => {
  const list = document.querySelector(".pc-hits");
  const begun = performance.now();
  new MutationObserver((_, observer) => {
    observer.disconnect();
    requestAnimationFrame(() => setTimeout(() => tell(performance.now() - begun)));
  }).observe(list, { childList: true });
  input.value = typed;
  input.dispatchEvent(new InputEvent("input", { bubbles: true }));
})
"""
"""From a key to the frame with the first hits; the others follow."""


def measure(rounds: int, place: Path, mermaid: Path | None) -> Iterator[Line]:
    """Yield what a page takes to be of use, and a tap."""
    folder = place / "browser"
    write_project(folder, 3, STEPS)
    spend((*PULLCORD, "build"), folder)
    page = folder / "site" / "procedures" / f"{name_of(0)}.html"
    with chromium() as browser:
        ours = [opened(browser, page) for _ in range(rounds)]
        figures = {key: statistics.median(one[key] for one in ours) for key in ours[0]}
        yield from _beside_mermaid(browser, page, figures, rounds, mermaid)
        yield at_most("answer tap to next step, middle", *_taps(browser, page))


def search(rounds: int, site: Path, pages: int) -> Iterator[Line]:
    """Yield what typing takes in a site of so many procedures."""
    firsts, keys = [], []
    with chromium() as browser:
        for number in range(rounds):
            first, *rest = typed(browser, site / "index.html", WORDS[number])
            firsts.append(first)
            keys.extend(rest)
    what = f"search among {pages} procedures"
    middle, most = statistics.median(keys), max(keys)
    yield at_most(f"{what}, first answer", statistics.median(firsts), "ms", MOST_FIRST_MS, rounds)
    yield at_most(f"{what}, a key, middle", middle, "ms", MOST_KEY_MS, len(keys))
    yield at_most(f"{what}, a key, slowest", most, "ms", MOST_KEY_MS, len(keys))


@contextmanager
def chromium() -> Iterator[Browser]:
    """Give a browser."""
    path = find_chromium()
    if path is None:
        raise RuntimeError("no Chromium: run `python -m tests.browser.chromium`")
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(
            executable_path=path, headless=True, args=["--headless", *FLAGS]
        )
        yield browser
        browser.close()


@contextmanager
def slow_page(browser: Browser) -> Iterator[Page]:
    """Give a page in a window of its own, slowed."""
    context = browser.new_context(viewport=TABLET, has_touch=True, offline=True)
    context.set_default_timeout(MOST_WAIT_MS)
    page = context.new_page()
    context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWED})
    yield page
    context.close()


def opened(browser: Browser, file: Path, wanted: str = "chart walk") -> dict[str, float]:
    """Return when the first paint was and what is wanted stood there, in ms."""
    with slow_page(browser) as page:
        page.add_init_script(WATCH)
        page.goto(file.as_uri(), wait_until="commit")
        page.wait_for_function(
            "names => names.split(' ').every(name => window.seen[name])", arg=wanted
        )
        page.wait_for_function("window.seen['first-contentful-paint']")
        seen: dict[str, float] = page.evaluate("window.seen")
        return seen


def _beside_mermaid(
    browser: Browser, page: Path, ours: dict[str, float], rounds: int, script: Path | None
) -> Iterator[Line]:
    first = ours["first-contentful-paint"]
    chart = max(first, ours["chart"])
    figures = {"first paint": first, "chart drawn": chart, "walk ready": ours["walk"]}
    if script is None:
        for name, figure in figures.items():
            yield Line(name, f"{figure:.0f} ms ({rounds} runs)", "Mermaid not given")
        return
    other = write_mermaid(page, script)
    drawn = statistics.median(opened(browser, other, "chart")["chart"] for _ in range(rounds))
    for name, figure in figures.items():
        ratio = drawn / figure
        yield Line(name, f"{figure:.0f} ms ({rounds} runs)", f"chart by Mermaid {drawn:.0f} ms",
                   ratio, f"{LEAST_OF_MERMAID:g} x sooner", ratio >= LEAST_OF_MERMAID)  # fmt: skip


def write_mermaid(page: Path, script: Path) -> Path:
    """Write the same page with its chart drawn by Mermaid's script, and return its file."""
    folder = page.parents[2] / "procedures"
    source = html.escape(mermaid_of(procedures_of(folder)[page.stem]), quote=False)
    text = page.read_text(encoding="utf-8")
    text, charts = re.subn(r'<svg class="pc-chart" id=.*?</svg>',
                           lambda _: f'<pre class="by-mermaid">{source}</pre>', text, count=1,
                           flags=re.DOTALL)  # fmt: skip
    # Its script needs what our policy forbids; the walk's would stumble over the missing chart.
    text = re.sub(r'<meta http-equiv="Content-Security-Policy".*?>', "", text)
    text = re.sub(r'<script src="[^"]*pullcord/[^"]*"></script>', "", text)
    (page.parent / "mermaid.js").write_bytes(script.read_bytes())
    if not charts or "</body>" not in text:
        raise RuntimeError("the page has no chart to be replaced")
    text = text.replace("</body>", f'<script src="mermaid.js"></script>{DRAW}</body>')
    other = page.with_name("by-mermaid.html")
    other.write_text(text, encoding="utf-8")
    return other


def _taps(browser: Browser, file: Path) -> tuple[float, str, float, int]:
    spent = []
    with slow_page(browser) as page:
        page.goto(file.as_uri(), wait_until="commit")
        page.locator('.pc-page [data-deed="start"]').click()
        for _ in range(STEPS):
            way = page.locator(".pc-here > .pc-ways > .pc-way").last
            if not way.count():
                break
            spent.append(float(page.evaluate(TAP, way.element_handle())))
            if page.locator(".pc-here#done").count():
                break
    return statistics.median(spent), "ms", MOST_TAP_MS, len(spent)


def typed(browser: Browser, file: Path, word: str) -> list[float]:
    """Return how long what is found took for each letter of a word and the next, in ms."""
    spent = []
    with slow_page(browser) as page:
        page.goto(file.as_uri(), wait_until="commit")
        box: Any = page.get_by_role("searchbox")
        box.wait_for()
        handle = box.element_handle()
        text = f"{word} {WORDS[SECOND_RANK]}"
        for end in range(2, len(text) + 1):
            if text[end - 1] != " ":
                spent.append(float(page.evaluate(TYPE, [handle, text[:end]])))
    return spent
