"""Start of the program: hands over to the headless commands or to the window, loading only what is asked for."""

import sys


def main() -> int:
    """Run the program; returns the exit code."""
    arguments = sys.argv[1:]
    if arguments and not arguments[0].startswith("-"):
        from cookstove_gui.commands import run

        return run(arguments)
    from cookstove_gui.gui.start import open_window

    return open_window(arguments)


if __name__ == "__main__":
    sys.exit(main())
