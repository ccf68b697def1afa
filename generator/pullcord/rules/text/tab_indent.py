"""Lines are indented with spaces, not with tabs.

How wide a tab looks differs from editor to editor, so YAML does not count it. Most editors can be
told to write two spaces when the tab key is pressed.
"""

from __future__ import annotations

from pullcord.rules.example import example

ID = "tab-indent"

FAILING = example(
    """\
title:
\tPump will not prime
"""
)

MENDED = example(
    """\
title:
  Pump will not prime
"""
)
