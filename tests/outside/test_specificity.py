"""How much a sign counts, against the worked example of the paper that the measure comes from."""

from __future__ import annotations

import pytest

from pullcord.analysis.finder import specificity


@pytest.mark.parametrize(("having", "weight"), [(90, 2), (3, 7)])
def test_the_worked_example(having: int, weight: int) -> None:
    """Of 200 documents, a term that occurs in 90 weighs 2, one that occurs in 3 weighs 7.

    K. Spärck Jones, Journal of Documentation 28 (1972) 11-21: f(N) - f(n) + 1, where f(n) = m such
    that 2^(m-1) < n <= 2^m. The formula and both figures from memory.
    """
    assert specificity(200, having) == weight
