"""What may be exposed at each step, and the caution boxes that follow from it."""
