"""A file is made of keys.

It begins with a line such as `procedure: no-spark`. A file that is empty, or is a list or a loose
sentence, cannot be told apart from a mistake.
"""

from __future__ import annotations

from pullcord.rules.example import example

ID = "not-a-mapping"

FAILING = "- The pump will not prime.\n"

MENDED = example("title: Pump will not prime\n")
