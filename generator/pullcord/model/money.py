"""Amounts of the shop's own money: exact, never floating point."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from pydantic import Field

Money = Annotated[Decimal, Field(ge=0, le=100000, decimal_places=2)]
"""An amount with at most two places behind the point, in whatever money the shop counts."""
