"""One command a file: what it takes, whom it asks, what it says. All thinking lies below."""
