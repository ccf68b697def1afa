"""Pullcord: a static documentation site generator for diagnostic procedures."""

from importlib.metadata import version

__all__ = ["__version__"]

__version__ = version("pullcord")
