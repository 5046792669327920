"""What is a mistake made of? A rule that makes wrong coefficients out of a true one, and its hints.

A hint never gives an answer: `look` says what kind of thing is wrong and names no force, `reason`
gives the principle and names no force either, `place` names the force and the kind of error but no
number. None of the three repeats another.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from typing import Literal

from tutor.judge.about import Along, Asked, Equation, Fx, Fy, M, Value
from tutor.judge.elsewhere import is_load_elsewhere
from tutor.judge.example import Example
from tutor.judge.factors import Factors
from tutor.judge.headings import direction_in_words, equation_in_words
from tutor.judge.same import are_same
from tutor.judge.saying import Saying
from tutor.judge.scale import A_SLIP
from tutor.judge.true_equation import TrueTerm
from tutor.model import Problem
from tutor.statics.body import Force, load_forces, load_named
from tutor.text import raised

MOST_NAMED = 4
"""So many forces are named where any of them may be meant."""


@dataclass(frozen=True)
class Case:
    """One mistake in one line: what the hints may speak of.

    `spot` is the force concerned where it acts on the body; `force` its name, or None for the whole
    line; `acting` counts the forces with a part in the equation; `true_of` is what the line is true of
    instead; `alike` names other forces of which the same may be said; `typed` is what stands in the line for
    the force concerned, where that is one term; `signed` is whether an earlier result stands there with its own
    minus, in brackets; `work` is what the mistake is in, where that is no line; `only_turned`: all sizes fit.
    """

    problem: Problem
    about: Asked
    force: str | None = None
    spot: TrueTerm | None = None
    acting: int = 0
    true_of: Equation | None = None
    alike: tuple[str, ...] = ()
    typed: float | None = None
    signed: bool = False
    work: str = ""
    only_turned: bool = True

    @property
    def this_line(self) -> str:
        """What the mistake is in."""
        return self.work or "this line"

    @property
    def your_line(self) -> str:
        """The same as the student's own."""
        return self.work or "your line"

    @property
    def factor_typed(self) -> float | None:
        """The factor or arm that stands beside the force concerned, without its sign; or None."""
        if self.typed is None or self.spot is None or self.spot.scale == 0.0:
            return None
        return abs(self.typed / self.spot.scale)

    @property
    def size_typed(self) -> float | None:
        """The number that stands for the size of the force concerned, without its sign; or None."""
        if self.typed is None or self.spot is None or self.spot.per_unit == 0.0:
            return None
        return abs(self.typed / self.spot.per_unit)

    @property
    def body(self) -> str:
        """ "joint C", "the whole truss" or "the part with A, B"."""
        if isinstance(self.about, Value):
            return "the whole truss"
        if self.about.part:
            return f"the part with {', '.join(self.about.part)}"
        return f"joint {self.about.joint}" if self.about.joint else "the whole truss"

    @property
    def is_cut(self) -> bool:
        """Whether the body is a part cut off the truss."""
        return not isinstance(self.about, Value) and bool(self.about.part)

    @property
    def at_joint(self) -> bool:
        """Whether the body is one joint."""
        return not isinstance(self.about, Value) and self.about.joint is not None

    @property
    def equation(self) -> str:
        return self.in_words(self.about)

    def in_words(self, about: Asked) -> str:
        """An equation of this truss for people, a direction by its member."""
        return equation_in_words(self.problem, about)

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
        """Which component of a force counts in the sum: "horizontal", "vertical", "AB"."""
        match self.about:
            case Fx():
                return "horizontal"
            case Fy():
                return "vertical"
            case Along():
                return direction_in_words(self.problem, self.about)
        return ""

    @property
    def share(self) -> str:
        """What a force must have to stand in this equation: "a moment about A", "a vertical component"."""
        match self.about:
            case M():
                return f"a moment about {self.point}"
            case Along():
                return f"a component along {self.direction}"
        return f"a {self.direction} component"

    @property
    def names_a_component(self) -> bool:
        """Whether it is one component of a force that is spoken of: of an unknown, or of a load given by two."""
        load = load_named(self.force or "")
        return self.spot is not None and bool(self.spot.part or (load and load[1]))

    @property
    def is_own_part(self) -> bool:
        """Whether the component spoken of is the one that counts in this sum, so that it has no other."""
        load = load_named(self.force or "")
        part = (self.spot.part if self.spot is not None else "") or (load[1] if load else "")
        return bool(part) and self.direction == {"x": "horizontal", "y": "vertical"}[part]

    @property
    def lies(self) -> str:
        """How a side of a slope triangle lies that counts in the sum: "is horizontal", "lies along AB"."""
        match self.about:
            case Fx():
                return "is horizontal"
            case Fy():
                return "is vertical"
        return f"lies along {self.direction}"

    @property
    def thing(self) -> str:
        """The force concerned in words, or those of which any may be it."""
        if self.spot is not None and self.spot.part:
            part = {"x": "horizontal", "y": "vertical"}[self.spot.part]
            return f"the {part} component of {force_in_words(self.problem, self.force)}"
        if (load := self._load_by_its_way) is not None and not self.alike:
            return load
        named = dict.fromkeys(force_in_words(self.problem, f) for f in (self.force, *self.alike))
        if len(named) > MOST_NAMED:
            return f"{next(iter(named))} or another force of the same size"
        return " or ".join(named)

    @property
    def _load_by_its_way(self) -> str | None:
        """ "one of the loads at D (the horizontal one)", where its direction tells it apart."""
        if self.spot is None or self.spot.name != self.force:
            return None
        alike = [t for t in self.spot.equation.terms if t.force.name == self.force]
        here = [_way_of(t.force) for t in alike]
        own = next((t.coefficient for t in alike if t.force == self.spot.force), 0.0)
        same = [t for t in alike if are_same(abs(t.coefficient), abs(own))]
        if len(alike) < 2 or len(same) > 1 or here.count(_way_of(self.spot.force)) > 1:
            return None
        return f"{force_in_words(self.problem, self.force)} (the {_way_of(self.spot.force)} one)"

    @property
    def subject(self) -> str:
        """The force concerned at the beginning of a sentence."""
        return raised(self.thing)


def _way_of(force: Force) -> str:
    if force.x != 0.0 and force.y != 0.0:
        return "inclined"
    return "vertical" if force.x == 0.0 else "horizontal"


def force_in_words(problem: Problem, force: str | None) -> str:
    """ "the force in AC", "the reaction B_y", "one of the loads at C" where several act alike; "a force" for None."""
    if force is None:
        return "a force"
    if force in problem.member:
        return f"the force in {force}"
    if force in problem.reaction:
        return f"the reaction {force}"
    if (load := load_named(force)) is not None:
        joint, part = load
        kind = {"x": "horizontal ", "y": "vertical "}.get(part, "")
        alike = [f for f in load_forces(problem, joint) if f.name == force]
        if len(alike) > 1:
            return f"one of the {kind}loads at {joint}"
        return f"the {kind}load at {joint}"
    return force


def given_elsewhere(case: Case) -> bool:
    """Whether the number typed is that of another load, or of its horizontal or vertical component."""
    size = case.size_typed
    load = load_named(case.force or "")
    here = None if isinstance(case.about, Value) else case.about.joint
    if size is None or not (here or load):
        return False
    return is_load_elsewhere(case.problem, {here or "", load[0] if load else ""}, size)


@dataclass(frozen=True)
class Look:
    """How a term looks: its typed factors, whether its number is rounded, and where it stands.

    `numeric` is whether it is a number alone, and not the factor of an unknown.
    """

    factors: Factors
    rounded: bool
    in_moment: bool
    numeric: bool

    @property
    def trigonometric(self) -> bool:
        """Whether a sine or a cosine was typed."""
        return bool(self.factors.functions & {"sin", "cos"})

    @property
    def shows_component(self) -> bool:
        """Whether a factor was typed that may be a component's, or the number was worked out.

        What stands alone beside an unknown was worked out where it is rounded; else it is read off.
        """
        small = any(abs(leaf) < 1.0 for leaf in self.factors.leaves)
        alone = self.factors.count < (2 if self.numeric or self.rounded else 1)
        return alone or small or bool(self.factors.functions)


@dataclass(frozen=True)
class Kind:
    """A named way in which students go wrong.

    `code` is public and stable, `called` its name for people; `why` is one sentence on why students do it;
    `rare` is the step of the scale by which it is less plausible than the commonest mistakes are, a sign
    turned in a moment or an arrow that was drawn the other way (our own judgement, no source).
    `variants` gives the wrong coefficients, per unit of the force and in the student's sense, that
    this mistake makes at a spot; None where the mistake concerns a whole line or a value.
    `examples` are lines and values that show it, for the catalogue in the documentation.

    What else the search has to know of a mistake is said by its traits. `touches` is what it leaves
    wrong of a typed product: the size of the force, the factor beside it, or neither (a sign, or the
    whole term). `calculated`: a calculator's answer, which has to be met precisely. `runs_through`:
    made at one force it is soon made at all. `counts`: a term left out, or one too many. `in_sum`:
    may be seen in numbers that were added up first. `of_whole`: made at a force taken whole, never at
    one typed in several terms. `shows`: whether a term can look like this at all. `instead_of`: the
    mistake that has this name `where` a force is such, beside the other numbers of the line.
    """

    code: str
    called: str
    why: str
    look: Callable[[Case], Saying]
    reason: Callable[[Case], str]
    place: Callable[[Case], Saying]
    variants: Callable[[TrueTerm], Iterable[float]] | None = None
    examples: tuple[Example, ...] = ()
    rare: float = 0.0
    touches: Literal["size", "factor", "neither"] = "factor"
    calculated: bool = False
    runs_through: bool = False
    counts: Literal["", "left out", "too many"] = ""
    in_sum: bool = False
    of_whole: bool = False
    shows: Callable[[Look], bool] | None = None
    instead_of: str = ""
    where: Callable[[TrueTerm, Sequence[TrueTerm]], bool] | None = None

    @property
    def cost(self) -> float:
        """What it costs to explain a line by this mistake."""
        return A_SLIP + self.rare
