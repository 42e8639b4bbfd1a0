"""The Plan page and its parts."""
