"""Small complete procedures for the rules' examples, so that each shows only what matters."""

from __future__ import annotations

import re
from textwrap import dedent

_PARTS = {
    "procedure": "procedure: no-prime\n",
    "title": "title: Pump will not prime\n",
    "symptom": "symptom: The engine runs, but no water comes.\n",
    "about": "about: For a self-priming pump whose engine runs well.\n",
    "start": "start: casing\n",
    "causes": """\
causes:
  dry-casing:
    title: No water in the pump casing
    remedy: Fill the casing to the filler plug and fit the plug tight.
  air-leak:
    title: Air leak on the suction side
    remedy: Fit a new hose washer and tighten the clamps.
""",
    "steps": """\
steps:
  casing:
    title: Water in the casing
    do: Take out the filler plug and look for water.
    ask: Is the casing full?
    answers:
      full: cause air-leak
      not full: cause dry-casing
""",
}


def example(body: str) -> str:
    """Return a whole procedure: the given parts, and for every part not given a plain one."""
    given = dedent(body).lstrip("\n")
    keys = set(re.findall(r"^([a-z-]+):", given, re.MULTILINE))
    head = [text for key, text in _PARTS.items() if key not in keys and key not in _TAIL]
    tail = [text for key, text in _PARTS.items() if key not in keys and key in _TAIL]
    return "".join([*head, given, *tail])


_TAIL = ("causes", "steps")
