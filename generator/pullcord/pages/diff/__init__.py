"""What changed between two states of the files, in words for a review."""
