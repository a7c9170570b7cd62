"""How far the slow work has come, told to whoever is watching."""

from __future__ import annotations

from typing import Protocol


class Progress(Protocol):
    """Hears of each stage and of each piece of work done in it."""

    def stage(self, name: str, pieces: int) -> None:
        """A stage of `pieces` pieces begins."""

    def done(self) -> None:
        """One more piece of the stage is done."""


class Unwatched:
    """Tells nobody."""

    def stage(self, name: str, pieces: int) -> None:
        """Nothing is told."""

    def done(self) -> None:
        """Nothing is told."""


UNWATCHED = Unwatched()
