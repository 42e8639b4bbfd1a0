"""Alarms of the desk: what calls for the cook, what the cook answered, when it is quiet."""
