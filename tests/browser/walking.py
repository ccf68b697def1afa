"""Walking a procedure's page as a thumb does."""

from __future__ import annotations

import re
from pathlib import Path

from playwright.sync_api import Locator, Page

HERE = ".pc-here"
WAYS = ".pc-here > .pc-ways > .pc-way"


def open_page(page: Page, site: Path, name: str) -> None:
    """Open a page of a site from its folder."""
    page.goto((site / f"{name}.html").as_uri())


def begin(page: Page) -> None:
    """Begin a walk and go past what must be in place."""
    page.locator('[data-deed="start"]').tap()
    page.locator(".pc-here .pc-first .pc-way").tap()


def jump(page: Page, step: str) -> None:
    """Come to a step without answering what lies before it, as from a link in the chart."""
    page.evaluate("id => { location.hash = id; }", f"step-{step}")
    page.locator(f"#step-{step}.pc-here").wait_for()


def answer(page: Page, said: str = "") -> None:
    """Tap the answer that says so; with nothing to say, the only one."""
    ways = page.locator(WAYS)
    named = ways.filter(has=page.get_by_text(re.compile(f"^{re.escape(said)}(:|$)")))
    (named if said else ways).first.tap()


def press(page: Page, shown: str) -> None:
    """Tap what the meter shows into the pad: `5.0 kohm`, `OL`."""
    number, _, unit = shown.partition(" ")
    keys = ["over"] if number == "OL" else [*number, f"unit {unit}"]
    for key in keys:
        tap_key(page, key)


def tap_key(page: Page, key: str) -> None:
    """Tap one key of the pad: a digit, `over`, `rub`, `unit ohm`."""
    page.locator(f'.pc-pad > [class]:not(.pc-pad__shop) [data-key="{key}"]').tap()


def verdict(page: Page) -> str:
    """Return what kind of verdict the pad gives."""
    return page.locator(".pc-pad__verdict").get_attribute("data-kind") or ""


def fitting(page: Page) -> Locator:
    """Return the answers that are offered."""
    return page.locator(f"{WAYS}.pc-fits")


def here(page: Page) -> str:
    """Return the id of the section on the screen; empty when nobody walks."""
    shown = page.locator(HERE)
    return shown.get_attribute("id") or "" if shown.count() else ""


def trail(page: Page) -> list[str]:
    """Return every answer given, with its step."""
    lines: list[str] = page.locator(".pc-walk-trail li").all_text_contents()
    return lines


def leave(page: Page) -> None:
    """Open the list of what to see to before one leaves."""
    page.locator('[data-deed="ask"]').tap()
