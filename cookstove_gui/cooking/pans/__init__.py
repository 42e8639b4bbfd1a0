"""Pans and water: when it simmers and boils on a spot."""
