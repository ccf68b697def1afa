"""One text as YAML that reads back as the same text, in the plainest form that does."""

from __future__ import annotations

import re

WIDTH = 100
"""Characters in a line; a text that needs more goes on in the next."""

_OTHER_THAN_TEXT = re.compile(
    r"true|false|null|~|[-+]?\.(inf|nan)|[-+.]?\d[\d_.,:]*([eE][-+]?\d+)?|0[xob][\da-fA-F_]+"
    r"|\d{4}-\d\d?-\d\d?([Tt ].*)?",
    re.IGNORECASE,
)
"""What readers of YAML other than ours take for a number, a day or a yes."""
_PLAIN = re.compile(r"[^\W_]|[(/.]")
_PLAIN_IN_FLOW = re.compile(r"[^,\[\]{}]*")
_ESCAPES = {'"': '\\"', "\\": "\\\\", "\n": "\\n", "\t": "\\t", "\r": "\\r"}


def write_scalar(text: str) -> str:
    """Return a text on one line, for between brackets or as a key too: plain, else quoted."""
    if is_plain(text) and _PLAIN_IN_FLOW.fullmatch(text):
        return text
    return quoted(text)


def write_value(text: str, indent: int, before: int) -> list[str]:
    """Return the lines of a text that stands behind a key.

    `indent` is that of the key, `before` how many characters stand before the value in its line.
    The first line goes behind the key, the others are whole lines.
    """
    if "\n" in text and _may_be_literal(text):
        margin = " " * (indent + 2)
        return ["|-", *(margin + line if line else "" for line in text.split("\n"))]
    one_line = text if is_plain(text) else quoted(text)
    if before + len(one_line) > WIDTH and may_be_folded(text):
        return [">-", *fill(text, indent + 2)]
    return [one_line]


def is_plain(text: str) -> bool:
    """Whether a text can stand without quotes, and no reader takes it for a number or the like."""
    return (
        text.isprintable()
        and _PLAIN.match(text) is not None
        and not text.endswith((" ", ":"))
        and ": " not in text
        and " #" not in text
        and not text.startswith("...")
        and _OTHER_THAN_TEXT.fullmatch(text) is None
    )


def quoted(text: str) -> str:
    """Return a text in double quotes, whatever it holds."""
    return f'"{"".join(map(_escaped, text))}"'


def may_be_folded(text: str) -> bool:
    """Whether a text of one paragraph keeps its words and spaces when its lines are filled."""
    return text.isprintable() and " " in text and text == " ".join(text.split())


def fill(text: str, indent: int) -> list[str]:
    """Return a text as whole lines, each as long as it may be; words are not broken."""
    lines: list[str] = []
    for word in text.split(" "):
        if lines and len(lines[-1]) + 1 + len(word) <= WIDTH:
            lines[-1] += f" {word}"
        else:
            lines.append(" " * indent + word)
    return lines


def _may_be_literal(text: str) -> bool:
    lines = text.split("\n")
    return (
        all(line.isprintable() and line == line.rstrip() for line in lines)
        and not lines[0].startswith(" ")
        and all((lines[0], lines[-1]))
    )


def _escaped(character: str) -> str:
    if character in _ESCAPES:
        return _ESCAPES[character]
    if character.isprintable():
        return character
    code = ord(character)
    if code < 0x100:
        return f"\\x{code:02x}"
    return f"\\u{code:04x}" if code < 0x10000 else f"\\U{code:08x}"
