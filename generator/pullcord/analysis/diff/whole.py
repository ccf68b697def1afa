"""What changed about a procedure as a whole: its words, its tools, where it starts."""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.analysis.diff.change import Change, Part, changed, changed_each
from pullcord.analysis.diff.fields import compare_fields
from pullcord.analysis.diff.renames import Renames
from pullcord.model.procedure import Procedure, Tool

_LOOKED_AT = ("steps", "causes", "tools")


def compare_whole(old: Procedure, new: Procedure, renames: Renames) -> Iterator[Change]:
    """Yield every change that belongs to no step or cause; `old` has its new names already."""
    yield from compare_fields(Part.WHOLE, "", old, new, but=_LOOKED_AT)
    for before, after in renames.tools.items():
        yield from changed(Part.WHOLE, "", "tool-renamed", before, after)
    was = {name: _tool(tool) for name, tool in old.tools.items()}
    now = {name: _tool(tool) for name, tool in new.tools.items()}
    yield from changed_each(Part.WHOLE, "", "tool", was, now)


def _tool(tool: Tool) -> str:
    return f"{tool.title} (or: {tool.instead})" if tool.instead else tool.title
