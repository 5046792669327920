"""Which equations are worth writing to see whether a truss closes?"""

from __future__ import annotations

from tutor.judge import Fx, Fy, M
from tutor.judge.about import Equation
from tutor.judge.independent import adds_something
from tutor.lesson.shown import share_values
from tutor.lesson.state import State
from tutor.lesson.steps import section


def unused(state: State) -> tuple[Equation, ...]:
    """The joint equations that no standing line has used, the last joints first."""
    found: list[Equation] = []
    visited = [line.about.joint for line in state.lines]
    latest = {joint: i for i, joint in enumerate(visited)}
    order = sorted(state.problem.joints, key=lambda joint: -latest.get(joint.name, len(visited)))
    for joint in order:
        used = [line.about for line in state.lines_of(joint.name) if not line.closing]
        for about in (Fx(joint.name), Fy(joint.name)):
            if adds_something(state.problem, about, used):
                found.append(about)
                used.append(about)
    return tuple(found)


def checks(state: State) -> tuple[Equation, ...]:
    """The equations worth writing to close: the sums of the part kept, where there is one, and others.

    Those of joints that were not used and in which at least two forces must balance; where there
    are none, those of the whole truss; where nothing at all has to balance, any that is not used.
    """
    return (*of_the_part(state), *_of_joints_or_whole(state))


def of_the_part(state: State) -> tuple[Equation, ...]:
    """The sums of the part kept that were not written and in which at least two forces must balance."""
    if not state.part:
        return ()
    used = [line.about for line in state.lines if not line.closing]
    return tuple(
        each
        for each in section.sums_offered(state)
        if each not in used and len(share_values(state, each)) > 1
    )


def _of_joints_or_whole(state: State) -> tuple[Equation, ...]:
    left = unused(state)
    used = [line.about for line in state.lines_of(None) if not line.closing]
    whole: list[Equation] = [Fx(), Fy(), *(M(joint.name) for joint in state.problem.joints)]
    others = tuple(about for about in whole if about not in used)
    for choice in (left, others):
        if worth := tuple(about for about in choice if len(share_values(state, about)) > 1):
            return worth
    return left or others
