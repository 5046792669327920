"""How does a truss that is being drawn up stand: what is missing or wrong, does it hold, how does it move?"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from tutor.model import Defect, Problem, defects, write_problem
from tutor.statics import Determinacy, determinacy, stability
from tutor.text import raised

MOST_JOINTS = 120
NEEDS: tuple[tuple[str, str, str], ...] = (
    ("joints", "There is no joint yet.", "Type one, like A 0 0, or click on the grid."),
    ("members", "There is no member yet.", "Type some, like AB BC, or click two joints."),
    ("supports", "Nothing holds it yet.", "Type a support, like A pin or B roller."),
    ("loads", "There is no load yet.", "Type one, like C 12 down."),
)
CURES: tuple[tuple[str, str], ...] = (
    ("has no member", "join it to another one, or drop it"),
    ("pushes of the load", "type the load again, or drop it"),
)


@dataclass(frozen=True)
class Fault:
    """Something missing or wrong, in a sentence with its cure, and the joints or members it is at.

    A warning (members that cross) does no harm.
    """

    message: str
    cure: str
    at: tuple[str, ...] = ()
    warning: bool = False


@dataclass(frozen=True)
class Soundness:
    """Everything said of a drawing as it is now.

    `counted` is m + r against 2j; `stable` is None where that cannot be said yet. If it moves,
    `how` says so and `mechanism` maps each joint to its (dx, dy), the largest being 1.
    """

    faults: tuple[Fault, ...]
    counted: Determinacy | None = None
    stable: bool | None = None
    how: str = ""
    mechanism: Mapping[str, tuple[float, float]] = field(default_factory=dict)

    @property
    def sound(self) -> bool:
        """Whether it can be worked: no fault but warnings, and statically determinate and stable."""
        return self.stable is True and self.fits and all(fault.warning for fault in self.faults)

    @property
    def fits(self) -> bool:
        """Whether there are as many unknowns as equations."""
        return self.counted is not None and self.counted.count == "fits"

    @property
    def count(self) -> str:
        """The count in words, "" where there is nothing to count."""
        if self.counted is None:
            return ""
        return self.counted.said_if_stable if self.sound else self.counted.said


def soundness_of(problem: Problem) -> Soundness:
    """What is to be said of the drawing; nothing is raised whatever was entered."""
    faults = [Fault(said, cure) for part, said, cure in NEEDS if not getattr(problem, part)]
    faults += [_fault(problem, d) for d in defects(write_problem(problem)) if not _is_need(d)]
    if not problem.joints:
        return Soundness(tuple(faults))
    sketch = drawable(problem)
    if sketch != problem or len(problem.joints) > MOST_JOINTS:
        return Soundness(tuple(faults), determinacy(sketch))
    held = stability(problem)
    return Soundness(tuple(faults), determinacy(problem), held.stable, held.how, held.mechanism)


def drawable(problem: Problem) -> Problem:
    """The drawing without members and links that have no length, which cannot be drawn."""

    def long(one: tuple[float, float], other: tuple[float, float]) -> bool:
        return one != other

    at = {joint.name: joint.at for joint in problem.joints}
    members = tuple(m for m in problem.members if long(at[m.start], at[m.end]))
    supports = tuple(
        s
        for s in problem.supports
        if s.anchor is None or long(at[s.joint], (s.anchor[0].value, s.anchor[1].value))
    )
    if len(members) == len(problem.members) and len(supports) == len(problem.supports):
        return problem
    return replace(problem, members=members, supports=supports)


def _is_need(defect: Defect) -> bool:
    """Whether a defect only says that a part is missing or empty, which `NEEDS` says."""
    return re.match(r"there is no |\[\w+\] is empty|\w+ is empty", defect.message) is not None


def _fault(problem: Problem, defect: Defect) -> Fault:
    names = re.findall(r"[A-Za-z][A-Za-z0-9-]*", defect.message)
    at = [n for n in names if n in problem.member or (n in problem.joint and n[0].isupper())]
    cure = next((cure for mark, cure in CURES if mark in defect.message), defect.cure)
    message = raised(defect.message)
    return Fault(
        f"{message}.",
        f"{raised(cure)}.",
        tuple(dict.fromkeys(at)),
        defect.severity == "warning",
    )
