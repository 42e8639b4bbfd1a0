"""Slow work off the screen's thread."""
