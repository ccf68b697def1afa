"""How likely each cause is, in words and as a share."""

from __future__ import annotations

from collections.abc import Mapping

from pullcord.model.procedure import Procedure

LEVELS = ((0.25, "odds_often"), (0.10, "odds_sometimes"), (0.03, "odds_seldom"), (0.0, "odds_rare"))
"""From which share on which word is used. Our own convention, printed on the guide page."""


def shares(procedure: Procedure) -> dict[str, float]:
    """Return each cause's share of all odds given, 0 to 1; causes without odds are left out."""
    total = _total(procedure)
    return {name: cause.odds / total for name, cause in procedure.causes.items() if cause.odds}


def other_share(procedure: Procedure) -> float:
    """Return the share of it being none of the causes, 0 when nobody says."""
    return (procedure.other_odds or 0) / (_total(procedure) or 1)


def say_share(words: Mapping[str, str], share: float) -> str:
    """Return a share in words with its percentage, such as `often (about 32 %)`."""
    word = next(words[key] for least, key in LEVELS if share >= least)
    if share < 0.01:
        return words["odds_share_tiny"].format(word=word)
    return words["odds_share"].format(word=word, percent=say_percent(share))


def say_percent(share: float) -> str:
    """Return a share in whole percent, kept on one line with its sign."""
    return f"{share:.0%}".replace("%", "\N{NO-BREAK SPACE}%")


def _total(procedure: Procedure) -> float:
    return sum(cause.odds or 0 for cause in procedure.causes.values()) + (procedure.other_odds or 0)
