"""What can be unsafe about a procedure; each rule prints the way on which it is."""
