"""A file holds one document.

A line of three dashes begins another document in the same file. Only one is read, and its name must
be the name of the file, so a second one gets a file of its own.
"""

from __future__ import annotations

from pullcord.rules.example import example

ID = "several-documents"

FAILING = example("title: Pump will not prime\n") + "---\ntitle: Another one\n"

MENDED = example(
    """\
title: Pump will not prime
"""
)
