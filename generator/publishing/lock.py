"""One publisher at a time in an output folder."""

from __future__ import annotations

import contextlib
import fcntl
import os
import time
from collections.abc import Iterator
from pathlib import Path

from generator.problems import MachineLacks

LOCK = ".publishing"
PAUSE = 0.05


@contextlib.contextmanager
def only_publisher(output: Path, patience: float = 60.0) -> Iterator[None]:
    """Hold `output` alone, waiting up to `patience` seconds for another to finish.

    The system lets the lock go with the process, however that ends. Raises MachineLacks when the other one
    takes longer.
    """
    handle = os.open(output / LOCK, os.O_RDWR | os.O_CREAT, 0o644)
    try:
        _wait_for(handle, output, time.monotonic() + patience)
        yield
    finally:
        os.close(handle)


def _wait_for(handle: int, output: Path, deadline: float) -> None:
    while True:
        try:
            return fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError:
            if time.monotonic() > deadline:
                raise MachineLacks("output-busy", folder=output) from None
            time.sleep(PAUSE)
