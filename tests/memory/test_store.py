"""What is remembered, when it is not believed, and what goes first when there is too much of it."""

from __future__ import annotations

import os
import stat
from pathlib import Path

import pytest

from generator.memory.store import Memory, usual_folder
from generator.wording.report import report_text


def memory(folder: Path, surroundings: str = "here", limit: int = 10_000) -> Memory:
    return Memory(folder, surroundings=surroundings, limit=limit)


def entry_of(folder: Path, key: str) -> Path:
    return folder / key[:2] / key


def test_what_was_kept_is_recalled_by_another_run(tmp_path: Path) -> None:
    first = memory(tmp_path)
    key = first.key("drawing", b"jamb 8 mm")
    assert first.recall(key) is None
    first.keep(key, b"<svg/>")
    assert memory(tmp_path).recall(key) == b"<svg/>"


def test_an_empty_result_is_a_result(tmp_path: Path) -> None:
    kept = memory(tmp_path)
    kept.keep(kept.key("s", b""), b"")
    assert kept.recall(kept.key("s", b"")) == b""


@pytest.mark.parametrize(
    ("step", "surroundings", "payload"),
    [("pdf", "here", b"x"), ("drawing", "elsewhere", b"x"), ("drawing", "here", b"y")],
)
def test_every_part_of_the_input_counts(tmp_path: Path, step: str, surroundings: str, payload: bytes) -> None:
    assert memory(tmp_path).key("drawing", b"x") != memory(tmp_path, surroundings).key(step, payload)


def test_parts_do_not_run_into_each_other(tmp_path: Path) -> None:
    assert memory(tmp_path).key("ab", b"c") != memory(tmp_path).key("a", b"bc")
    assert memory(tmp_path, "xa").key("s", b"") != memory(tmp_path, "x").key("sa", b"")


@pytest.mark.parametrize("length", [0, 5, 31, 32, 33, 37])
def test_a_cut_entry_is_a_miss(tmp_path: Path, length: int) -> None:
    kept = memory(tmp_path)
    key = kept.key("s", b"p")
    kept.keep(key, b"result")
    entry = entry_of(tmp_path, key)
    whole = entry.read_bytes()
    assert len(whole) == 32 + len(b"result")
    entry.write_bytes(whole[:length])
    assert kept.recall(key) is None


def test_one_flipped_bit_is_a_miss_and_the_next_keeping_mends_it(tmp_path: Path) -> None:
    kept = memory(tmp_path)
    key = kept.key("s", b"p")
    kept.keep(key, b"result")
    entry = entry_of(tmp_path, key)
    whole = bytearray(entry.read_bytes())
    whole[-1] ^= 1
    entry.write_bytes(whole)
    assert kept.recall(key) is None
    kept.keep(key, b"result")
    assert kept.recall(key) == b"result"


def test_trimming_lets_the_longest_unused_go_first(tmp_path: Path) -> None:
    kept = memory(tmp_path, limit=1000)
    keys = [kept.key("s", bytes([number])) for number in range(5)]
    for age, key in enumerate(keys):
        kept.keep(key, b"x" * 268)
        os.utime(entry_of(tmp_path, key), (1000 + age, 1000 + age))
    assert kept.recall(keys[0]) is not None
    kept.trim()
    left = [key for key in keys if entry_of(tmp_path, key).exists()]
    assert left == [keys[0], keys[4]]


def test_a_run_that_kept_nothing_trims_nothing(tmp_path: Path) -> None:
    full = memory(tmp_path)
    full.keep(full.key("s", b""), b"x" * 5000)
    memory(tmp_path, limit=10).trim()
    assert full.recall(full.key("s", b"")) is not None


def test_where_it_cannot_write_it_says_so_once_and_works_on(tmp_path: Path) -> None:
    blocked = tmp_path / "file"
    blocked.write_text("in the way")
    kept = memory(blocked / "cache")
    for payload in (b"1", b"2"):
        kept.keep(kept.key("s", payload), b"v")
        assert kept.recall(kept.key("s", payload)) is None
    kept.trim()
    assert kept.trouble is not None
    assert report_text((kept.trouble,)) == (
        f"warning: Finished drawings and PDFs cannot be remembered in {blocked / 'cache'}: Not a directory.\n"
        "    Everything was made all the same. Set STOREYROD_CACHE to a folder you may write to, "
        "and the next run will be quicker.\n\n1 warning\n"
    )


def test_no_half_written_entry_is_left(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(self: Path, target: Path) -> Path:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(Path, "replace", refuse)
    kept = memory(tmp_path)
    kept.keep(kept.key("s", b"p"), b"v")
    assert [path for path in tmp_path.rglob("*") if path.is_file()] == []
    assert kept.trouble is not None


def test_entries_are_the_owners_alone(tmp_path: Path) -> None:
    kept = memory(tmp_path)
    key = kept.key("s", b"p")
    kept.keep(key, b"v")
    assert stat.S_IMODE(entry_of(tmp_path, key).stat().st_mode) == 0o600


@pytest.mark.parametrize(
    ("environment", "folder"),
    [
        ({"STOREYROD_CACHE": "/a/b", "XDG_CACHE_HOME": "/c", "HOME": "/h"}, "/a/b"),
        ({"XDG_CACHE_HOME": "/c", "HOME": "/h"}, "/c/storeyrod"),
        ({"XDG_CACHE_HOME": "relative", "HOME": "/h"}, "/h/.cache/storeyrod"),
        ({"HOME": "/h"}, "/h/.cache/storeyrod"),
    ],
)
def test_it_lives_in_the_users_cache_folder(environment: dict[str, str], folder: str) -> None:
    """XDG Base Directory Specification 0.8: a relative path in XDG_CACHE_HOME is ignored."""
    assert usual_folder(environment) == Path(folder)
