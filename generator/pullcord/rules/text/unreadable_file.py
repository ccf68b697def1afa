"""Every file in the folder can be read.

A link that leads out of the folder is not followed: the site would then depend on something that is
not with it. A file that one may not read, or that is no ordinary file, is reported rather than
passed over.
"""

from __future__ import annotations

ID = "unreadable-file"

FAILING: dict[str, str] = {}

MENDED: dict[str, str] = {}
