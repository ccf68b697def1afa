"""What changed in meaning between two states of the files: not their words' order, not comments."""

from __future__ import annotations

from pullcord.analysis.diff.change import Change, Difference, Part
from pullcord.analysis.diff.libraries import compare_libraries

__all__ = ["Change", "Difference", "Part", "compare_libraries"]
