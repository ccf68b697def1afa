"""What a job log says: what has been proved, what is left on, what to do and to buy next."""
