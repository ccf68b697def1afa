"""Cost and order: the quickest way to the answer."""
