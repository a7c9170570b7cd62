"""Bytes on disk to text: one encoding, one size limit, one kind of line end."""

from __future__ import annotations

from pathlib import Path

from generator.problems import ProblemLog, Span
from generator.reading.limits import MOST_BYTES

_UTF8_MARK = b"\xef\xbb\xbf"
_UTF16_MARKS = (b"\xff\xfe", b"\xfe\xff")
_WORD_PROCESSOR_CODE = "cp1252"


def read_text(path: Path, shown: str, log: ProblemLog) -> str | None:
    """The text of a UTF-8 file with `\\n` at its line ends, or None with the fault in the log.

    `shown` is how the path is printed. A byte order mark is dropped. Nothing over `MOST_BYTES` is read.
    """
    data = _read_bytes(path, shown, log)
    if data is None:
        return None
    if data.startswith(_UTF16_MARKS):
        log.add("file-utf16", _top(shown))
        return None
    data = data.removeprefix(_UTF8_MARK)
    try:
        return _even_lines(data.decode("utf-8"))
    except UnicodeDecodeError as fault:
        _report_byte(data, fault.start, shown, log)
        return None


def _read_bytes(path: Path, shown: str, log: ProblemLog) -> bytes | None:
    try:
        with path.open("rb") as stream:
            data = stream.read(MOST_BYTES + 1)
    except FileNotFoundError:
        log.add("file-missing", _top(shown))
        return None
    except (OSError, ValueError) as fault:
        log.add("file-unreadable", _top(shown), reason=getattr(fault, "strerror", None) or str(fault))
        return None
    if len(data) > MOST_BYTES:
        log.add("file-too-large", _top(shown), most=f"{MOST_BYTES:,}")
        return None
    return data


def _even_lines(text: str) -> str:
    return text.replace("\r\n", "\n").replace("\r", "\n")


def _top(shown: str) -> Span:
    return Span(file=shown, line=1, column=1, text="")


def _report_byte(data: bytes, offset: int, shown: str, log: ProblemLog) -> None:
    before = _even_lines(data[:offset].decode("utf-8"))
    line, start = before.count("\n") + 1, before.rpartition("\n")[2]
    rest = data[offset:].splitlines()[0].decode("utf-8", errors="replace")
    span = Span(file=shown, line=line, column=len(start) + 1, text=start + rest)
    byte = data[offset : offset + 1]
    log.add("file-encoding", span, byte=f"0x{byte[0]:02X}", line=line, letter=_as_word_processor(byte))


def _as_word_processor(byte: bytes) -> str:
    """The letter that Windows-1252, the usual wrong encoding, has for this byte."""
    return byte.decode(_WORD_PROCESSOR_CODE, errors="replace")
