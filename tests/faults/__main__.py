"""The long run: `python -m tests.faults [KILLS]`. Prints its figures; they belong in tests/benchmarks/RESULTS.md."""

import sys
import tempfile
import time
from pathlib import Path

from tests.faults.disk_full import fill_up, mounted, unmount
from tests.faults.flips import damage_files
from tests.faults.kills import kill_while_writing
from tests.faults.window_kills import kill_the_window


def main() -> int:
    """Run everything; the exit code is 1 if anything was lost in silence."""
    times = int(sys.argv[1]) if len(sys.argv) > 1 else 500
    is_bad = False
    with tempfile.TemporaryDirectory() as folder:
        place = Path(folder)
        began = time.monotonic()
        kills = kill_while_writing(place / "logbook.sqlite", times, 1)
        print(f"{kills}  ({time.monotonic() - began:.0f} s)", flush=True)
        is_bad |= bool(kills.lost or kills.half_done or kills.damaged)
        began = time.monotonic()
        told, lost = kill_the_window(place / "window.sqlite", times // 10, 3)
        print(
            f"window killed {times // 10} times: told={told}, lost={lost}  ({time.monotonic() - began:.0f} s)",
            flush=True,
        )
        is_bad |= bool(lost)
        began = time.monotonic()
        (place / "damaged").mkdir()
        damages = damage_files(place / "logbook.sqlite", place / "damaged", times, 2)
        print(f"{damages}  ({time.monotonic() - began:.0f} s)", flush=True)
        is_bad |= bool(damages.silent or damages.wrong)
        disk = place / "disk"
        disk.mkdir()
        for seed, size in enumerate((600, 1000, 2000), start=1):
            if not mounted(disk, size):
                print("No small disk could be mounted; that needs root.")
                break
            try:
                full = fill_up(disk, seed)
            finally:
                unmount(disk)
            print(f"{size} kB: {full}", flush=True)
            is_bad |= bool(full.differing or full.unclear)
    return int(is_bad)


if __name__ == "__main__":
    sys.exit(main())
