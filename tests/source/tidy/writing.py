"""Files as different hands write them: random data in random styles, with comments between."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from hypothesis import strategies as st

from pullcord.source.scalar import is_plain, quoted, write_scalar

Draw = Callable[[Any], Any]

WORDS = st.sampled_from(
    ["petrol", "tap", "shut", "no", "3.50", "#2", "it's", "a:b", "ohm", "-", "é", "(cold)", "50 %"]
)
TEXTS = st.lists(WORDS, min_size=1, max_size=40).map(" ".join)
NAMES = st.sampled_from(["title", "do", "why", "near", "minutes", "a", "b", "dry, no smell", "yes"])
DATA: st.SearchStrategy[Any] = st.recursive(
    TEXTS,
    lambda inner: (
        st.lists(inner, min_size=1, max_size=4)
        | st.dictionaries(NAMES, inner, min_size=1, max_size=4)
    ),
    max_leaves=12,
)
FILES = st.dictionaries(NAMES, DATA, min_size=1, max_size=5)
NOTES = st.sampled_from(["# why", "#", "# a: b", '# "x', "# - y", "## z [", "# pullcord: it"])


@st.composite
def files(draw: Draw) -> str:
    """Return the text of a file."""
    data = draw(FILES)
    head = [draw(NOTES), ""] if draw(st.booleans()) else []
    lines = [*head, *_keys(draw, data, draw(st.sampled_from([0, 0, 2])))]
    foot = [draw(NOTES)] if draw(st.booleans()) else []
    return "\n".join([*lines, *foot]) + draw(st.sampled_from(["", "\n", "\n\n"]))


def _keys(draw: Draw, data: dict[str, Any], indent: int) -> list[str]:
    lines: list[str] = []
    for name, value in data.items():
        lines += _between(draw, indent)
        key = write_scalar(name) if draw(st.booleans()) else quoted(name)
        lines += _behind(draw, f"{' ' * indent}{key}:", value, indent)
    return lines + _ending(draw, indent)


def _items(draw: Draw, data: list[Any], indent: int) -> list[str]:
    lines: list[str] = []
    for value in data:
        lines += _between(draw, indent)
        if isinstance(value, dict) and draw(st.booleans()):
            inner = indent + draw(st.sampled_from([2, 4]))
            first, *rest = _keys(draw, value, inner)
            if first.strip() and not first.lstrip().startswith("#"):
                lines += [" " * indent + "-" + " " * (inner - indent - 1) + first.lstrip(), *rest]
            else:
                lines += [" " * indent + "-", first, *rest]
        else:
            lines += _behind(draw, " " * indent + "-", value, indent)
    return lines


def _behind(draw: Draw, lead: str, value: Any, indent: int) -> list[str]:
    """Return a key or a dash with what stands behind it."""
    note = f"  {draw(NOTES)}" if draw(st.integers(0, 5)) == 0 else ""
    if isinstance(value, str):
        first, *rest = draw(st.sampled_from(_styles(value, indent)))
        if not rest or first[0] in "|>":
            return [f"{lead} {first}{note}", *rest]
        return [f"{lead} {first}", *rest[:-1], rest[-1] + note]
    if draw(st.integers(0, 2)) == 0:
        return [f"{lead} {_flow(value)}{note}"]
    deeper = indent + draw(st.sampled_from([1, 2, 4]))
    if isinstance(value, dict):
        return [f"{lead}{note}", *_keys(draw, value, deeper)]
    is_key = lead.endswith(":")
    return [
        f"{lead}{note}",
        *_items(draw, value, draw(st.sampled_from([deeper, indent])) if is_key else deeper),
    ]


def _styles(text: str, indent: int) -> list[list[str]]:
    """Return a text in every way it can be written."""
    margin = " " * (indent + 3)
    half = len(text.split(" ")) // 2
    left, right = " ".join(text.split(" ")[:half]), " ".join(text.split(" ")[half:])
    found = [
        [quoted(text)],
        ["'" + text.replace("'", "''") + "'"],
        ["|-", margin + text],
        [">-", margin + text],
        [">", margin + text],
        ["|+", margin + text, ""],
        [f"|{3}-", margin + text],
    ]
    if is_plain(text):
        found.append([text])
    if half:
        found += [[">-", margin + left, margin + right], [">", margin + left, "", margin + right]]
        found.append(['"' + left, margin + right + '"'])
        if is_plain(text) and not right.startswith(("#", "- ")) and " #" not in text:
            found.append([left, margin + right])
    return found


def _flow(value: Any) -> str:
    if isinstance(value, str):
        return write_scalar(value)
    if isinstance(value, list):
        return f"[{', '.join(map(_flow, value))}]"
    return (
        "{" + ", ".join(f"{write_scalar(key)}: {_flow(part)}" for key, part in value.items()) + "}"
    )


def _between(draw: Draw, indent: int) -> list[str]:
    lines = [""] * draw(st.sampled_from([0, 0, 0, 1, 3]))
    if draw(st.integers(0, 4)) == 0:
        lines.append(" " * (indent + draw(st.sampled_from([0, 0, 1]))) + draw(NOTES))
    return lines


def _ending(draw: Draw, indent: int) -> list[str]:
    return [" " * indent + draw(NOTES)] if indent and draw(st.integers(0, 5)) == 0 else []
