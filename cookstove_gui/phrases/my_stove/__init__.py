"""The sentences of the page My stove, a file for each of its parts."""
