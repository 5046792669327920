"""Which files lie in the folder where a class hands in?"""

from __future__ import annotations

import hashlib
import os
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from tutor.cohort.facts import Fault
from tutor.cohort.handed import plain_bytes
from tutor.records import disk

MOST_FILES = 20_000
DEEPEST = 4
OF_A_SET = ".toml"


@dataclass(frozen=True)
class Lying:
    """A file: where it is, and its name within the folder."""

    path: Path
    name: str


def files_in(folder: Path) -> tuple[Lying, ...]:
    """The files in and under a folder by their names; hidden ones and problem files are left out.

    OSError where the folder cannot be listed.
    """
    if folder.is_file():
        return (Lying(folder, disk.shown(folder.name)),)
    found = sorted(_under(folder, DEEPEST), key=lambda path: path.as_posix())
    return tuple(
        Lying(path, disk.shown(path.relative_to(folder).as_posix())) for path in found[:MOST_FILES]
    )


def _under(folder: Path, depth: int) -> Iterator[Path]:
    with os.scandir(folder) as entries:
        for entry in entries:
            if entry.name.startswith("."):
                continue
            if entry.is_dir(follow_symlinks=False):
                if depth:
                    yield from _under(Path(entry.path), depth - 1)
            elif not entry.name.endswith(OF_A_SET):
                yield Path(entry.path)


def read(lying: Lying) -> bytes | Fault:
    """The bytes of a file, or why there are none."""
    try:
        return disk.read_file(lying.path)
    except OSError as refused:
        return Fault(lying.name, f"it cannot be read: {disk.reason(refused)}")


def seed_of(files: Sequence[Lying]) -> str:
    """A text that depends on every byte handed in, and on nothing else."""
    marks = set()
    for lying in files:
        data = read(lying)
        if isinstance(data, bytes):
            marks.add(hashlib.sha256(plain_bytes(data)).hexdigest())
    return hashlib.sha256("\n".join(sorted(marks)).encode()).hexdigest()
