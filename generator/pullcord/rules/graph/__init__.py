"""What can be wrong with the ways through a procedure: `check(procedure, graph)`."""
