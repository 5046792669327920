"""Which force does the hint point at, so that a picture may mark it?"""

from __future__ import annotations

from dataclasses import dataclass

from tutor.judge import LineAbout
from tutor.judge.about import as_text
from tutor.lesson.state import HintsGiven, State

PLACE = 3
"""From this level on a hint names the force."""


@dataclass(frozen=True)
class Pointed:
    """The equation that is being written, and the force in it that a hint has named."""

    about: LineAbout
    force: str


def pointed_out(state: State) -> Pointed | None:
    """What the third hint on the last wrong line was about; None before it, and once it is right.

    A hint that leaves open which of several forces is meant points at none of them.
    """
    if state.about is None:
        return None
    given = state.hints.get(as_text(state.about), HintsGiven())
    forces = [m.force for m in given.mistakes if m.force is not None and not m.alike]
    if given.level < PLACE or not forces:
        return None
    return Pointed(state.about, forces[0])
