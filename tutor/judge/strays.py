"""What is a term that stands for no force on the body: counted twice, or of another joint?"""

from __future__ import annotations

from collections.abc import Sequence

from tutor.judge.costs import SEEN_TWICE, TURNED_ELSEWHERE, WITHOUT_PLACE
from tutor.judge.elsewhere import loaded_elsewhere
from tutor.judge.explanation import Explanation, Slip
from tutor.judge.factors import Factors
from tutor.judge.mistakes import KINDS
from tutor.judge.same import SAME, are_same, opposed
from tutor.judge.true_equation import TrueEquation, TrueTerm
from tutor.notation import Term
from tutor.statics.body import load_forces, reaction_forces

MOST_STRAY = 12


def number_without_place(
    term: Term, factors: Factors, true: TrueEquation, numbers: Sequence[TrueTerm], scale: float
) -> Explanation:
    """What a typed number is that stands for none on the body; `factors` are those typed in it.

    A load of another joint, typed as it is given, comes before a force on the body of the same size.
    """
    again = next((s for s in numbers if _is_again(term, factors, s, numbers, scale)), None)
    load = _load_elsewhere(term.value / scale, true)
    shown = again is not None and factors.holds(again.scale, scale)
    if again is not None and (load is None or shown):
        cost = SEEN_TWICE + (2 * KINDS["stray-load"].rare if load and factors.count > 1 else 0.0)
        return Explanation(cost, (Slip("double", again.name, again),), scale)
    if load is not None:
        name, turned = load
        cost = KINDS["stray-load"].cost + (TURNED_ELSEWHERE if turned else 0.0)
        return Explanation(cost, (Slip("stray-load", name, None),), scale)
    reaction = _reaction_elsewhere(term.value / scale, true)
    if reaction is not None:
        slip = Slip("stray-reaction", reaction, None)
        return Explanation(KINDS["stray-reaction"].cost, (slip,), scale)
    return Explanation(KINDS["extra"].cost + WITHOUT_PLACE, (Slip("extra", None, None),), scale)


def _is_again(
    term: Term, factors: Factors, spot: TrueTerm, numbers: Sequence[TrueTerm], scale: float
) -> bool:
    """Whether a typed number comes to what a force adds, and shows the size of no other."""
    again = spot.true != 0.0 and are_same(term.value, scale * spot.true)
    return again and not _is_of_another(factors, spot, numbers, scale)


def _is_of_another(
    factors: Factors, spot: TrueTerm, numbers: Sequence[TrueTerm], scale: float
) -> bool:
    """Whether a product shows the size of another force, and neither size nor factor of this one."""
    if factors.count < 2 or factors.holds(spot.scale, scale) or factors.holds(spot.per_unit, scale):
        return False
    return any(factors.holds(other.scale) for other in numbers)


def _load_elsewhere(value: float, true: TrueEquation) -> tuple[str, bool] | None:
    """The load of another joint, or of the other part, that this is, and whether it is turned; or None.

    What it gives in this sum where it acts comes first, then that turned round, then its whole size;
    a load of a neighbouring joint comes before one further away.
    """
    here = true.about.joint
    own = true.about.part or (() if here is None else (here,))
    if not own:
        return None
    total = true.equation.sum
    found: list[tuple[bool, bool, float, str]] = []
    for joint in loaded_elsewhere(true.problem, own)[:MOST_STRAY]:
        for force in load_forces(true.problem, joint):
            size = force.size or 0.0
            for part, whole in ((total.of(force) * size, False), (size, True)):
                off = abs(abs(value) - abs(part))
                if part != 0.0 and off <= SAME * abs(part):
                    found.append((whole, opposed(value, part), off / abs(part), force.name))
    if not found:
        return None
    _, turned, _, name = min(found, key=lambda one: one[:3])
    return name, turned


def _reaction_elsewhere(value: float, true: TrueEquation) -> str | None:
    """The student's own reaction at another joint, or on the other part, whose size this is; or None."""
    for name, own in true.own.known.items():
        away = name in true.problem.reaction and name not in true.unknowns
        if away and own.value and are_same(abs(value), abs(own.value)):
            return name
    return None


def unknown_from_elsewhere(name: str, value: float, true: TrueEquation) -> tuple[str, float]:
    """What an unknown is called that does not act on the body, and what it costs that it stands there."""
    problem = true.problem
    cut_free = true.about.joint is not None or true.about.part
    if name not in problem.reaction or not cut_free:
        return "extra", KINDS["extra"].cost
    forces = reaction_forces(problem, problem.reaction[name].joint)
    there = [true.equation.sum.of(force) for force in forces if force.name == name]
    turned = any(opposed(true.own.sign(name) * value, part) for part in there)
    return "stray-reaction", KINDS["stray-reaction"].cost + (TURNED_ELSEWHERE if turned else 0.0)
