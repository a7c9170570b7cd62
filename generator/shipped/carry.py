"""The build step that puts the shipped themes and demo methods into the wheel.

Only setuptools imports this, while it builds; the installed tool never does.
"""

from __future__ import annotations

from pathlib import Path

from setuptools.command.build_py import build_py

CARRIED = ("themes", "methods")


class CarryShipped(build_py):
    """Builds the package, then lays the folders beside it under `generator/shipped`."""

    def run(self) -> None:
        """Build as usual; an editable build reads the folders where they stand."""
        super().run()
        if not self.editable_mode:
            for source in _carried_files():
                self._carry(source)

    def get_source_files(self) -> list[str]:
        """What a source distribution needs to build the same wheel."""
        own: list[str] = super().get_source_files()  # type: ignore[no-untyped-call]
        return [*own, *map(str, _carried_files())]

    def get_outputs(self, include_bytecode: bool = True) -> list[str]:
        """What the build lays down, the carried files with it."""
        carried = [] if self.editable_mode else [str(self._target(source)) for source in _carried_files()]
        return [*super().get_outputs(include_bytecode), *carried]

    def _target(self, source: Path) -> Path:
        return Path(self.build_lib, "generator", "shipped", source)

    def _carry(self, source: Path) -> None:
        target = self._target(source)
        self.mkpath(str(target.parent))
        self.copy_file(str(source), str(target))


def _carried_files() -> list[Path]:
    found = (path for kind in CARRIED for path in Path(kind).rglob("*"))
    return sorted(path for path in found if path.is_file() and "__pycache__" not in path.parts)
