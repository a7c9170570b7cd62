"""Writes the catalogues anew from the source, when run as a module."""

from __future__ import annotations

from generator.wording.gathering import files

if __name__ == "__main__":
    for path, content in files().items():
        path.write_bytes(content)
