"""The sentences of the Plan page, a file for each of its parts."""
