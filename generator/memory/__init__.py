"""Slow pure work remembered by a hash of its whole input, in the user's cache folder.

A step is pure when its result depends on its payload and on the surroundings alone: our own source, the
libraries, the fonts and the native text engines. Anything that cannot be read back whole is a miss.
"""

from __future__ import annotations

from generator.memory.canonical import canonical
from generator.memory.store import Memory, usual_folder
from generator.memory.surroundings import hash_of_surroundings

__all__ = ["Memory", "canonical", "open_memory", "usual_folder"]


def open_memory() -> Memory:
    """The user's memory, bound to the surroundings of this run."""
    return Memory(usual_folder(), surroundings=hash_of_surroundings())
