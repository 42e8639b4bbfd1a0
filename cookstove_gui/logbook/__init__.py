"""The store of everything that was typed, and the log file; the room with sqlite3 and pandas."""
