"""YAML text to a plain tree in which every value knows its line and column."""
