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

    def allows_more(self, order: tuple[str, ...], names: tuple[str, ...]) -> bool:
        """Say whether an order may go on with some steps."""
        more = self.extended((), names)
        return all(self.is_allowed((*order, *more[: at + 1])) for at in range(len(more)))

    def allows_end(self, order: tuple[str, ...], names: tuple[str, ...], outcome: str) -> bool:
        """Say whether an order may go on with some steps and then end at an outcome."""
        whole = (*self.extended(order, names), outcome)
        return self.allows_more(order, names) and self.is_allowed(whole)
