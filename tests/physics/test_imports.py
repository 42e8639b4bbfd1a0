"""This room is cheap to import: numpy alone, everything else when a function needs it."""

import subprocess
import sys

ASK = """
import importlib, pkgutil, sys
import cookstove_gui.physics as room
for module in pkgutil.iter_modules(room.__path__):
    importlib.import_module(f"{room.__name__}.{module.name}")
print(sorted({name.split(".")[0] for name in sys.modules} & {"scipy", "pandas", "PySide6"}))
"""


def test_no_dear_package_comes_along() -> None:
    answer = subprocess.run([sys.executable, "-c", ASK], capture_output=True, text=True, check=True)
    assert answer.stdout.strip() == "[]"
