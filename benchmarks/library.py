"""A made-up library of any size: `.venv/bin/python benchmarks/library.py FOLDER 100 30`.

Every procedure is a run of checks, a third of them readings that a machine sheet decides; one step
opens the petrol and a later one shuts it, one looks for a spark, and one procedure in ten hands
over to the next. The words say nothing. They are drawn from a stock, the same every time, as the
words of a language are: the one of rank n is drawn 1/n as often as the first (Zipf's law).
"""

from __future__ import annotations

import random
import sys
from itertools import accumulate
from pathlib import Path
from typing import Any

import yaml

VALUES = ("source-coil", "trigger-coil", "coil-primary", "coil-secondary", "plug-cap")
"""Of the machine sheets in `demo/machines`."""
STOCK = (
    "loose frayed damp corroded worn bent cracked blocked sticking leaking dirty tight chafed dry "
    "wire switch clip rod lever spring cover bolt ring seal cable bracket winding magnet terminal "
    "frame gasket reed chain bush clamp spacer washer pin block plate strap"
)
MADE_UP = [
    f"{one}{two}{three}"
    for three in ("n", "lt", "rd")
    for two in ("ack", "em", "ilo", "opu", "ur", "ate", "inso", "eb")
    for one in ("b", "cr", "d", "fl", "g", "h", "j", "k", "m", "n", "p", "qu", "r", "sl", "t", "v")
]
WORDS = [*STOCK.split(), *MADE_UP]
ODDS = [*accumulate(1 / rank for rank in range(1, len(WORDS) + 1))]
START = "shut-off"
DUMPER = getattr(yaml, "CSafeDumper", yaml.SafeDumper)
"""Writes thousands of files in seconds where PyYAML has its C part."""


def main() -> None:
    """Write the library that was asked for."""
    folder, procedures, steps = Path(sys.argv[1]), int(sys.argv[2]), int(sys.argv[3])
    write_library(folder, procedures, steps)


def write_library(folder: Path, procedures: int, steps: int) -> None:
    """Write so many procedures of so many steps as files into a folder."""
    folder.mkdir(parents=True, exist_ok=True)
    for place in range(procedures):
        data = make(place, procedures, steps)
        text = yaml.dump(data, Dumper=DUMPER, sort_keys=False, allow_unicode=True, width=96)
        (folder / f"{data['procedure']}.yaml").write_text(text, encoding="utf-8")


def make(place: int, procedures: int, steps: int) -> dict[str, Any]:
    """Return one procedure as plain data; `place` counts from 0."""
    chance = random.Random(place)  # noqa: S311 - not for secrets
    checks = [f"check-{number}" for number in range(1, steps - 3)]
    ends = [*checks[1:], "spark"]
    hands_over = place % 10 == 9 and place + 1 < procedures
    return {
        "procedure": name_of(place),
        "title": f"Made up {place + 1}: {_words(chance, 3)}",
        "symptom": f"{_words(chance, 9).capitalize()}.",
        "also-said": [_words(chance, 5) for _ in range(4)],
        "signs": {"seen": [f"{_words(chance, 4).capitalize()}."]},
        "about": f"Made up for timing. {_words(chance, 25).capitalize()}.",
        "tools": {"meter": {"title": "Meter that reads ohms"}},
        "start": START,
        "causes": {f"cause-{name}": _cause(chance) for name in checks},
        "steps": {
            **_first_steps(checks[0], chance),
            **{
                name: _check(name, then, number, chance)
                for number, (name, then) in enumerate(zip(checks, ends, strict=True))
            },
            "spark": {
                "title": "Look for a spark",
                "do": f"Clamp a known-good plug to bare metal and spin the engine. {_say(chance)}",
                "makes": ["spark", "cranking"],
                "ask": "Is there a spark?",
                "answers": {
                    "a spark": "done",
                    "none": f"procedure {name_of(place + 1)}" if hands_over else "done",
                },
            },
        },
    }


def name_of(place: int) -> str:
    """Return the name of a procedure by its place."""
    return f"made-up-{place + 1:04}"


def _first_steps(then: str, chance: random.Random) -> dict[str, Any]:
    return {
        START: {"title": "Shut it off", "do": _say(chance), "then": "step bowl"},
        "bowl": {
            "title": "Look into the float bowl",
            "do": f"Let the engine cool. Take the float bowl off. {_say(chance)}",
            "cools": "engine",
            "opens": "petrol",
            "then": "step refit",
        },
        "refit": {
            "title": "Refit the bowl",
            "do": f"Refit the bowl, wipe up, wait until the smell is gone. {_say(chance)}",
            "closes": "petrol",
            "clears": "vapour",
            "then": f"step {then}",
        },
    }


def _check(name: str, then: str, number: int, chance: random.Random) -> dict[str, Any]:
    head = {
        "title": _words(chance, 4).capitalize(),
        "do": f"{_say(chance)} {_say(chance)}",
        "why": _say(chance),
        "minutes": chance.randint(2, 15),
    }
    if number % 3:
        answers = {_words(chance, 3): f"cause cause-{name}", _words(chance, 4): f"step {then}"}
        return {**head, "ask": f"{_words(chance, 5).capitalize()}?", "answers": answers}
    return {
        **head,
        "needs": "meter",
        "ask": "What does the meter read?",
        "reading": {
            "quantity": "resistance",
            "at": _words(chance, 2),
            "against": "bare engine metal",
            "limits": VALUES[number % len(VALUES)],
            "general": "100-300 ohm",
            "source": "invented",
        },
        "answers": {
            "below": f"cause cause-{name}",
            "within": f"step {then}",
            "above": f"cause cause-{name}",
        },
    }


def _cause(chance: random.Random) -> dict[str, Any]:
    return {
        "title": _words(chance, 3).capitalize(),
        "remedy": f"{_say(chance)} {_say(chance)}",
        "odds": chance.randint(1, 20),
        "odds-from": "invented",
        "parts": chance.randint(0, 60),
        "minutes": chance.randint(5, 60),
    }


def _say(chance: random.Random) -> str:
    return f"{_words(chance, chance.randint(6, 14)).capitalize()}."


def _words(chance: random.Random, count: int) -> str:
    return " ".join(chance.choices(WORDS, cum_weights=ODDS, k=count))


if __name__ == "__main__":
    main()
