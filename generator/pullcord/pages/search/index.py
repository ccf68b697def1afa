"""The index as files: small scripts, since a page opened from a folder may load nothing else.

`search-words-N.js` hold words in order, each with the places it stands in; `search-places-N.js`
hold what a hit shows, a line a place; `search-index.js` says which file begins with which word.
Each is one call of a function that `search.js` defines. Words and places are one string each: a
browser reads that at once, whereas every further file keeps a slow tablet waiting.
"""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from functools import lru_cache

from pullcord.pages.search.entry import Entry
from pullcord.pages.search.words import words_of

TITLE_WEIGHT = 9
"""One word in a title counts as much as this many in the text: titles outrank text."""
MOST_WEIGHT = 35
"""The greatest weight written, one figure to base 36."""
FILE_CHARACTERS = 30_000
PLACES_A_FILE = 2500
"""Some 500 kB: a thousand procedures have a dozen such files, most of them loaded by a few keys."""
SHOWN_CHARACTERS = 140
_DIGITS = "0123456789abcdefghijklmnopqrstuvwxyz"


def index_files(entries: Sequence[Entry]) -> Mapping[str, str]:
    """Return every file of the index by its name. Entries keep their order: earlier ranks first."""
    word_files = list(_word_files(_postings(entries)))
    place_files = list(_place_files(entries))
    start = {
        "first": [lines[0][0] for lines in word_files],
        "places": PLACES_A_FILE,
        "count": len(entries),
    }
    files = {"search-index.js": _call("start", start)}
    for number, lines in enumerate(word_files):
        text = "\n".join(f"{word} {places}" for word, places in lines)
        files[f"search-words-{number}.js"] = _call("words", number, text)
    for number, places in enumerate(place_files):
        files[f"search-places-{number}.js"] = _call("places", number, places)
    return files


def weights(entry: Entry) -> Mapping[str, int]:
    """Return how much each word of an entry counts."""
    if entry.words is not None:
        return entry.words
    counts = Counter(words_of(f"{entry.under}\n{entry.text}"))
    for word in words_of(entry.title):
        counts[word] += TITLE_WEIGHT
    return {word: min(count, MOST_WEIGHT) for word, count in counts.items()}


@lru_cache(maxsize=4096)
def base36(number: int) -> str:
    """Return a number that is not negative, to base 36, as the browser's parseInt reads it."""
    digits = _DIGITS[number % 36]
    while number := number // 36:
        digits = _DIGITS[number % 36] + digits
    return digits


def _postings(entries: Sequence[Entry]) -> list[tuple[str, str]]:
    """Return each word with its places: steps from place to place, each with its weight behind."""
    places: dict[str, list[str]] = {}
    last: dict[str, int] = {}
    written = [base36(weight) for weight in range(MOST_WEIGHT + 1)]
    for number, entry in enumerate(entries):
        for word, weight in weights(entry).items():
            step = base36(number - last.get(word, 0))
            last[word] = number
            places.setdefault(word, []).append(f"{step}.{written[weight]}")
    return [(word, ",".join(places[word])) for word in sorted(places)]


def _word_files(postings: list[tuple[str, str]]) -> Iterator[list[tuple[str, str]]]:
    lines: list[tuple[str, str]] = []
    characters = 0
    for word, places in postings:
        if lines and characters + len(word) + len(places) > FILE_CHARACTERS:
            yield lines
            lines, characters = [], 0
        lines.append((word, places))
        characters += len(word) + len(places) + 2
    if lines:
        yield lines


def _place_files(entries: Sequence[Entry]) -> Iterator[str]:
    for first in range(0, len(entries), PLACES_A_FILE):
        yield "\n".join(
            f"{entry.href}\t{_line(entry.title)}\t{_line(entry.under)}\t{_beginning(entry.text)}"
            for entry in entries[first : first + PLACES_A_FILE]
        )


def _line(text: str) -> str:
    return " ".join(text.split())


def _beginning(text: str) -> str:
    line = _line(text)
    if len(line) <= SHOWN_CHARACTERS:
        return line
    return line[:SHOWN_CHARACTERS].rsplit(" ", 1)[0] + " …"


def _call(function: str, *values: object) -> str:
    """Return a script that calls `pullcordSearch.FUNCTION`; nothing in it can end the script."""
    written = ",".join(
        json.dumps(value, ensure_ascii=False, separators=(",", ":")) for value in values
    )
    safe = written.replace("<", "\\u003c").replace("\u2028", "\\u2028").replace("\u2029", "\\u2029")
    return f"pullcordSearch.{function}({safe});\n"
