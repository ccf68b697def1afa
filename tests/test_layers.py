"""The shape of the package: who may import whom, and who may touch the world."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

import pullcord

PACKAGE = Path(pullcord.__file__).parent

LAYERS = (
    ("cli",),
    ("commands", "plugin"),
    ("project", "site"),
    ("pages", "printing"),
    ("drawing",),
    ("analysis", "safety", "rules"),
    ("readings",),
    ("graph",),
    ("model",),
    ("source",),
    ("errors",),
    ("finding",),
)
"""From the faces down; a module imports from its own row or a lower one, and never upward."""

CORE = ("model", "graph", "readings", "rules", "safety", "analysis", "finding", "errors")
WORLDLY = {"os", "io", "shutil", "subprocess", "socket", "tempfile", "time", "datetime", "random"}


def modules() -> Iterator[tuple[str, ast.Module]]:
    """Yield each module of the package, by its path, with its syntax tree."""
    for path in sorted(PACKAGE.rglob("*.py")):
        yield path.relative_to(PACKAGE).as_posix(), ast.parse(path.read_text(encoding="utf-8"))


def imported(tree: ast.Module) -> Iterator[str]:
    """Yield the dotted names a module imports."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom) and node.module:
            yield from (f"{node.module}.{alias.name}" for alias in node.names)


def roots(tree: ast.Module) -> set[str]:
    """Return the packages a module imports from."""
    return {name.split(".")[0] for name in imported(tree)}


def called(tree: ast.Module) -> set[str]:
    """Return the dotted names a module calls."""
    return {ast.unparse(node.func) for node in ast.walk(tree) if isinstance(node, ast.Call)}


def upward(path: str) -> set[str]:
    """Return the names that a module imports from layers above its own."""
    own = row_of(part_of(path))
    names = [name.split(".") for name in imported(MODULES[path]) if name.startswith("pullcord.")]
    rows = {".".join(name): row_of(name[1]) for name in names}
    return {n for n, row in rows.items() if None not in (row, own) and row < own}


def part_of(path: str) -> str:
    """Return the first name below the package: a folder, or a file without its ending."""
    return path.split("/")[0].removesuffix(".py")


def row_of(part: str) -> int | None:
    """Return the row of a part in LAYERS, or None for the package's own front door."""
    return next((row for row, parts in enumerate(LAYERS) if part in parts), None)


MODULES = dict(modules())


def test_every_module_has_a_layer() -> None:
    """A new folder must be given its place in the design."""
    parts = {part_of(path) for path in MODULES} - {"__init__"}
    assert {part for part in parts if row_of(part) is None} == set()


def test_imports_point_down() -> None:
    """No module imports from a layer above its own."""
    assert {path: found for path in MODULES if (found := upward(path))} == {}


def test_only_the_plugin_knows_mkdocs() -> None:
    """The core and the pages can be used without MkDocs."""
    knowing = {path for path, tree in MODULES.items() if "mkdocs" in roots(tree)}
    assert knowing == {"plugin.py"}


def test_who_starts_a_process() -> None:
    """The layout engine is another program, and helpers of a large build are Python again."""
    starters = {"os.system", "os.popen", "os.execv"}
    starting = {p for p, t in MODULES.items() if "subprocess" in roots(t) or starters & called(t)}
    assert starting == {"drawing/layout.py", "site/helpers.py"}


def test_only_the_command_line_prints_or_exits() -> None:
    """Everything else hands its words to whoever called it."""
    talkers = {"print", "click.echo", "click.secho", "sys.exit", "exit", "quit", "os._exit"}
    talking = {path for path, tree in MODULES.items() if talkers & called(tree)}
    assert {part_of(path) for path in talking} <= {"cli", "commands"}


def test_the_core_is_pure() -> None:
    """Thinking never reads a file, a clock or the environment."""
    core = {path: tree for path, tree in MODULES.items() if part_of(path) in CORE}
    assert len(core) > 100
    worldly = {path for path, tree in core.items() if WORLDLY & roots(tree)}
    reading = {path for path, tree in core.items() if "open" in called(tree)}
    assert (worldly, reading) == (set(), set())
