"""A library too large for one run: each shard of it built on its own, then joined to one site."""
