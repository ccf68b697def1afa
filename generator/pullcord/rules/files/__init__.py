"""What can be wrong with the files: `check(files)`."""
