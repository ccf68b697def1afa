"""Files are saved as UTF-8.

Old editors save letters such as é or Ω in another encoding, and then they come out as other
letters, or an ohm sign is lost. Every editor of today can save as UTF-8.
"""

from __future__ import annotations

from pullcord.rules.example import example

ID = "not-utf8"

FAILING = example("title: Pump at the châlet will not prime\n").encode("latin-1")

MENDED = example("title: Pump at the châlet will not prime\n")
