"""Do these numbers make a problem that the instructor wants, and if not, what is wrong with them?

Always asked: the truss can be drawn, is statically determinate and stable, and no roller must pull
that does not in the file as it stands. Then comes what `keep` says.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

from tutor.model import Problem
from tutor.model.checks import check_drawing
from tutor.model.defect import Findings
from tutor.model.support import kind_of_support, push_along
from tutor.model.vary import HOLDS, Condition, Kind
from tutor.statics import Answer, Unsolvable, solve
from tutor.text import unended
from tutor.variants.slopes import awkward_slopes

FIGURES = 3
NEAR = 1e-9
ROOTS = (1.0, math.sqrt(2), math.sqrt(3), 1 / math.sqrt(3))
DRAWN = "no joint on another or on a member, no member across another"
STANDS = "statically determinate and stable"
HOPELESS = 1000
PUSHES = "no roller that must pull"
How = tuple[str, float] | None
"""How a condition is missed, and by what; None where it is met."""


@dataclass(frozen=True)
class Missed:
    """A condition that numbers do not meet, and in words how they miss it.

    `weight` tells how much that is: what does not even stand is further off than the rest. Of numbers
    that miss the same, those with the smaller `gap` are nearer: by what part of a limit a size misses
    it, how large a force of the wrong sign is, how many forces are long.
    """

    condition: str
    how: str
    weight: int = 1
    gap: float = 0.0


class AsWritten:
    """A problem as its file has it, and what is wrong with that; its variants are held against it."""

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        self.keep = problem.vary.keep if problem.vary is not None else ()

    @cached_property
    def drawn_badly(self) -> set[str]:
        return _drawn_badly(self.problem)

    @cached_property
    def pulling(self) -> set[str]:
        """The joints whose roller must pull; none where the truss cannot be solved."""
        try:
            return set(pulling_rollers(solve(self.problem)))
        except Unsolvable:
            return set()


def misses(problem: Problem, written: AsWritten) -> Iterator[Missed]:
    """The conditions that `problem`, made from the one as written, does not meet, one by one.

    Where it cannot be drawn or does not stand, nothing else is asked.
    """
    moved = problem.joints != written.problem.joints
    if moved and (new := _drawn_badly(problem) - written.drawn_badly):
        yield Missed(DRAWN, min(new), HOPELESS)
        return
    try:
        answer = solve(problem)
    except Unsolvable as reason:
        yield Missed(STANDS, unended(reason.reason), HOPELESS)
        return
    pulling = pulling_rollers(answer)
    for joint in sorted(set(pulling) - written.pulling):
        yield Missed(PUSHES, f"the roller at {joint} would have to pull", gap=pulling[joint])
    for condition in written.keep:
        missed = HOW_MISSED[condition.kind](condition, answer)
        if missed is not None:
            how, gap = missed
            yield Missed(condition.text, how, gap=gap)


def pulling_rollers(answer: Answer) -> dict[str, float]:
    """The joints whose roller must pull on the truss, each with the force of that pull.

    A roller only pushes, along its direction; a link may do both.
    """
    found: dict[str, float] = {}
    for support in answer.problem.supports:
        if not kind_of_support(support).only_pushes:
            continue
        (reaction,) = (r for r in answer.problem.reactions if r.joint == support.joint)
        force = answer.value(reaction.name)
        if force * push_along(support, reaction) < 0:
            found[support.joint] = abs(force)
    return found


def _drawn_badly(problem: Problem) -> set[str]:
    notes = Findings("", dict)
    check_drawing(notes, problem.joints, tuple(enumerate(problem.members)))
    return {defect.message for defect in notes.all()}


def is_short(force: float) -> bool:
    """Whether a force is a decimal of at most three figures, or one times the root of 2 or of 3."""
    return any(_has_few_figures(abs(force) * root) for root in ROOTS)


def _has_few_figures(number: float) -> bool:
    if number == 0.0:
        return True
    return math.isclose(number, float(f"{number:.{FIGURES}g}"), rel_tol=NEAR)


def _nice(condition: Condition, answer: Answer) -> How:
    long = [name for name, force in answer.values.items() if not is_short(force)]
    slopes = awkward_slopes(answer.problem)
    if slopes:
        return f"{slopes[0]} has the slope of no known triangle", len(slopes) + len(long)
    if not long:
        return None
    more = f", and {len(long) - 1} more of {len(answer.values)} forces are no short numbers"
    how = f"{long[0]} is {abs(answer.value(long[0])):.5g}{more if len(long) > 1 else ''}"
    return how, len(long)


def _members(answer: Answer) -> dict[str, float]:
    return {name: abs(answer.values[name]) for name in answer.problem.member}


def _extreme(pick: Callable[..., str]) -> Callable[[Condition, Answer], How]:
    def check(condition: Condition, answer: Answer) -> How:
        sizes = {name: size for name, size in _members(answer).items() if size > 0}
        if not sizes:
            return None
        name = pick(sizes, key=lambda each: sizes[each])
        return _held(condition, name, sizes[name], answer)

    return check


def _size(condition: Condition, answer: Answer) -> How:
    return _held(condition, condition.unknown, abs(answer.value(condition.unknown)), answer)


def _held(condition: Condition, name: str, size: float, answer: Answer) -> How:
    """How a size misses a limit; sizes nearer than 1e-9 of it are at the limit."""
    at_limit = math.isclose(size, condition.limit, rel_tol=NEAR)
    if at_limit and condition.relation in ("<=", ">="):
        return None
    if not at_limit and HOLDS[condition.relation](size, condition.limit):
        return None
    gap = abs(size - condition.limit) / max(condition.limit, NEAR)
    return f"{name} is {size:.5g} {answer.problem.force}", gap


def _sense(condition: Condition, answer: Answer) -> How:
    force = answer.value(condition.unknown)
    is_so = {
        "tension": force > 0,
        "compression": force < 0,
        "zero": force == 0,
        "not zero": force != 0,
    }[condition.kind]
    if is_so:
        return None
    letter = "T" if force > 0 else "C"
    words = f"{abs(force):.5g} {answer.problem.force}"
    if condition.unknown in answer.problem.member and force:
        words += f" {letter}"
    return f"{condition.unknown} is {words if force else 0}", abs(force)


HOW_MISSED: Mapping[Kind, Callable[[Condition, Answer], How]] = {
    "nice": _nice,
    "largest": _extreme(max),
    "smallest": _extreme(min),
    "size": _size,
    "tension": _sense,
    "compression": _sense,
    "zero": _sense,
    "not zero": _sense,
}
