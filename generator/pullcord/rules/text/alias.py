"""Nothing is repeated by an anchor and an alias.

YAML can name a value with `&name` and repeat it with `*name`. A reader of the page in the shop
cannot follow that, and a few lines of it can grow into gigabytes, so it is not read. Text that only
happens to begin with `&` or `*` goes in quotes.
"""

from __future__ import annotations

from pullcord.rules.example import example

ID = "alias"

FAILING = example(
    """\
title: &name Pump will not prime
proves: *name
"""
)

MENDED = example(
    """\
title: Pump will not prime
proves: The pump primes
"""
)
