"""YAML text to plain data in which every value knows its line and column."""
