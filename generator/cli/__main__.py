"""`python -m generator.cli`: the same as the installed command."""

from __future__ import annotations

from generator.cli import run

if __name__ == "__main__":
    run()
