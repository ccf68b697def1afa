"""The search index: made at build time, in pieces a browser loads only when it needs them."""
