"""A tablet with no network: a context of the browser of its own, with one page."""

from __future__ import annotations

import re
from collections.abc import Callable

from playwright.sync_api import Browser, Page

PORTRAIT = {"width": 820, "height": 1180}
LANDSCAPE = {"width": 1180, "height": 820}
PATIENCE_MS = 120_000
"""Of a machine that does other things meanwhile."""

FROM_A_NETWORK = re.compile(r"^(?!file:|data:)")
OWN = ("file:", "data:", "blob:", "about:")


def take_tablet(
    browser: Browser, requests: list[str], errors: list[str], **options: object
) -> Page:
    """Return the page of a new tablet; any option of a browser context may be given.

    A request for anything but a local file is refused and noted in `requests`, an error in a
    page's script in `errors`. It is put away with `page.context.close()`.
    """
    context = browser.new_context(**{"viewport": PORTRAIT, "has_touch": True, **options})
    context.set_offline(True)
    context.set_default_timeout(PATIENCE_MS)
    context.route(FROM_A_NETWORK, lambda route: route.abort())
    context.on("request", lambda request: _note(requests, request.url))
    page = context.new_page()
    page.on("pageerror", lambda error: errors.append(str(error)))
    return page


OpenTablet = Callable[..., Page]
"""Opens a tablet, with options of a browser context."""


def _note(requests: list[str], url: str) -> None:
    if not url.startswith(OWN):
        requests.append(url)
