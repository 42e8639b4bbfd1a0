"""The sentences of the page Logbook, a file for each of its parts."""
