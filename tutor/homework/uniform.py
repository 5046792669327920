"""Are all values wrong in one and the same way: every sign reversed, or everything in another unit?"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from tutor.homework.account import Account
from tutor.homework.rounding import NOTHING, correctness
from tutor.homework.sheet import WHOLE, Bodies, renumbered
from tutor.homework.slips import FACTORS, mistake_of
from tutor.homework.work import LEAST_FIGURES, Entry, half_step
from tutor.judge import Mistake, Value
from tutor.model import Problem
from tutor.statics import joint_order

LEAST, MOST_PLACES = 3, 2
MOST_OFF = 2
"""Not more than one value in so many is left undecided by what was carried on."""
NEWTONS = {"N": 1.0, "kN": 1e3, "MN": 1e6, "lb": 4.4482216, "kip": 4448.2216, "kg": 9.80665}
"""One unit of force in newtons; the pound is exactly 0.45359237 kg at 9.80665 m/s² (NIST SP 811).

A kilogram is the mass that somebody takes for the force.
"""
REVERSED = (
    "Every force here has the right size, and tension and compression are the wrong way round "
    "throughout: either the other sign convention was used, or every member was drawn pushing.",
    "No line need be written again. Take one member of which you can see whether it is pulled or "
    "pushed, and which sign or letter you gave it; then look at all the others alike.",
)
SCALED = (
    "Every value here is off by one and the same factor of units.",
    "No line need be written again. Take one value: in which unit did the loads go in, and in which "
    "did you write down what came out? Then look at all the others alike.",
)
"""What is said of the whole paper, and where to look."""


@dataclass(frozen=True)
class Uniform:
    """One mistake that runs through the homework, and the places where it may have come in."""

    problem: Problem
    places: tuple[str, ...]
    code: str
    text: str
    mend: str

    def cause(self, name: str) -> Mistake:
        code = self.code
        if code == "tension-compression" and name not in self.problem.member:
            code = "sign"
        return self._said(mistake_of(self.problem, Value(name), code, name))

    def _said(self, mistake: Mistake) -> Mistake:
        return replace(mistake, text=self.text, place=self.mend)

    @property
    def accounts(self) -> tuple[Account, ...]:
        mistake = mistake_of(self.problem, Value("the forces"), self.code, None)
        return (Account(self.places[0], self._said(mistake), None, 0.5, throughout=True),)


def uniform(
    problem: Problem,
    bodies: Bodies,
    entries: Mapping[str, Entry],
    true: Mapping[str, float],
    wrong: Iterable[str],
) -> Uniform | None:
    """The mistake that all wrong values share, where every value written that is not zero has it."""
    amiss = set(wrong)
    least = NOTHING * max(map(abs, true.values()), default=0.0)
    some = [n for n, e in entries.items() if e.value != 0.0 and abs(true[n]) > least]
    members = [n for n in some if n in problem.member]
    for names in (some, members):
        if len(names) < LEAST or not set(names) <= amiss:
            continue
        if any(abs(true[n]) > least for n in amiss - set(names)):
            continue
        for factor in (-1.0, *_factors(problem)):
            if _alike(problem, bodies, entries, true, names, factor):
                places = (WHOLE,) if names is some else _first_joints(problem, bodies, set(entries))
                if factor < 0:
                    return Uniform(problem, places[:1], "tension-compression", *REVERSED)
                return Uniform(problem, places, "unit", *SCALED)
    return None


def _factors(problem: Problem) -> tuple[float, ...]:
    """How many of another unit make one of the problem's, and steps of a thousand."""
    own = NEWTONS[problem.force]
    others = [own / other for other in NEWTONS.values() if other != own]
    return tuple(dict.fromkeys((*FACTORS, *others, *(1.0 / factor for factor in others))))


def _alike(
    problem: Problem,
    bodies: Bodies,
    entries: Mapping[str, Entry],
    true: Mapping[str, float],
    names: Sequence[str],
    factor: float,
) -> bool:
    """Whether these values would be right but for the factor, carried on as they were rounded.

    They were found with three figures in their own unit, and rounded once more in the other. What
    roundings leave undecided is less than half of them.
    """
    turned = dict(entries)
    for name in names:
        entry = entries[name]
        value = entry.value / factor
        radius = max(entry.radius / abs(factor), half_step(value, LEAST_FIGURES))
        turned[name] = replace(entry, value=value, radius=radius)
    found = correctness(problem, renumbered(bodies, turned), turned, true)
    right = [name for name in names if name in found.right]
    return found.wrong.isdisjoint(names) and MOST_OFF * len(right) >= len(names)


def _first_joints(problem: Problem, bodies: Bodies, written: set[str]) -> tuple[str, ...]:
    """Where it may have come in: joints with an outer force, else the one at which one begins."""
    joints = joint_order(problem).joints or tuple(joint.name for joint in problem.joints)
    amiss = [name for name in joints if not bodies[name].missing and bodies[name].fails]
    if amiss:
        members = [m for m in problem.members if m.name in written]
        may_begin = [n for n in amiss if sum(n in (m.start, m.end) for m in members) <= 2]
        return tuple(dict.fromkeys((*may_begin, *amiss)))[:MOST_PLACES]
    return (next((n for n in joints if written.intersection(bodies[n].part)), joints[0]),)
