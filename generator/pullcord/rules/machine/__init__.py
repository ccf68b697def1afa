"""What can be wrong with a machine sheet: `check(machine, library)`."""
