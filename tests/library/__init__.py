"""Trade checks of the shipped procedures."""
