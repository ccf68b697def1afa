"""What can be wrong with a job log: `check(job, library)`."""
