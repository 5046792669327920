"""What is meant to happen after a typed line? One of a few things, as data."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Literal

Way = Literal["problems", "lesson", "homework", "walk", "draw", "practice", "out"]
"""Where one goes from a lesson, a homework or a drawing."""


@dataclass(frozen=True)
class Do:
    """An event of the lesson; `read_as` is the text as the lesson gets it, where it was completed."""

    kind: str
    data: Mapping[str, Any]
    read_as: str = ""


@dataclass(frozen=True)
class Tell:
    """Nothing happens; these lines are the answer."""

    lines: tuple[str, ...]


@dataclass(frozen=True)
class Await:
    """The next line typed is the value of this unknown."""

    unknown: str


@dataclass(frozen=True)
class Save:
    """The lesson so far is written into this file, which must not be there yet."""

    name: str


@dataclass(frozen=True)
class Go:
    """Away from this lesson: to the list of problems, the homework on this truss, practice, or out."""

    where: Way


@dataclass(frozen=True)
class Remark:
    """From now on remarks that teach an easier way are made, or not."""

    on: bool


Deed = Do | Tell | Await | Save | Go | Remark
