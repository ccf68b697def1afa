"""What can be wrong with one procedure: `check(procedure, library)`."""
