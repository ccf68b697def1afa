"""Inputs nobody would write, by the million: see `__main__.py` for the long run."""
