"""What can be wrong between procedures: `check(library)`."""
