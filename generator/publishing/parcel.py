"""Files in one ZIP to be sent, the same bytes for the same files."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Mapping

_FIRST_DAY = (1980, 1, 1, 0, 0, 0)
_PLAIN_FILE = 0o644 << 16
_UNIX = 3
# Packed already; packing them again costs time and saves nothing.
_PACKED = (".woff2", ".xlsx", ".png", ".zip")


def parcel(files: Mapping[str, bytes], folder: str) -> bytes:
    """A ZIP of `files` (POSIX paths to contents), all inside one `folder`, in the order of their names."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w") as whole:
        for name, content in sorted(files.items()):
            whole.writestr(_entry(f"{folder}/{name}"), content, compresslevel=9)
    return out.getvalue()


def _entry(name: str) -> zipfile.ZipInfo:
    entry = zipfile.ZipInfo(name, date_time=_FIRST_DAY)
    entry.compress_type = zipfile.ZIP_STORED if name.endswith(_PACKED) else zipfile.ZIP_DEFLATED
    entry.create_system, entry.external_attr = _UNIX, _PLAIN_FILE
    return entry
