"""What a job's page and its sheet say, one part of it a file. Every word is decided here."""
