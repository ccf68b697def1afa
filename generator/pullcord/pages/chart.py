"""The flowchart of a page, drawn."""
