"""What can be wrong with the readings of a procedure: `check(procedure, library)`."""
