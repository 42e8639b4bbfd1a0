"""Set up the program in .venv beside this folder, then open it or test it.

    python3 .ci/setup.py open [arguments of the program]
    python3 .ci/setup.py test

Uses nothing but the standard library, so that it runs on a fresh machine with Python 3.11 or newer.
"""

import ctypes
import importlib.util
import os
import shutil
import subprocess
import sys
import venv
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
HOME = ROOT / ".venv"
BIN = HOME / ("Scripts" if os.name == "nt" else "bin")
CONSTRAINTS = ROOT / ".ci" / "constraints.txt"

# What Qt needs of a bare Debian or Ubuntu: shared library -> package.
LIBRARIES = {
    "libEGL.so.1": "libegl1",
    "libGL.so.1": "libgl1",
    "libfontconfig.so.1": "libfontconfig1",
    "libdbus-1.so.3": "libdbus-1-3",
    "libxkbcommon.so.0": "libxkbcommon0",
    "libxkbcommon-x11.so.0": "libxkbcommon-x11-0",
    "libxcb-cursor.so.0": "libxcb-cursor0",
    "libxcb-icccm.so.4": "libxcb-icccm4",
    "libxcb-keysyms.so.1": "libxcb-keysyms1",
    "libxcb-image.so.0": "libxcb-image0",
    "libxcb-render-util.so.0": "libxcb-render-util0",
    "libxcb-shape.so.0": "libxcb-shape0",
}


def main() -> int:
    """Set up, then do what the first argument says."""
    if sys.version_info < (3, 11):  # noqa: UP036 - this file is what an old Python runs first
        print(f"This is Python {sys.version.split()[0]}; the program needs 3.11 or newer.", file=sys.stderr)
        return 2
    if len(sys.argv) < 2 or sys.argv[1] not in ("open", "test"):
        print("Say what to do: python3 .ci/setup.py open, or python3 .ci/setup.py test.", file=sys.stderr)
        return 2
    testing = sys.argv[1] == "test"
    if sys.platform == "linux":
        install_libraries()
    if not (BIN / "pip").exists() and not (BIN / "pip.exe").exists():
        venv.create(HOME, with_pip=True, clear=True)
    python = next(path for path in (BIN / "python", BIN / "python.exe") if path.exists())
    what = ["-e", f"{ROOT}[test]"] if testing else ["-e", str(ROOT)]
    quiet = ["--quiet", "--disable-pip-version-check"]
    done = subprocess.run([python, "-m", "pip", "install", *quiet, "-c", CONSTRAINTS, *what], check=False)
    if done.returncode:
        return done.returncode
    subprocess.run([python, "-m", "compileall", "-q", ROOT / "cookstove_gui"], check=False)
    command = [python, "-m", "tests"] if testing else [python, "-m", "cookstove_gui"]
    return subprocess.run([*command, *sys.argv[2:]], cwd=ROOT, check=False).returncode


def install_libraries() -> None:
    """Install what Qt lacks where this account may; say it in one line where it may not."""
    missing = sorted(package for library, package in LIBRARIES.items() if not loads(library))
    if importlib.util.find_spec("ensurepip") is None:
        missing.append("python3-venv")  # Debian splits it off
    if not missing:
        return
    install = ["apt-get", "install", "-y", "-qq", *missing]
    may = shutil.which("apt-get") and hasattr(os, "geteuid") and os.geteuid() == 0
    if not may:
        print(f"If the window does not open, these are missing: sudo {' '.join(install)}", file=sys.stderr)
        return
    for command in (["apt-get", "update", "-qq"], install):
        subprocess.run(command, check=False, stdout=subprocess.DEVNULL)


def loads(library: str) -> bool:
    """Whether the system finds a shared library."""
    try:
        ctypes.CDLL(library)
    except OSError:
        return False
    return True


if __name__ == "__main__":
    sys.exit(main())
