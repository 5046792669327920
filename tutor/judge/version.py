"""Which judge is this? A word that changes whenever any verdict may."""

from __future__ import annotations

import hashlib
from collections.abc import Iterable
from functools import lru_cache
from pathlib import Path

from tutor.model import Problem

ROOMS = ("notation", "model", "statics", "judge", "lesson")
"""The rooms whose code decides what becomes of a typed line."""
LENGTH = 10


def judge_version(problem: Problem) -> str:
    """The version of this program's judge, with the tolerance that it takes from the problem.

    Told from the sources, so that nobody has to think of raising it.
    """
    tolerance = problem.tolerance
    return f"{of_sources()} {tolerance.silent:g} {tolerance.remark:g}"


@lru_cache(maxsize=1)
def of_sources() -> str:
    """A digest of the sources of the rooms that judge."""
    return digest_of(ROOMS)


def digest_of(rooms: Iterable[str]) -> str:
    """A digest of the sources of these rooms: another one whenever anything in them is."""
    folder = Path(__file__).resolve().parents[1]
    found = hashlib.sha256()
    for room in rooms:
        for path in sorted((folder / room).rglob("*")):
            if path.suffix in (".py", ".lark"):
                found.update(path.name.encode())
                found.update(path.read_bytes())
    return found.hexdigest()[:LENGTH]
