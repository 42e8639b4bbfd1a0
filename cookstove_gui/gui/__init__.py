"""The window: the only room with Qt."""
