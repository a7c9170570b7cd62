"""The command line: `main(argv) -> int` for tests and programs, `run()` for the installed command."""

from __future__ import annotations

import os
import sys
from collections.abc import Sequence

INTERRUPTED = 130
"""128 + SIGINT, as a shell reports it."""
READER_GONE = 141
"""128 + SIGPIPE, as a shell reports it."""


def main(argv: Sequence[str] | None = None) -> int:
    """Do what the arguments ask (those of the process when None) and return the exit status."""
    from generator.cli.commands import obey

    try:
        status = obey(sys.argv[1:] if argv is None else argv)
        sys.stdout.flush()
    except BrokenPipeError:
        # What is still to be flushed at exit must not fail a second time.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return READER_GONE
    except KeyboardInterrupt:
        sys.stderr.write("\nStopped. What was published before still stands.\n")
        return INTERRUPTED
    return status


def run() -> None:
    """The entry of the installed command."""
    sys.exit(main())
