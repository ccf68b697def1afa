"""Which scripts of a page run first: a walk can be begun before the theme's have set up the rest.

On a slow tablet the theme's bundle takes seconds, and has the whole page styled anew three times.
"""

from __future__ import annotations

import re

_BUNDLE = re.compile(r'\s*<script src="[^"]*assets/javascripts/bundle\.[^"]*"></script>')
_OURS = re.compile(r'<script src="([^"]*assets/pullcord/[^"]*\.js)"></script>')
_HEAD = "<head>"


def ours_first(html: str) -> str:
    """Return a finished document with the theme's bundle after the last of our script files.

    Scripts of the project's own stay behind both. A document without them comes back as it is.
    """
    bundle, ours = _BUNDLE.search(html), list(_OURS.finditer(html))
    if bundle is None or not ours or ours[-1].start() < bundle.start():
        return html
    last = ours[-1].end()
    return html[: bundle.start()] + html[bundle.end() : last] + bundle.group() + html[last:]


def fetched_early(html: str) -> str:
    """Return a finished document that asks for our scripts before it is read to its end."""
    links = "".join(
        f'<link rel="preload" as="script" href="{found[1]}">' for found in _OURS.finditer(html)
    )
    return html.replace(_HEAD, _HEAD + links, 1)
