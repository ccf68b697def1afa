"""Inputs to begin with: what is shipped, what the rules' own examples hold, what people write."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path
from typing import Any

import yaml

from pullcord.model import job, machine, meter, procedure, shared, stage, walk_record
from pullcord.model.action import Action
from pullcord.model.base import Record
from pullcord.model.quantity import QUANTITIES
from pullcord.model.shape import keys_of
from pullcord.readings.limits import FORMS
from pullcord.readings.unit import UNITS
from pullcord.rules.catalogue import rules
from pullcord.source.places import shipped_procedures
from tests.fuzz.beside import FILES, JOB, WALK
from tests.fuzz.targets import SETTINGS

ROOT = Path(__file__).parents[2]
MOST_BYTES = 6000
"""A longer seed finds no more, and is read fewer times a second."""
PLAIN = getattr(yaml, "CBaseLoader", yaml.BaseLoader)
DUMPER = getattr(yaml, "CSafeDumper", yaml.SafeDumper)

TOKENS = (
    *"#&*!|>'\"%@`[]{},:?-\t\n\r \0\x1b\x7f", "  ", ": ", " #", "<<: ", "---\n", "...\n", "&a ",
    "*a", "!!x ", "!!python/none ", "\\", "\ufeff", "\u2028", "\u202e", "\u2066", "é",
    "Ω", "{{", "}}", "{% x %}", "| ", "> ", "? ", "\r\n", "- ", "𝛀", "\u0661", "²", "½",
    "%YAML 1.1\n",
)  # fmt: skip
SCALARS = (
    "", " ", "no", "yes", "null", "~", "012", "0", "-1", "1.5", "1e999", "nan", "inf", "-inf",
    "1_0", "0x10", "9" * 400, "0." + "0" * 300 + "1", "12:30", "done", "step casing", "step x",
    "cause x", "procedure no-prime", "procedure x", "../x", "CON", "a" * 300, "a" * 49, "x" * 1201,
    "a.b", "a-", "<script>alert(1)</script>", "{{ 7*7 }}", "[a](javascript:x)", "\u202eabc",
    "ab\u0000c", "שלום", "١٢ ohm", "²", "petrol", "spark", "engine", "test-lead", "bypass",
    "2026-02-30", "2026-03-01",
    "0000-01-01", "9999-12-31 23:59", "2026-03-01 24:00", "٢٠٢٦-٠٣-٠١", "plug.lead", "plug.", ".",
    "200-300 ohm", "open", "OL", "below", "within", "above", "12 V ± 3 %", "machine lead", "a\nb",
    "photos/a.jpg", "../../etc/passwd", "/etc/passwd", "full", "runs", "taken-in", "no-prime",
    "plough", "lead", "common practice", "a1", "1,1", "BK/WH", "copper", "A" * 121, "😀" * 60,
)  # fmt: skip
"""Words that mean something somewhere, and such as people and machines put in by mistake."""


@cache
def seeds_of(target: str) -> tuple[bytes, ...]:
    """Return what a target begins with, the shortest first."""
    return tuple(sorted(set(_SEEDS[target]()), key=lambda raw: (len(raw), raw)))


@cache
def trees_of(target: str) -> tuple[Any, ...]:
    """Return the seeds that are YAML as plain data, every scalar a text."""
    return tuple(tree for raw in seeds_of(target) if (tree := tree_of(raw)) is not None)


@cache
def keys() -> tuple[str, ...]:
    """Return every key that a record of the model knows, and those seen in the seeds."""
    known = {key for record in _records() for key in keys_of(record)}
    return tuple(sorted(known | set(_keys_in([*trees_of("loader"), *trees_of("plugin")]))))


def _records() -> Iterator[type[Record]]:
    modules = (job, machine, meter, procedure, shared, stage, walk_record)
    for each in (*(vars(module).values() for module in modules), (Action,)):
        yield from (kind for kind in each if isinstance(kind, type) and issubclass(kind, Record))


def _keys_in(data: Any) -> Iterator[str]:
    if isinstance(data, dict):
        yield from data
    if isinstance(data, dict | list):
        for part in data.values() if isinstance(data, dict) else data:
            yield from _keys_in(part)


def tree_of(raw: bytes) -> Any:
    """Return a file's plain data, or None: all texts, but in settings, where a `false` is one."""
    loader = yaml.SafeLoader if b"plugins:" in raw else PLAIN
    try:
        return yaml.load(raw, Loader=loader)  # noqa: S506 # Neither makes anything but plain data.
    except (yaml.YAMLError, ValueError, TypeError, RecursionError):
        return None


def _small(paths: Iterator[Path]) -> Iterator[bytes]:
    raws = (path.read_bytes() for path in sorted(paths))
    return (raw for raw in raws if len(raw) <= MOST_BYTES)


def _examples() -> Iterator[bytes]:
    for rule in rules():
        for files in (rule.failing, rule.mended):
            yield from (raw for raw in files.values() if len(raw) <= MOST_BYTES)


def _loader() -> Iterator[bytes]:
    yield from (text.encode() for text in FILES.values())
    yield from _examples()
    yield from _small((ROOT / "tests" / "corpus").glob("*.yaml"))
    yield from _small((ROOT / "demo" / "machines").glob("*.yaml"))
    yield from _small((ROOT / "demo" / "jobs").glob("*.yaml"))
    yield from _small((shipped_procedures() / "shared").glob("*.yaml"))
    yield from (_shortened(path) for path in sorted(shipped_procedures().glob("*.yaml")))


def _shortened(path: Path) -> bytes:
    """Return a shipped procedure with as many of its steps as make a small file."""
    whole = yaml.load(path.read_bytes(), Loader=PLAIN)  # noqa: S506
    for name in list(whole.get("steps", {}))[4:]:
        del whole["steps"][name]
    text = yaml.dump(whole, Dumper=DUMPER, allow_unicode=True, sort_keys=False)
    return text.encode()


def _log() -> Iterator[bytes]:
    yield from (JOB.encode(), WALK.encode())
    yield from (raw for raw in _examples() if raw.startswith(b"job:"))
    yield from _small((ROOT / "demo" / "jobs").glob("*.yaml"))


def _plugin() -> Iterator[bytes]:
    yield from (SETTINGS, *(text.encode() for text in FILES.values()))
    yield (
        (ROOT / "demo" / "mkdocs.yml")
        .read_bytes()
        .replace(b"      currency", b"      library: false\n      currency")
    )
    for name, value in _OPTIONS.items():
        yield SETTINGS.replace(b"false}", f"false, {name}: {value}}}".encode())


_OPTIONS: Mapping[str, str] = {
    "procedures": "[procedures]",
    "machines": "[machines, .]",
    "jobs": "[]",
    "meter": "{title: x, leads: 0.2 ohm, ranges: [{up-to: 2 kohm, step: 1 ohm, digits: 2}]}",
    "replaces": "[no-prime]",
    "layout_engine": "built-in",
    "cache": "docs/cache",
    "templates": "[docs]",
    "currency": "EUR",
}


def _limits() -> Iterator[bytes]:
    texts = sorted({text for tree in trees_of("loader") for text in _limits_in(tree)})
    forms = FORMS.replace("`", "").replace(" or ", ", ").split(", ")
    for number, text in enumerate((*texts, *forms)):
        quantity = QUANTITIES[number % len(QUANTITIES)]
        yield f"{text}\n{quantity}\nbelow\nwithin\nabove".encode()
    yield from (
        f"1-2 {unit}\n{kind.quantity}\nopen\n{unit}".encode() for unit, kind in UNITS.items()
    )


def _limits_in(data: Any) -> Iterator[str]:
    if isinstance(data, dict):
        for key, part in data.items():
            if key in ("limits", "general", "value", "reading") and isinstance(part, str):
                yield part
            yield from _limits_in(part)
    elif isinstance(data, list):
        for part in data:
            yield from _limits_in(part)


_SEEDS = {"loader": _loader, "limits": _limits, "plugin": _plugin, "log": _log}
