"""A flowchart on paper: rows in strips, strips on sheets."""
