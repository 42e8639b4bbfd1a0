"""Start of the program: hands over to the headless commands or to the window, loading only what is asked for."""

import gc
import os
import sys
from importlib import import_module

_HELP = {"-h", "--help", "--version"}
# What the first paint wants that has no Qt, loaded before it: Qt makes every import after its own slower.
_WITHOUT_QT = (
    "desk",
    "desk.cook.axis_values",
    "desk.cook.lane",
    "desk.alarms.kept",
    "phrases.alarms",
    "stove.drawn.layout",
)


def main() -> int:
    """Run the program; returns the exit code."""
    arguments = sys.argv[1:]
    if arguments and (not arguments[0].startswith("-") or arguments[0] in _HELP):
        return _run_command(arguments)
    gc.disable()  # nothing made while starting is garbage; looking for it costs a twentieth of the start
    for room in _WITHOUT_QT:
        import_module(f"cookstove_gui.{room}")
    from cookstove_gui.gui.start import open_window

    return open_window(arguments)


def _run_command(arguments: list[str]) -> int:
    from cookstove_gui.commands import run

    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")  # a console that has no “°” shows a question mark instead
    try:
        code = run(arguments)
        sys.stdout.flush()
        return code
    except BrokenPipeError:  # the reader, such as `head`, has seen enough
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 0
    except KeyboardInterrupt:
        return 130
    except Exception as error:
        if sys.flags.dev_mode:  # python -X dev shows where
            raise
        print(f"cookstove-gui failed by a fault of its own ({type(error).__name__}: {error}).", file=sys.stderr)
        return 1


if __name__ == "__main__":
    sys.exit(main())
