"""A command that cannot be carried out as it was given."""

from __future__ import annotations

from generator.problems import Problem


class WrongUse(Exception):
    """The command names something that is not there; carries the problem that says what."""

    def __init__(self, code: str, /, **values: object) -> None:
        super().__init__(code)
        self.problem = Problem(code=code, values={name: str(value) for name, value in values.items()})
