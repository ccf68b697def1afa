"""What can be wrong with a file: one finding-rule a file."""
