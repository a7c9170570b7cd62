"""The site is laid down whole or not at all, and only over what we laid down ourselves."""

from __future__ import annotations

import errno
import hashlib
import json
import os
import shutil
import threading
from pathlib import Path

import pytest

from generator.problems import MachineLacks
from generator.publishing.lock import only_publisher
from generator.publishing.site import lay_down, standing
from generator.wording.report import report_text

OLD = {"index.html": b"old index", "SF-07/guide.html": b"guide", "SF-07/guide.pdf": b"%PDF old"}
NEW = {"index.html": b"new index", "SF-07/guide.html": b"guide", "job/statement.pdf": b"%PDF new"}


def contents(folder: Path) -> dict[str, bytes]:
    paths = (path for path in folder.rglob("*") if path.is_file() and path.name != "manifest.json")
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in paths}


def said(lack: pytest.ExceptionInfo[MachineLacks]) -> str:
    return report_text((lack.value.problem,))


def test_the_first_publication_stands_whole(tmp_path: Path) -> None:
    laid = lay_down(tmp_path / "output", OLD)
    assert contents(tmp_path / "output" / "site") == OLD
    assert (laid.written, laid.kept, laid.removed) == (3, 0, 0)
    assert standing(tmp_path / "output", laid.digest)


def test_the_next_one_replaces_it_and_leaves_nothing_of_it(tmp_path: Path) -> None:
    lay_down(tmp_path, OLD)
    laid = lay_down(tmp_path, NEW)
    assert contents(tmp_path / "site") == NEW
    assert (laid.written, laid.kept, laid.removed) == (2, 1, 1)
    assert len(list(tmp_path.glob(".site-*"))) == 1


def test_an_untouched_file_keeps_its_inode_and_its_date(tmp_path: Path) -> None:
    lay_down(tmp_path, OLD)
    guide, index = tmp_path / "site/SF-07/guide.html", tmp_path / "site/index.html"
    os.utime(guide, (1000, 1000))
    before, index_before = guide.stat(), index.stat()
    lay_down(tmp_path, NEW)
    after = guide.stat()
    assert (after.st_ino, after.st_mtime_ns) == (before.st_ino, before.st_mtime_ns)
    assert index.stat().st_ino != index_before.st_ino


def test_the_same_again_writes_nothing(tmp_path: Path) -> None:
    first = lay_down(tmp_path, OLD)
    folder = (tmp_path / "site").resolve()
    again = lay_down(tmp_path, OLD)
    assert (again.written, again.kept, again.digest) == (0, 3, first.digest)
    assert (tmp_path / "site").resolve() == folder


@pytest.mark.parametrize("harm", ["changed", "lost", "added"])
def test_a_site_edited_by_hand_does_not_stand_and_is_mended(tmp_path: Path, harm: str) -> None:
    laid = lay_down(tmp_path, OLD)
    guide = tmp_path / "site/SF-07/guide.pdf"
    if harm == "changed":
        guide.write_bytes(b"%PDF bad")
    elif harm == "lost":
        guide.unlink()
    else:
        guide.with_name("mine.txt").write_text("mine")
    assert not standing(tmp_path, laid.digest)
    lay_down(tmp_path, OLD)
    assert contents(tmp_path / "site") == OLD
    assert standing(tmp_path, laid.digest)
    assert len(list(tmp_path.glob(".site-*"))) == 1


def test_where_links_between_files_are_not_to_be_had_they_are_written(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(self: Path, target: Path) -> None:
        raise OSError(errno.EPERM, "Operation not permitted")

    lay_down(tmp_path, OLD)
    monkeypatch.setattr(Path, "hardlink_to", refuse)
    laid = lay_down(tmp_path, NEW)
    assert contents(tmp_path / "site") == NEW
    assert (laid.written, laid.kept) == (3, 0)


def test_the_manifest_lists_the_sha256_of_every_file(tmp_path: Path) -> None:
    lay_down(tmp_path, OLD)
    manifest = json.loads((tmp_path / "site/manifest.json").read_bytes())
    assert manifest["sha256"] == {name: hashlib.sha256(value).hexdigest() for name, value in OLD.items()}


def test_the_manifest_is_the_same_whatever_order_the_files_came_in(tmp_path: Path) -> None:
    lay_down(tmp_path / "a", OLD)
    lay_down(tmp_path / "b", dict(reversed(OLD.items())))
    assert (tmp_path / "a/site/manifest.json").read_bytes() == (
        tmp_path / "b/site/manifest.json"
    ).read_bytes()


@pytest.mark.parametrize("kind", ["folder", "empty folder", "file", "link elsewhere", "link to a namesake"])
def test_what_we_did_not_lay_down_is_left_alone(tmp_path: Path, kind: str) -> None:
    output, elsewhere = tmp_path / "output", tmp_path / "elsewhere"
    output.mkdir()
    elsewhere.mkdir()
    (elsewhere / "theirs.txt").write_text("theirs")
    target = output / "site"
    if kind == "file":
        target.write_text("theirs")
    elif kind.startswith("link"):
        namesake = output / ".site-mine"
        namesake.mkdir()
        target.symlink_to(elsewhere if kind == "link elsewhere" else namesake)
    else:
        target.mkdir()
        if kind == "folder":
            (target / "theirs.txt").write_text("theirs")
    before = (target.readlink() if target.is_symlink() else None, sorted(output.rglob("*")))
    with pytest.raises(MachineLacks) as lack:
        lay_down(output, NEW)
    after = (target.readlink() if target.is_symlink() else None, sorted(output.rglob("*")))
    assert said(lack) == (
        f"error: {target} was not made by storeyrod, so it is left as it is and nothing was published.\n"
        "    Move it away or give it another name, then publish again.\n\n1 error\n"
    )
    assert [path for path in after[1] if path.name != ".publishing"] == before[1]
    assert after[0] == before[0]


def test_a_link_whose_folder_was_deleted_is_laid_anew(tmp_path: Path) -> None:
    lay_down(tmp_path, OLD)
    shutil.rmtree((tmp_path / "site").resolve())
    lay_down(tmp_path, NEW)
    assert contents(tmp_path / "site") == NEW


def test_folders_with_like_names_that_are_not_ours_stay(tmp_path: Path) -> None:
    (tmp_path / ".site-backup").mkdir()
    (tmp_path / "tutor").mkdir()
    lay_down(tmp_path, OLD)
    lay_down(tmp_path, NEW)
    assert (tmp_path / ".site-backup").is_dir()
    assert (tmp_path / "tutor").is_dir()


def test_two_publications_side_by_side_do_not_touch_each_other(tmp_path: Path) -> None:
    lay_down(tmp_path, OLD)
    lay_down(tmp_path, {"answers.html": b"answers"}, name="tutor")
    lay_down(tmp_path, NEW)
    assert contents(tmp_path / "tutor") == {"answers.html": b"answers"}
    assert contents(tmp_path / "site") == NEW


@pytest.mark.parametrize(
    "name", ["/etc/passwd", "../up.html", "a/../b.html", "a//b.html", "./a.html", "manifest.json", "", "a\0b"]
)
def test_a_name_that_leads_outside_is_refused(tmp_path: Path, name: str) -> None:
    with pytest.raises(ValueError, match="is no place inside a publication"):
        lay_down(tmp_path, {name: b"x"})
    assert list(tmp_path.iterdir()) == []


def test_a_full_disk_leaves_the_old_site(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    lay_down(tmp_path, OLD)

    def full(handle: int) -> None:
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(MachineLacks) as lack:
        lay_down(tmp_path, NEW)
    assert said(lack) == (
        f"error: There is no room left on the disk that holds {tmp_path}; the last good site still stands.\n"
        "    Free some room, then publish again.\n\n1 error\n"
    )
    assert contents(tmp_path / "site") == OLD
    monkeypatch.undo()
    lay_down(tmp_path, NEW)
    assert contents(tmp_path / "site") == NEW
    assert len(list(tmp_path.glob(".[sb]*"))) == 1


def test_an_output_that_cannot_be_a_folder_is_told(tmp_path: Path) -> None:
    (tmp_path / "output").write_text("in the way")
    with pytest.raises(MachineLacks) as lack:
        lay_down(tmp_path / "output", NEW)
    assert said(lack) == (
        f"error: The publication cannot be written in {tmp_path / 'output'}: File exists.\n"
        "    Give yourself the right to write there, or publish from a folder where you have it.\n\n1 error\n"
    )


def test_a_second_publisher_waits_for_the_first(tmp_path: Path) -> None:
    order: list[str] = []

    def second() -> None:
        lay_down(tmp_path, NEW)
        order.append("second")

    with only_publisher(tmp_path):
        waiting = threading.Thread(target=second)
        waiting.start()
        waiting.join(0.3)
        assert waiting.is_alive()
        order.append("first")
    waiting.join(10)
    assert order == ["first", "second"]


def test_a_second_publisher_does_not_wait_for_ever(tmp_path: Path) -> None:
    with (
        only_publisher(tmp_path),
        pytest.raises(MachineLacks) as lack,
        only_publisher(tmp_path, patience=0.1),
    ):
        pass
    assert said(lack).splitlines()[0] == (
        f"error: Another publication is being laid down in {tmp_path} and has not finished."
    )
