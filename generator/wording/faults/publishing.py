"""Faults of the machine and of the folders the tool writes to."""

from __future__ import annotations

from collections.abc import Mapping

from generator.wording.faults.fault import Fault

FAULTS: Mapping[str, Fault] = {
    "memory-unwritable": Fault(
        "Finished drawings and PDFs cannot be remembered in %(folder)s: %(reason)s.",
        "Everything was made all the same. Set STOREYROD_CACHE to a folder you may write to, and the next "
        "run will be quicker.",
    ),
    "output-busy": Fault(
        "Another publication is being laid down in %(folder)s and has not finished.",
        "Wait until it has, then publish again.",
    ),
    "output-not-ours": Fault(
        "%(folder)s was not made by storeyrod, so it is left as it is and nothing was published.",
        "Move it away or give it another name, then publish again.",
    ),
    "output-unwritable": Fault(
        "The publication cannot be written in %(folder)s: %(reason)s.",
        "Give yourself the right to write there, or publish from a folder where you have it.",
    ),
    "disk-full": Fault(
        "There is no room left on the disk that holds %(folder)s; the last good site still stands.",
        "Free some room, then publish again.",
    ),
    "worker-died": Fault(
        "A worker process was ended from outside, most often because memory ran out.",
        "Publish again with fewer workers: --workers 1 (there were %(workers)s).",
    ),
}
