"""A file has at most 256 KiB.

That is some hundred steps more than anybody can follow. A larger file is something else that found
its way into the folder.
"""

from __future__ import annotations

from pullcord.rules.example import example

ID = "file-too-large"

FAILING = example("title: Pump will not prime\n") + "# The shed is quiet again.\n" * 10_000

MENDED = example("title: Pump will not prime\n")
