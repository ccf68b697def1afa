"""Uncertainty and guard bands against the guides' worked examples and reference libraries."""

from __future__ import annotations

from decimal import Decimal
from math import cos, sin, sqrt

import GTC
import pytest
import uncertainties
import uncertainties.umath
from scipy.stats import norm

from pullcord.model.meter import MeterSheet
from pullcord.readings.answers import shares_of
from pullcord.readings.bands import bands_of
from pullcord.readings.limits import parse_limits
from pullcord.readings.meter import parse_meter
from pullcord.readings.uncertainty import (
    ONE_SIDED_95,
    combined_uncertainty,
    guard_band,
    rectangular_uncertainty,
)

# JCGM 100:2008 (GUM), H.2, simultaneous resistance and reactance, as quoted in the documentation
# of the GTC package (docs/API/GUM_H2.rst). The prose there prints R = V I cos φ; its code, and
# this test, use V cos φ / I.
VOLTS, U_VOLTS = 4.999, 3.2e-3
AMPS, U_AMPS = 19.661e-3, 9.5e-6
PHASE, U_PHASE = 1.04446, 7.5e-4
CORRELATIONS = {(0, 1): -0.36, (0, 2): 0.86, (1, 2): -0.65}

H2 = {
    "resistance": (127.732, 0.070, VOLTS * cos(PHASE) / AMPS,
                   (cos(PHASE) / AMPS, -VOLTS * cos(PHASE) / AMPS**2, -VOLTS * sin(PHASE) / AMPS)),
    "reactance": (219.85, 0.30, VOLTS * sin(PHASE) / AMPS,
                  (sin(PHASE) / AMPS, -VOLTS * sin(PHASE) / AMPS**2, VOLTS * cos(PHASE) / AMPS)),
    "impedance": (254.26, 0.24, VOLTS / AMPS, (1 / AMPS, -VOLTS / AMPS**2, 0.0)),
}  # fmt: skip


@pytest.mark.parametrize(("value", "u", "ours", "slopes"), H2.values(), ids=H2)
def test_gum_h2(value: float, u: float, ours: float, slopes: tuple[float, ...]) -> None:
    """GUM H.2: correlated inputs give the published value and uncertainty, to their last digit."""
    parts = [slope * each for slope, each in zip(slopes, (U_VOLTS, U_AMPS, U_PHASE), strict=True)]
    assert ours == pytest.approx(value, abs=0.005)
    assert combined_uncertainty(parts, CORRELATIONS) == pytest.approx(u, abs=0.005)


def test_gum_h2_against_two_libraries() -> None:
    """GTC and uncertainties come to the same combined uncertainty of R as ours."""
    _, _, _, slopes = H2["resistance"]
    parts = [slope * each for slope, each in zip(slopes, (U_VOLTS, U_AMPS, U_PHASE), strict=True)]
    ours = combined_uncertainty(parts, CORRELATIONS)

    inputs = [
        GTC.ureal(x, u, independent=False)
        for x, u in ((VOLTS, U_VOLTS), (AMPS, U_AMPS), (PHASE, U_PHASE))
    ]
    for (one, other), r in CORRELATIONS.items():
        GTC.set_correlation(r, inputs[one], inputs[other])
    volts, amps, phase = inputs
    assert GTC.uncertainty(volts * GTC.cos(phase) / amps) == pytest.approx(ours, rel=1e-9)

    matrix = [[1, -0.36, 0.86], [-0.36, 1, -0.65], [0.86, -0.65, 1]]
    volts, amps, phase = uncertainties.correlated_values_norm(
        [(VOLTS, U_VOLTS), (AMPS, U_AMPS), (PHASE, U_PHASE)], matrix
    )
    result = volts * uncertainties.umath.cos(phase) / amps
    assert result.std_dev == pytest.approx(ours, rel=1e-6)


def test_gum_h1_root_sum_of_squares() -> None:
    """GUM H.1, from memory: parts of 25, 9.7, 2.9 and 16.6 nm combine to 32 nm."""
    assert combined_uncertainty([25, 9.7, 2.9, 16.6]) == pytest.approx(32, abs=0.5)


def test_rectangular_against_a_library() -> None:
    """JCGM 100:2008, 4.3.7 (from memory): a/√3; GTC's type B uniform gives the same."""
    assert rectangular_uncertainty(0.083) == pytest.approx(0.0479, abs=5e-5)
    assert rectangular_uncertainty(0.083) == pytest.approx(GTC.type_b.uniform(0.083))


def test_a_leaflet_bound() -> None:
    """± (0.5 % + 2 digits) at 12.60 V in steps of 0.01 V is ± 0.083 V; common practice."""
    twenty_volts = parse_meter(MeterSheet()).ranges_for("voltage")[1]
    assert twenty_volts.bound(12.60) == pytest.approx(0.083)
    assert twenty_volts.uncertainty(12.60) == pytest.approx(0.083 / sqrt(3))


def test_guard_factor_is_the_normal_distributions() -> None:
    """JCGM 106:2012, 7.3, table 1 (digits from memory): 1.64 for 95 %; scipy gives the rest."""
    assert pytest.approx(norm.ppf(0.95), abs=5e-5) == ONE_SIDED_95


@pytest.mark.parametrize(
    ("limit", "reading", "u", "published", "is_judged"),
    [
        # JCGM 106:2012, clause 7, breakdown voltage of a diode; from memory, computed again.
        (-5.40, -5.47, 0.05, 0.92, False),
        # JCGM 106:2012, clause 8: guard w = U = 2u gives at least 97.7 %; from memory.
        (-5.40, -5.50, 0.05, 0.977, True),
    ],
    ids=["diode", "two-u-guard"],
)
def test_conformance_examples(
    limit: float, reading: float, u: float, published: float, is_judged: bool
) -> None:
    """The example's probability is scipy's, and our guard judges only from 95 % on."""
    assert norm.cdf((limit - reading) / u) == pytest.approx(published, abs=0.005)
    assert (limit - reading >= guard_band(u)) is is_judged


def test_a_two_sided_example_is_too_close_to_call() -> None:
    """JCGM 106:2012, clause 7, oil viscosity (from memory): p = 0.66, far from sure."""
    low, high, reading, u = 12.5, 16.3, 13.6, 1.8
    probability = norm.cdf((high - reading) / u) - norm.cdf((low - reading) / u)
    assert probability == pytest.approx(0.66, abs=0.005)
    assert reading - low < guard_band(u)


@pytest.mark.parametrize("text", ["200-300 ohm", "20-40 ohm", "under 1 ohm", "12.4-12.8 V"])
def test_every_proven_edge_conforms_by_scipy(text: str) -> None:
    """At the edge of a proven band the true value conforms with at least 95 % at that limit."""
    meter, limits = parse_meter(MeterSheet()), parse_limits(text)
    shares = shares_of(("below", "within", "above"), limits, limits.quantity)
    (within,) = (
        band for band in bands_of(shares, meter, limits.unit) if band.answers == ("within",)
    )
    ranges = meter.ranges_for(limits.quantity)

    def probability(shown: Decimal, limit: Decimal) -> float:
        one = next(each for each in ranges if shown < each.full)
        return float(norm.cdf(abs(float(limit - shown)) / one.uncertainty(float(shown))))

    interval = limits.interval
    assert probability(within.high, interval.end.value) >= 0.95
    if interval.start.value > 0:
        assert probability(within.low, interval.start.value) >= 0.95
