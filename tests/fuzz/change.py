"""Changes to an input that know how it is made: YAML trees, limits, and plain bytes.

Everything is drawn from the `Random` that is handed in, so that a number names an input.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from copy import deepcopy
from random import Random
from typing import Any

import yaml

from pullcord.model.quantity import QUANTITIES
from pullcord.readings.unit import UNITS
from tests.fuzz.seeds import DUMPER, SCALARS, TOKENS, keys, seeds_of, tree_of, trees_of

Holder = tuple[Any, Any]
"""A list or mapping, and the position or key in it."""
LIMIT_WORDS = (
    "-", "–", "±", "+/-", " to ", " and ", ",", "under ", "over ", "up to ", "at least ", "from ",
    "between ", " or more", " or less", "<=", "≥", "max.", "open", "OL", "∞", "%", ":1", ".", " ",
    "below", "within", "above", "\n", "ohm", "−", "1/2", "e9",
)  # fmt: skip
NUMBERS = (
    "0", "1", "-1", "0.5", "12", "999999999", "1000000000", "0.000000000000000001", "1,5", "1.",
    ".5", "1e3", "007", "9" * 40, "0." + "3" * 60, "²", "١", "５",
)  # fmt: skip


def input_of(target: str, draw: Random) -> bytes:
    """Return one input for a target: a seed after some changes."""
    if target == "limits":
        return _change_limits(draw.choice(seeds_of(target)), draw)
    raw = _tree_input(target, draw) if draw.random() < 0.75 else _short(seeds_of(target), draw)
    return change_bytes(raw, draw) if draw.random() < 0.4 else raw


def change(target: str, raw: bytes, draw: Random) -> bytes:
    """Return an input that was found worth keeping, after one more change."""
    if target == "limits":
        return _change_limits(raw, draw)
    tree = tree_of(raw) if draw.random() < 0.5 else None
    if not isinstance(tree, dict | list):
        return change_bytes(raw, draw)
    return _written(_change_tree(target, tree, draw), draw)


def _short(seeds: Sequence[Any], draw: Random) -> Any:
    """Pick a seed, rather a short one: more inputs a second find more."""
    return seeds[int(len(seeds) * draw.random() ** 2)]


def _tree_input(target: str, draw: Random) -> bytes:
    tree = deepcopy(_short(trees_of(target), draw))
    for _ in range(draw.choice((1, 1, 2, 3, 6))):
        tree = _change_tree(target, tree, draw)
    return _written(tree, draw)


def _written(tree: Any, draw: Random) -> bytes:
    flow = draw.choice((None, False, False, True))
    text = yaml.dump(
        tree, Dumper=DUMPER, allow_unicode=True, sort_keys=False, default_flow_style=flow
    )
    return text.encode("utf-8", "surrogatepass")


def _change_tree(target: str, tree: Any, draw: Random) -> Any:
    options = tree.get("plugins") if isinstance(tree, dict) else None
    places = list(_places(options if options and draw.random() < 0.8 else tree))
    if not places:
        return draw.choice(trees_of(target))
    holder, key = draw.choice(places)
    draw.choice(_CHANGES)(target, holder, key, draw)
    return tree


def _places(tree: Any) -> Iterator[Holder]:
    """Yield every place in a tree; each list and mapping comes with those in it."""
    waiting = [tree]
    while waiting:
        each = waiting.pop()
        if not isinstance(each, dict | list):
            continue
        for key, part in each.items() if isinstance(each, dict) else enumerate(each):
            yield each, key
            waiting.append(part)


def _other_text(_target: str, holder: Any, key: Any, draw: Random) -> None:
    holder[key] = draw.choice(SCALARS)


def _part_of_another(target: str, holder: Any, key: Any, draw: Random) -> None:
    places = list(_places(draw.choice(trees_of(target))))
    if places:
        other, at = draw.choice(places)
        holder[key] = deepcopy(other[at])


def _same_key_of_another(target: str, holder: Any, key: Any, draw: Random) -> None:
    """Put in what another file has at a key of that name: most likely to be of the right kind."""
    if isinstance(key, str):
        places = [at for at in _places(draw.choice(trees_of(target))) if at[1] == key]
        if places:
            other, at = draw.choice(places)
            holder[key] = deepcopy(other[at])


def _no_more(_target: str, holder: Any, key: Any, _draw: Random) -> None:
    del holder[key]


def _new_key(target: str, holder: Any, key: Any, draw: Random) -> None:
    there = holder[key]
    if isinstance(there, dict):
        new = draw.choice(keys())
        there[new] = draw.choice((*SCALARS, [], {}))
        _same_key_of_another(target, there, new, draw)
    elif isinstance(there, list):
        there.append(deepcopy(there[-1]) if there else draw.choice(SCALARS))


def _other_key(_target: str, holder: Any, key: Any, draw: Random) -> None:
    if isinstance(holder, dict):
        part = holder.pop(key)
        holder[draw.choice((draw.choice(keys()), draw.choice(SCALARS)))] = part


def _wrapped(_target: str, holder: Any, key: Any, draw: Random) -> None:
    for _ in range(draw.choice((1, 1, 1, 2, 14))):
        holder[key] = [holder[key]] if draw.random() < 0.5 else {draw.choice(keys()): holder[key]}


def _many(_target: str, holder: Any, key: Any, draw: Random) -> None:
    number = draw.choice((2, 3, 60))
    there = holder[key]
    if isinstance(there, list):
        holder[key] = (there * number)[:120]
    elif isinstance(there, dict):
        for n in range(min(number, 9)):
            there.update({f"{k}-{n}"[:60]: v for k, v in list(there.items())[:9]})


def _slip_in_text(_target: str, holder: Any, key: Any, draw: Random) -> None:
    there = holder[key]
    if isinstance(there, str):
        at = draw.randrange(len(there) + 1)
        token = draw.choice((*TOKENS, *SCALARS, *NUMBERS, *LIMIT_WORDS, *UNITS))
        holder[key] = there[:at] + token + there[at + draw.choice((0, 0, 1, 5)) :]


def _swapped(target: str, holder: Any, key: Any, draw: Random) -> None:
    other, at = draw.choice(list(_places(holder)))
    if other is holder:
        holder[key], holder[at] = holder[at], holder[key]


_CHANGES: tuple[Callable[[str, Any, Any, Random], None], ...] = (
    _other_text, _part_of_another, _same_key_of_another, _same_key_of_another, _no_more, _new_key,
    _new_key, _other_key, _wrapped, _many, _slip_in_text, _slip_in_text, _swapped,
)  # fmt: skip


def change_bytes(raw: bytes, draw: Random) -> bytes:
    """Return bytes after a slip or a fault: something lost, doubled, put in, or turned over."""
    for _ in range(draw.choice((1, 1, 2, 4))):
        at, length = draw.randrange(len(raw) + 1), draw.choice((0, 1, 1, 3, 20, 200))
        cut = raw[at : at + length]
        token = draw.choice((*TOKENS, *SCALARS)).encode("utf-8", "surrogatepass")
        put = draw.choice((token, token, b"", cut + cut, draw.randbytes(min(length, 4)), cut[::-1]))
        raw = raw[:at] + put + raw[at + length :]
    return draw.choice(_WHOLE)(raw) if draw.random() < 0.03 else raw


_WHOLE: tuple[Callable[[bytes], bytes], ...] = (
    lambda raw: b"\xef\xbb\xbf" + raw,
    lambda raw: raw.replace(b"\n", b"\r\n"),
    lambda raw: raw.replace(b"\n", b"\r"),
    lambda raw: raw.decode("utf-8", "replace").encode("utf-16"),
    lambda raw: raw.decode("utf-8", "replace").encode("utf-16-be"),
    lambda raw: raw.decode("utf-8", "replace").encode("latin-1", "replace"),
    lambda raw: raw + b"\0" * 100,
)


def _change_limits(raw: bytes, draw: Random) -> bytes:
    text = raw.decode("utf-8", "replace")
    for _ in range(draw.choice((1, 1, 2, 3, 6))):
        at, length = draw.randrange(len(text) + 1), draw.choice((0, 0, 1, 2, 5, 30))
        words = draw.choice((LIMIT_WORDS, NUMBERS, tuple(UNITS), QUANTITIES, TOKENS))
        text = text[:at] + draw.choice(words) + text[at + length :]
    # Half of them are limits alone, which are read sooner than their answers.
    text = text if draw.random() < 0.5 else text.partition("\n")[0]
    return text.encode("utf-8", "surrogatepass")
