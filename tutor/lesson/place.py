"""What was tried, or hinted at: an equation, a value, a support, a member without force, a question?

A place is a value from the step that asks to the screen. Journals hold it as one line of text; here
that is written and read, and nowhere else.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from tutor.judge.about import Asked, as_text, from_text


@dataclass(frozen=True)
class AtSupport:
    """What a support puts on its joint."""

    joint: str


@dataclass(frozen=True)
class NoForce:
    """Why a member carries no force."""

    member: str


@dataclass(frozen=True)
class Question:
    """A question of its own, by its name: the reasons, the counts."""

    name: str


Place = Asked | AtSupport | NoForce | Question


@lru_cache(maxsize=4096)
def place_of(key: str) -> Place:
    """The place that `place_key` wrote; any other text is the name of a question."""
    word, _, name = key.partition(" ")
    if word == "support" and name:
        return AtSupport(name)
    if word == "zero" and name:
        return NoForce(name)
    try:
        return from_text(key)
    except ValueError:
        return Question(key)


def place_key(place: Place) -> str:
    """One line of text that `place_of` reads back; as journals keep it, for good."""
    match place:
        case AtSupport(joint=joint):
            return f"support {joint}"
        case NoForce(member=member):
            return f"zero {member}"
        case Question(name=name):
            return name
        case _:
            return as_text(place)
