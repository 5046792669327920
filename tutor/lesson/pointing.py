"""Which force does the hint point at, so that a picture may mark it?"""

from __future__ import annotations

from dataclasses import dataclass

from tutor.judge import Equation
from tutor.lesson.state import HintsGiven, State
from tutor.statics.body import load_forces

PLACE = 3
"""From this level on a hint names the force."""

ARM_FITS = frozenset({"turning", "magnitude", "carried", "minus", "double", "unit"})
"""Mistakes that leave the arm beside a force as it should be."""


@dataclass(frozen=True)
class Pointed:
    """The equation that is being written, and the force in it that a hint has named.

    `arm` is whether its arm is worth a look: not where the mistake leaves that as it should be.
    """

    about: Equation
    force: str
    arm: bool = True


def pointed_out(state: State) -> Pointed | None:
    """What the third hint on the last wrong line was about; None before it, and once it is right.

    A hint that leaves open which of several forces is meant, or which of several loads of one name,
    points at none of them.
    """
    if state.about is None:
        return None
    given = state.hints.get(state.about, HintsGiven())
    if given.level < PLACE:
        return None
    loads = [f.name for joint in state.problem.joint for f in load_forces(state.problem, joint)]
    for mistake in given.mistakes:
        force = mistake.force
        if force is not None and not mistake.alike and loads.count(force) < 2:
            return Pointed(state.about, force, mistake.code not in ARM_FITS)
    return None
