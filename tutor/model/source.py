"""What text is in a file, and if none can be had, why not?"""

from __future__ import annotations

import os
import stat
from dataclasses import dataclass
from pathlib import Path

from tutor.model.defect import Defect
from tutor.text import one_line, printable

LARGEST = 256_000
MOST_LINES = 10_000
UTF16 = (b"\xff\xfe", b"\xfe\xff")


@dataclass(frozen=True)
class SourceFile:
    """The text of a file, or None, and what is wrong with the file itself.

    With a defect and a text, the text has marks in the place of bytes that could not be read.
    """

    file: str
    text: str | None
    defects: tuple[Defect, ...] = ()


def file_name(path: str | Path) -> str:
    """The path as it may be shown."""
    return printable(os.fspath(path)) or "?"


def read_source(path: str | Path) -> SourceFile:
    """The text of the file at `path`; never raises, never waits for a pipe or device."""
    try:
        status = os.stat(path)
        if stat.S_ISDIR(status.st_mode):
            return _none(path, "this is a folder, not a file", "name a file in it")
        if not stat.S_ISREG(status.st_mode):
            return _none(path, "this is no ordinary file", "name a text file")
        with open(path, "rb") as file:
            content = file.read(LARGEST + 1)
    except FileNotFoundError:
        return _none(path, "there is no such file", "check its name and folder")
    except PermissionError:
        return _none(path, "the file may not be read", "ask for permission to read it")
    except (OSError, ValueError) as refused:
        reason = one_line(getattr(refused, "strerror", None) or str(refused))
        return _none(path, f"the file cannot be read: {reason}", "check its name and folder")
    if len(content) > LARGEST:
        return _none(
            path, "the file is over 256 kB", "a problem file is a short text; is it another?"
        )
    count = content.count(b"\n") + 1
    if count > MOST_LINES:
        return _none(
            path,
            f"the file has {count} lines, more than {MOST_LINES}",
            "a problem file is a short text; is it another?",
        )
    return _decoded(path, content)


def _decoded(path: str | Path, content: bytes) -> SourceFile:
    if content.startswith(UTF16):
        return _none(path, "the file is in UTF-16", "save it as UTF-8")
    try:
        return SourceFile(file_name(path), content.decode("utf-8-sig"))
    except UnicodeDecodeError as refused:
        line = content.count(b"\n", 0, refused.start) + 1
        message = f"byte 0x{content[refused.start]:02X} is not UTF-8"
        defect = Defect(file_name(path), line, message, "save the file as UTF-8")
        marked = content.decode("utf-8-sig", "replace")
        text = None if b"\0" in content else marked
        return SourceFile(file_name(path), text, (defect,))


def _none(path: str | Path, message: str, cure: str) -> SourceFile:
    return SourceFile(file_name(path), None, (Defect(file_name(path), 1, message, cure),))
