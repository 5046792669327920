"""How does a truss that is being drawn up stand: what is missing or wrong, does it hold, how does it move?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from tutor.model import Defect, Problem, defects, write_problem
from tutor.model.defect import DefectKind
from tutor.statics import Determinacy, determinacy, stability
from tutor.text import raised

MOST_JOINTS = 120
NEEDS: tuple[tuple[str, str, str, str], ...] = (
    ("joints", "There is no joint yet.", "Type one, like A 0 0", "click on the grid"),
    ("members", "There is no member yet.", "Type some, like AB BC", "click two joints"),
    ("supports", "Nothing holds it yet.", "Type a support, like A pin or B roller", ""),
    ("loads", "There is no load yet.", "Type one, like C 12 down", ""),
)
"""What a truss needs: the part, what is said without it, what is typed for it, and what is clicked."""
CURES: Mapping[DefectKind, str] = {
    "unjoined": "join it to another one, or drop it",
    "cancelled": "type the load again, or drop it",
}


@dataclass(frozen=True)
class DrawingFault:
    """Something missing or wrong, in a sentence with its cure, and the joints or members it is at.

    `typed` is the cure where nothing can be clicked. A warning (members that cross) does no harm.
    """

    message: str
    cure: str
    typed: str
    at: tuple[str, ...] = ()
    warning: bool = False


@dataclass(frozen=True)
class Soundness:
    """Everything said of a drawing as it is now.

    `counted` is m + r against 2j; `stable` is None where that cannot be said yet. If it moves,
    `how` says so and `mechanism` maps each joint to its (dx, dy), the largest being 1.
    """

    faults: tuple[DrawingFault, ...]
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
    faults = [_needed(*need) for part, *need in NEEDS if not getattr(problem, part)]
    faults += [_fault(d) for d in defects(write_problem(problem)) if d.kind != "lacking"]
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


def _needed(message: str, typed: str, clicked: str) -> DrawingFault:
    return DrawingFault(message, f"{typed}, or {clicked}." if clicked else f"{typed}.", f"{typed}.")


def _fault(defect: Defect) -> DrawingFault:
    cure = f"{raised(CURES.get(defect.kind, defect.cure))}."
    message = f"{raised(defect.message)}."
    return DrawingFault(message, cure, cure, defect.of, defect.severity == "warning")
