"""The one-file binder: every page in a single document, for whoever can open only one file."""
