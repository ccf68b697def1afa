"""From a procedure's graph to a picture of it."""
