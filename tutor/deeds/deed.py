"""What is meant to happen after a typed line? One of a few things, as data."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Literal

Way = Literal["problems", "lesson", "homework", "walk", "draw", "practice", "next", "out"]
"""Where one goes from a lesson, a homework or a drawing."""
Sight = Literal[
    "question",
    "last",
    "where",
    "figure",
    "large",
    "truss",
    "arm",
    "lines",
    "results",
    "joints",
    "table",
    "help",
]
"""What can be shown or said again."""
Half = Literal["zero", "assume", "step", "equation", "save", "answer", "guess"]
"""Deeds that need something named with them."""


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
    """Away from this lesson: to the list of problems, the homework on this truss, practice, the next problem, or out."""

    where: Way


@dataclass(frozen=True)
class RemarksOn:
    """From now on remarks that teach an easier way are made, or not."""

    on: bool


@dataclass(frozen=True)
class Begin:
    """The first steps are written, up to a `stage`, and the rest is the student's; "" is as offered."""

    stage: str


@dataclass(frozen=True)
class Guided:
    """From now on the student is told what comes next, and what they can do by now, or not."""

    on: bool


@dataclass(frozen=True)
class Show:
    """Something is shown or said again; `of` is the joint, force or word it is about, or ""."""

    what: Sight
    of: str = ""


@dataclass(frozen=True)
class Unfinished:
    """The word of a deed without all it needs: `given` is what was named already, `lines` ask for
    the rest in words. A front with pictures may offer a choice instead."""

    deed: Half
    given: str
    lines: tuple[str, ...]


@dataclass(frozen=True)
class Lost:
    """The text is no answer to what is asked, no word and no line; `meant` is the nearest word."""

    meant: str = ""


Deed = Do | Tell | Await | Save | Go | RemarksOn | Begin | Guided | Show | Unfinished | Lost
