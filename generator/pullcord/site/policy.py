"""A page's own word on which scripts may run in it, so that a script slipped into it may not.

It is a Content-Security-Policy (W3C, Content Security Policy Level 3) in a `meta` element, the one
form of it that also holds for pages opened from a folder. The theme's few inline scripts are let
through by what they say, by their SHA-256. Only scripts are held: should a browser not take the
files of a folder for the page's own, it shows the page as it is without scripts, and no barer.
"""

from __future__ import annotations

import base64
import hashlib
import re
from collections.abc import Iterable, Iterator
from html import escape

OWN = "'self' file:"
"""The site's files; opened from a folder, a browser does not know them for the page's own."""
_HEAD = "<head>"
_SCRIPT = re.compile(
    r"<script\b(?P<attributes>[^>]*)>(?P<text>.*?)</script", re.DOTALL | re.IGNORECASE
)
_NO_INLINE = re.compile(r"\bsrc\s*=|\btype\s*=\s*\W?application/json", re.IGNORECASE)


def with_policy(html: str, scripts: Iterable[str]) -> str:
    """Return a finished document that runs its site's script files and these inline scripts only.

    A document without a plain `<head>` comes back as it is.
    """
    policy = "; ".join(f"{name} {value}" for name, value in _rules(scripts).items())
    meta = f'<meta http-equiv="Content-Security-Policy" content="{escape(policy)}">'
    return html.replace(_HEAD, _HEAD + meta, 1)


def inline_scripts(html: str, content: str = "") -> tuple[str, ...]:
    """Return the text of every script that would run, but for those that stand in the content.

    What is made from files has no script in it; if there is one all the same, it is not ours.
    """
    slipped_in = _read(content)
    return tuple(script for script in _read(html) if script not in slipped_in)


def _rules(scripts: Iterable[str]) -> dict[str, str]:
    return {
        "script-src": " ".join((OWN, *_hashes(scripts))),
        "connect-src": OWN,
        "object-src": "'none'",
        "base-uri": "'none'",
        "form-action": "'none'",
    }


def _hashes(scripts: Iterable[str]) -> Iterator[str]:
    for script in dict.fromkeys(scripts):
        digest = hashlib.sha256(script.encode()).digest()
        yield f"'sha256-{base64.b64encode(digest).decode()}'"


def _read(html: str) -> list[str]:
    # Pages are large and many: a reader that takes every tag apart would double a build's time.
    # What this one misreads is only not let through.
    found = _SCRIPT.finditer(html)
    return [each["text"] for each in found if not _NO_INLINE.search(each["attributes"])]
