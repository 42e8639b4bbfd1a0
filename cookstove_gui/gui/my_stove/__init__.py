"""The My stove page and its parts."""
