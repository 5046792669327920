"""Which files lie in the folder where a class hands in?"""

from __future__ import annotations

import hashlib
import os
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from tutor.cohort.facts import FileFault
from tutor.cohort.handed import plain_bytes
from tutor.records import disk
from tutor.text import so_many

MOST_FILES = 20_000
DEEPEST = 4
OF_A_SET = ".toml"
TOO_DEEP = f"what is in it is not read: it lies over {DEEPEST} folders deep; move it up"
A_LINK = "it is a link to a folder, and not followed; put the folder itself here"
TOO_MANY = "from here on nothing is read, {files} in all: at most {most} are; divide them"


@dataclass(frozen=True)
class Lying:
    """A file: where it is, its name within the folder, and why it is not read, where it is not."""

    path: Path
    name: str
    refused: str = ""


def files_in(folder: Path) -> tuple[Lying, ...]:
    """The files in and under a folder by their names; hidden ones and problem files are left out.

    Folders that are not opened are among them, with the reason. OSError where the folder cannot be listed.
    """
    if folder.is_file():
        return (Lying(folder, disk.path_shown(folder.name)),)
    found = sorted(_under(folder, DEEPEST), key=lambda each: each[0].as_posix())
    if len(found) > MOST_FILES:
        files = so_many(len(found) - MOST_FILES, "file")
        refused = TOO_MANY.format(files=files, most=MOST_FILES)
        found = [*found[:MOST_FILES], (found[MOST_FILES][0], refused)]
    return tuple(
        Lying(path, disk.path_shown(path.relative_to(folder).as_posix()), why)
        for path, why in found
    )


def _under(folder: Path, depth: int) -> Iterator[tuple[Path, str]]:
    with os.scandir(folder) as entries:
        for entry in entries:
            if entry.name.startswith("."):
                continue
            path = Path(entry.path)
            if entry.is_dir(follow_symlinks=False):
                if depth:
                    yield from _under(path, depth - 1)
                else:
                    yield path, TOO_DEEP
            elif not entry.name.endswith(OF_A_SET):
                yield path, A_LINK if entry.is_dir() else ""


def read(lying: Lying) -> bytes | FileFault:
    """The bytes of a file, or why there are none."""
    if lying.refused:
        return FileFault(lying.name, lying.refused)
    try:
        return disk.read_file(lying.path)
    except OSError as refused:
        return FileFault(lying.name, f"it cannot be read: {disk.why_not(refused)}")


def seed_of(files: Sequence[Lying]) -> str:
    """A text that depends on every byte handed in, and on nothing else."""
    marks = set()
    for lying in files:
        data = read(lying)
        if isinstance(data, bytes):
            marks.add(hashlib.sha256(plain_bytes(data)).hexdigest())
    return hashlib.sha256("\n".join(sorted(marks)).encode()).hexdigest()
