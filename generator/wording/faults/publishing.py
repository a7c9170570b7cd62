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
    "pango-missing": Fault(
        "PDFs cannot be made: this machine lacks %(library)s.",
        "On Debian or Ubuntu: apt-get install libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0. "
        "On macOS: brew install pango.",
    ),
    "path-missing": Fault("There is nothing at %(path)s.", "Give a folder or a file that is there."),
    "port-taken": Fault(
        "The preview cannot be served on port %(port)s: %(reason)s.",
        "End what is using it, or choose another: storeyrod preview --port 8711.",
    ),
    "list-or-schema": Fault(
        "A schema has a kind, and a list has --folder and --as; both were given.",
        "Expected either a kind such as `schema job`, or a list such as `schema --list tools --as json`.",
    ),
    "no-methods-folder": Fault(
        "Neither %(folder)s nor a folder above it holds a folder called methods.",
        "Go into the folder that does, name it, or lay out a new one: storeyrod start my-jobs.",
    ),
    "no-such-method": Fault(
        "No method in %(folder)s has the number or the file %(name)s.",
        "Name one of: %(known)s.",
    ),
    "no-such-job": Fault(
        "No job of %(method)s in %(folder)s has the file, the name or the title %(name)s.",
        "Name one of: %(known)s.",
    ),
    "no-job-to-issue": Fault(
        "No job in %(folder)s has the file or the name %(name)s.", "Name one of: %(known)s."
    ),
    "folder-not-empty": Fault(
        "%(folder)s holds something already, and nothing of it is overwritten.",
        "Give the name of a new folder or of an empty one.",
    ),
    "folder-unwritable": Fault(
        "The new folder %(folder)s cannot be laid out: %(reason)s.",
        "Choose a place where you may write.",
    ),
    "own-fault": Fault(
        "storeyrod failed through a fault of its own: %(failure)s (%(place)s). Nothing was published; "
        "what was published before still stands.",
        "Run the same command again with --traceback and pass on what it prints, with the file that "
        "caused it.",
    ),
}
