"""Quantities, limits, what a meter can tell, temperature, conversions."""
