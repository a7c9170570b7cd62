"""The list of what was laid down: it marks a folder as ours and shows whether it still stands whole."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

MANIFEST = "manifest.json"
MARK = "storeyrod publication"
FORMAT = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class Manifest:
    """The SHA-256 of each file by its path in the folder, and one digest over all of them."""

    files: Mapping[str, str]
    digest: str

    def text(self) -> bytes:
        """As it is written beside the files."""
        whole = {"what": MARK, "format": FORMAT, "digest": self.digest, "sha256": dict(self.files)}
        return (json.dumps(whole, indent=1, sort_keys=True, ensure_ascii=False) + "\n").encode()


def manifest_of(files: Mapping[str, bytes]) -> Manifest:
    """The manifest of files not yet written."""
    hashes = {name: hashlib.sha256(content).hexdigest() for name, content in sorted(files.items())}
    listing = "".join(f"{value}  {name}\n" for name, value in hashes.items())
    return Manifest(files=hashes, digest=hashlib.sha256(listing.encode()).hexdigest())


def read_manifest(folder: Path) -> Manifest | None:
    """The manifest that stands in `folder`, or None when there is none of ours."""
    try:
        whole = json.loads((folder / MANIFEST).read_bytes())
    except (OSError, ValueError):
        return None
    if not isinstance(whole, dict) or whole.get("what") != MARK:
        return None
    return Manifest(files=dict(whole.get("sha256", {})), digest=str(whole.get("digest", "")))


def stands_whole(folder: Path, digest: str) -> bool:
    """True when `folder` holds exactly the files of the publication `digest`, each with its own bytes."""
    manifest = read_manifest(folder)
    if manifest is None or manifest.digest != digest:
        return False
    try:
        return manifest_of(_files_in(folder)) == manifest
    except OSError:
        return False


def _files_in(folder: Path) -> dict[str, bytes]:
    paths = (path for path in folder.rglob("*") if path.is_file() and path != folder / MANIFEST)
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in paths}
