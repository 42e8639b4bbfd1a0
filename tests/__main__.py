"""All checks in one go: `python -m tests`. Stops at the first that fails; arguments go to pytest."""

import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
BIN = Path(sys.executable).parent


def main() -> int:
    """Run every check in turn; returns the exit code of the first that fails."""
    checks: list[list[str]] = [
        [sys.executable, "-m", "ruff", "check", "."],
        [sys.executable, "-m", "ruff", "format", "--check", "."],
        [sys.executable, "-m", "mypy"],
        [str(BIN / "lint-imports")],
        [sys.executable, "-m", "pytest", *sys.argv[1:]],
    ]
    for check in checks:
        print("·", " ".join(Path(part).name if i == 0 else part for i, part in enumerate(check)), flush=True)
        code = subprocess.run(check, cwd=ROOT, check=False).returncode
        if code:
            return code
    return 0


if __name__ == "__main__":
    sys.exit(main())
