"""What importing the readings brings in."""

from __future__ import annotations

import subprocess
import sys

HEAVY = ("pydantic", "numpy", "scipy", "pint", "uncertainties", "jinja2", "networkx", "yaml")


def test_the_readings_are_light() -> None:
    """They import in a blink: no model library, and nothing that only the tests use."""
    script = "import sys, pullcord.readings; print(*sys.modules)"
    found = subprocess.run(
        [sys.executable, "-c", script], check=True, capture_output=True, text=True, encoding="utf-8"
    )
    assert set(found.stdout.split()) & set(HEAVY) == set()
