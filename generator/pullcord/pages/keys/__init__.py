"""Every key of every kind of file: what it means, what may stand there, an example."""
