"""What changed about the causes: which there are, how likely each is, and what it takes."""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.analysis.diff.change import Change, Part, changed
from pullcord.analysis.diff.fields import compare_fields
from pullcord.analysis.diff.renames import Renames
from pullcord.model.procedure import Procedure


def compare_causes(old: Procedure, new: Procedure, renames: Renames) -> Iterator[Change]:
    """Yield every change of the causes; `old` has its new names already."""
    for name in old.causes:
        if name not in new.causes:
            yield Change(Part.CAUSES, name, "removed", old.causes[name].title, "")
    was = {after: before for before, after in renames.causes.items()}
    for name, cause in new.causes.items():
        if name not in old.causes:
            yield Change(Part.CAUSES, name, "added", "", cause.title)
            continue
        yield from changed(Part.CAUSES, name, "renamed", was.get(name, name), name)
        yield from compare_fields(Part.CAUSES, name, old.causes[name], cause, but=("as_",))
