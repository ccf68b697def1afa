"""What can be wrong with a list of stages: `check(stages, library)`."""
