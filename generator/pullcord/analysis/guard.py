"""Orders that must not be proposed, whatever they would save."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass


@dataclass(frozen=True)
class Guard:
    """Asks the safety analysis about an order before it is proposed."""

    is_allowed: Callable[[tuple[str, ...]], bool]
    """Given step names in the order they would be done, of those in `steps` only. Asked for every
    beginning of an order, and for whole orders, whose last item is the outcome's graph node."""
    steps: frozenset[str]
    """Steps whose place in the order can make it unsafe: those that open, make, fit and so on."""

    def extended(self, order: tuple[str, ...], names: tuple[str, ...]) -> tuple[str, ...]:
        """Return an order with those of the further steps that matter."""
        return order + tuple(name for name in names if name in self.steps)

    def allows_whole(self, names: tuple[str, ...], outcome: str) -> bool:
        """Say whether a whole order and each of its beginnings are allowed."""
        order = self.extended((), names)
        beginnings = (order[:length] for length in range(1, len(order) + 1))
        return all(map(self.is_allowed, (*beginnings, (*order, outcome))))
