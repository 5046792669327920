"""In which order can the joints be solved, each with at most two unknown forces?"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from tutor.model import Problem
from tutor.statics.body import Force, joint_body
from tutor.statics.determinate import reactions_from_whole
from tutor.text import listed

PARALLEL = 1e-9


@dataclass(frozen=True)
class JointTurn:
    """What joint `joint` gives when its turn comes: the forces `finds`.

    `across` steps find one force only: all other unknown forces of the joint lie in one line, and
    the sum across that line leaves them out.
    """

    joint: str
    finds: tuple[str, ...]
    across: bool = False


@dataclass(frozen=True)
class Order:
    """An order of joints, as far as it goes.

    Each of `joints` has at most two unknown forces, and those not in one line, when its turn comes;
    the last of them, `checks`, have none left and only check the work. `steps` are the turns one by
    one, with the `across` steps in between that are needed where there is no order without.
    `stuck` are the joints that no order reaches; `said` says all this in a sentence or two.
    """

    joints: tuple[str, ...]
    stuck: tuple[str, ...]
    said: str
    checks: tuple[str, ...] = ()
    steps: tuple[JointTurn, ...] = ()


def unknown_at(problem: Problem, joint: str, known: Iterable[str]) -> tuple[str, ...]:
    """The forces at `joint` that are not among `known`: members, then reactions."""
    have = set(known)
    return tuple(name for name in joint_body(problem, joint).unknowns if name not in have)


def given_by(problem: Problem, joint: str, known: Iterable[str]) -> tuple[str, ...]:
    """The unknown forces that the equations of a joint give with what is `known` and nothing else."""
    have = set(known)
    unknown = [
        force
        for force in joint_body(problem, joint).forces
        if force.size is None and force.name not in have
    ]
    if _solvable(unknown):
        return tuple(force.name for force in unknown)
    alone = _alone(unknown)
    return () if alone is None else (alone,)


def joint_order(problem: Problem, given: Iterable[str] | None = None) -> Order:
    """An order in which the joints can be solved one after the other.

    `given` names the unknowns known at the start; by default the reactions that the whole-body
    equations fix. The next joint is a neighbour of the last where possible, and any other where not,
    so the work may come from both ends.
    """
    known = set(reactions_from_whole(problem) if given is None else given)
    left = [joint.name for joint in problem.joints]
    unknown = {
        joint: [force for force in joint_body(problem, joint).forces if force.size is None]
        for joint in left
    }
    steps: list[JointTurn] = []
    while True:
        at = {joint: [f for f in unknown[joint] if f.name not in known] for joint in left}
        step = _next(problem, at, steps)
        if step is None:
            break
        steps.append(step)
        known.update(step.finds)
        if not step.across:
            left.remove(step.joint)
    visits = [step for step in steps if not step.across]
    checks = tuple(step.joint for step in visits if not step.finds)
    solved = tuple(step.joint for step in visits if step.finds)
    said = _said(solved, checks, at, steps)
    return Order((*solved, *checks), tuple(left), said, checks, tuple(steps))


def _next(
    problem: Problem, at: Mapping[str, list[Force]], steps: list[JointTurn]
) -> JointTurn | None:
    """The best next step: a joint with something to find, else one across a line, else a check.

    `at` holds the unknown forces of each joint that is still to come.
    """
    giving = [joint for joint, unknown in at.items() if unknown and _solvable(unknown)]
    if giving:
        joint = _nearest(problem, giving, steps)
        return JointTurn(joint, tuple(force.name for force in at[joint]))
    for joint, unknown in at.items():
        alone = _alone(unknown)
        if alone is not None:
            return JointTurn(joint, (alone,), across=True)
    return next((JointTurn(joint, ()) for joint, unknown in at.items() if not unknown), None)


def _solvable(unknown: list[Force]) -> bool:
    """At most two unknown forces, and not two in one line."""
    return len(unknown) < 2 or (len(unknown) == 2 and not _in_line(*unknown))


def _alone(unknown: list[Force]) -> str | None:
    """The one force across the line of all the others, if there is one."""
    for force in unknown:
        others = [other for other in unknown if other is not force]
        if (
            len(others) > 1
            and all(_in_line(others[0], other) for other in others)
            and not _in_line(force, others[0])
        ):
            return force.name
    return None


def _in_line(one: Force, other: Force) -> bool:
    return abs(one.x * other.y - one.y * other.x) < PARALLEL


def _nearest(problem: Problem, ready: list[str], steps: list[JointTurn]) -> str:
    """The first neighbour of the last joint, or the first joint of the file where there is none."""
    if steps:
        last = steps[-1].joint
        beside = {last} | {member.other(last) for member in problem.meeting[last]}
        return next((joint for joint in ready if joint in beside), ready[0])
    return ready[0]


def _said(
    solved: tuple[str, ...],
    checks: tuple[str, ...],
    stuck: Mapping[str, list[Force]],
    steps: list[JointTurn],
) -> str:
    across = [f"{step.finds[0]} at {step.joint}" for step in steps if step.across]
    aside = ""
    if across:
        gives = f"the sum across it gives {listed(across)}"
        aside = f" Where all unknown forces but one lie in one line, {gives}."
    if not stuck:
        verb = "checks" if len(checks) == 1 else "check"
        tail = f"; {listed(checks)} {verb} the work" if checks else ""
        return f"{', '.join(solved) or 'Nothing is left to solve'}{tail}.{aside}"
    counts = listed([f"{joint} has {len(unknown)}" for joint, unknown in stuck.items()])
    start = f"{', '.join(solved)} can be solved; no other" if solved else "No"
    return (
        f"{start} joint has as few as two unknown forces in different lines: {counts}. "
        f"A section through the truss may give the next force.{aside}"
    )
