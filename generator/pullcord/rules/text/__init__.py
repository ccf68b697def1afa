"""Found while a file is read: these rules explain, the reading itself checks."""
