"""What is a mistake made of? A rule that makes wrong coefficients out of a true one, and its hints.

A hint never gives an answer: `look` says what kind of thing is wrong and names no unknown, `reason`
gives the principle and names no term's error, `place` names the term and the kind of error but no
number.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from tutor.judge.about import About, Along, Fx, Fy, LineAbout, M, in_words
from tutor.judge.truth import Spot
from tutor.model import Problem


@dataclass(frozen=True)
class Case:
    """One mistake in one line: what the hints may speak of.

    `spot` is the force concerned where it acts on the body; `force` its name, or None for the whole
    line; `acting` counts the forces with a part in the equation; `true_of` is what the line is
    true of instead.
    """

    problem: Problem
    about: About
    force: str | None = None
    spot: Spot | None = None
    acting: int = 0
    true_of: LineAbout | None = None

    @property
    def body(self) -> str:
        """ "joint C" or "the whole truss"."""
        joint = getattr(self.about, "joint", None)
        return f"joint {joint}" if joint else "the whole truss"

    @property
    def equation(self) -> str:
        return in_words(self.about)

    @property
    def is_moment(self) -> bool:
        return isinstance(self.about, M)

    @property
    def point(self) -> str:
        """The moment point in words."""
        if isinstance(self.about, M):
            at = self.about.at
            return at if isinstance(at, str) else f"the point ({at[0]:g}, {at[1]:g})"
        return ""

    @property
    def direction(self) -> str:
        """The direction of the sum in words."""
        match self.about:
            case Fx():
                return "horizontal"
            case Fy():
                return "vertical"
            case Along(degrees=degrees):
                return f"{degrees:g}°"
        return ""

    @property
    def thing(self) -> str:
        """The force concerned in words."""
        return force_in_words(self.problem, self.force)


def force_in_words(problem: Problem, force: str | None) -> str:
    """ "the force in AC", "the reaction B_y", "the load at C"; "a force" for None."""
    if force is None:
        return "a force"
    if force in problem.member:
        return f"the force in {force}"
    if force in problem.reaction:
        return f"the reaction {force}"
    if force.startswith("load "):
        joint, _, part = force.removeprefix("load ").partition(" ")
        kind = {"x": "horizontal ", "y": "vertical "}.get(part, "")
        return f"the {kind}load at {joint}"
    return force


@dataclass(frozen=True)
class Kind:
    """A named way in which students go wrong.

    `code` is public and stable; `cost` ranks it among others that explain a line as well (lower is
    more plausible; our own judgement, no source); `why` is one sentence on why students do it.
    `variants` gives the wrong coefficients, per unit of the force and in the student's sense, that
    this mistake makes at a spot; None where the mistake concerns a whole line or a value.
    """

    code: str
    cost: float
    why: str
    look: Callable[[Case], str]
    reason: Callable[[Case], str]
    place: Callable[[Case], str]
    variants: Callable[[Spot], Iterable[float]] | None = None
