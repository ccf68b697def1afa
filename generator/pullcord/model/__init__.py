"""What a procedure, a machine and a job ARE. No files, no clock, no process."""
