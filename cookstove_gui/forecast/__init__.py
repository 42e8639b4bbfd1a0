"""The heat model: readings and fire events in, a belief about the whole stove out, and what follows from it."""
