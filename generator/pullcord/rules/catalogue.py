"""Every rule there is, found in the folders below this one."""

from __future__ import annotations

import pkgutil
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache
from importlib import import_module
from types import ModuleType
from typing import Any

import pullcord.rules as package
from pullcord.finding import Severity
from pullcord.rules.severity import severity_of

_MOST_LINES = 60
_NAME = re.compile(rb"^(?:procedure|machine|job|stages|shared): *([a-z0-9-]+)", re.MULTILINE)
Files = Mapping[str, bytes]
"""The files of an example: their bytes by their names."""


@dataclass(frozen=True)
class Rule:
    """One rule, as its file says it."""

    id: str
    group: str
    """The folder it is in; it decides what `check` is given."""
    page: str
    """Its docstring: the first line is its title."""
    failing: Files
    mended: Files
    check: Callable[..., Any] | None
    """None for what reading itself finds."""
    is_safety: bool = False
    """Whether it is about somebody getting hurt: such a finding can never be allowed."""


@dataclass(frozen=True)
class RuleDoc:
    """What a page about a rule says."""

    id: str
    severity: Severity
    title: str
    """The rule in one sentence, with its full stop."""
    text: str
    """Why it matters: paragraphs of plain words, parted by empty lines."""
    failing: Mapping[str, str]
    """An example that breaks it: text by file name. Empty where no text can show it."""
    mended: Mapping[str, str]
    """The same, put right."""


def documented_rules() -> tuple[RuleDoc, ...]:
    """Return what there is to say about every rule, sorted by identifier."""
    return tuple(_document(rule) for rule in rules())


@cache
def rules() -> tuple[Rule, ...]:
    """Return every rule, sorted by identifier."""
    found = pkgutil.walk_packages(package.__path__, f"{package.__name__}.")
    modules = [import_module(info.name) for info in found if not info.ispkg]
    return tuple(sorted(map(_read_rule, filter(_is_rule, modules)), key=lambda rule: rule.id))


def _is_rule(module: ModuleType) -> bool:
    return hasattr(module, "ID") and hasattr(module, "FAILING")


def _read_rule(module: ModuleType) -> Rule:
    return Rule(
        id=module.ID,
        group=module.__name__.split(".")[-2],
        page=(module.__doc__ or "").strip(),
        failing=_files(module.FAILING),
        mended=_files(module.MENDED),
        check=getattr(module, "check", None),
        is_safety=".safety." in module.__name__ or getattr(module, "IS_SAFETY", False),
    )


def _files(example: str | bytes | Mapping[str, str | bytes]) -> Files:
    if isinstance(example, Mapping):
        return {name: _as_bytes(text) for name, text in example.items()}
    raw = _as_bytes(example)
    name = _NAME.search(raw)
    return {f"{name[1].decode() if name else 'example'}.yaml": raw}


def _as_bytes(text: str | bytes) -> bytes:
    return text.encode() if isinstance(text, str) else text


def _document(rule: Rule) -> RuleDoc:
    title, _, text = rule.page.partition("\n")
    return RuleDoc(
        id=rule.id,
        severity=severity_of(rule.id),
        title=title,
        text=text.strip(),
        failing={name: _shown(raw) for name, raw in rule.failing.items()},
        mended={name: _shown(raw) for name, raw in rule.mended.items()},
    )


def _shown(raw: bytes) -> str:
    lines = raw.decode("utf-8", "replace").strip("\n").split("\n")
    shown = [*lines[:_MOST_LINES], "…"] if len(lines) > _MOST_LINES else lines
    return "\n".join(line if len(line) <= 200 else f"{line[:199]}…" for line in shown)
