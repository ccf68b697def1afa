"""What can be printed: each kind of sheets as data for its template."""
