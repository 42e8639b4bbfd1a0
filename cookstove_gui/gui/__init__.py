"""The window: the only room with Qt."""

from importlib import import_module

# What computes is brought in before Qt: afterwards Qt's import hook makes every import dearer, and the start slower.
import_module("cookstove_gui.desk")
