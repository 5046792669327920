"""What is a term that stands for no force on the body: counted twice, or of another joint?"""

from __future__ import annotations

import math
from collections.abc import Sequence

from tutor.judge.costs import SEEN_TWICE, STRAY_SIZE, STRAY_TURNED, STRAY_WHOLE, WITHOUT_PLACE
from tutor.judge.elsewhere import loaded_elsewhere
from tutor.judge.explanation import Explanation, Slip
from tutor.judge.mistakes import KINDS
from tutor.judge.same import SAME, are_same
from tutor.judge.true_equation import TrueEquation, TrueTerm
from tutor.notation import Term
from tutor.statics.body import load_forces, member_force, reaction_forces

MOST_STRAY = 12


def number_without_place(
    term: Term, true: TrueEquation, numbers: Sequence[TrueTerm], scale: float
) -> Explanation:
    """What a typed number is that stands for none on the body."""
    for spot in numbers:
        if spot.true != 0.0 and are_same(term.value, scale * spot.true):
            return Explanation(SEEN_TWICE, (Slip("double", spot.name, spot),), scale)
    elsewhere = _load_elsewhere(term.value / scale, true)
    if elsewhere is not None:
        name, against = elsewhere
        cost = KINDS["stray-load"].cost + against
        return Explanation(cost, (Slip("stray-load", name, None),), scale)
    return Explanation(KINDS["extra"].cost + WITHOUT_PLACE, (Slip("extra", None, None),), scale)


def _load_elsewhere(value: float, true: TrueEquation) -> tuple[str, float] | None:
    """The load of another joint, or of the other part, that this is, and how much speaks against it; or None.

    What it gives in this sum where it acts comes first, then that turned round, then its whole size;
    a load of a neighbouring joint comes before one further away.
    """
    here = true.about.joint
    own = true.about.part or (() if here is None else (here,))
    if not own:
        return None
    total = true.equation.sum
    found: list[tuple[float, str]] = []
    for joint in loaded_elsewhere(true.problem, own)[:MOST_STRAY]:
        for force in load_forces(true.problem, joint):
            size = force.size or 0.0
            for part, whole in ((total.of(force) * size, 0.0), (size, STRAY_WHOLE)):
                off = abs(abs(value) - abs(part))
                if part != 0.0 and off <= SAME * abs(part):
                    against = whole + (STRAY_TURNED if value * part < 0 else 0.0)
                    found.append((against + off / abs(part), force.name))
    if not found:
        return None
    against, name = min(found, key=lambda one: one[0])
    return name, against


def unknown_from_elsewhere(name: str, value: float, true: TrueEquation) -> tuple[str, float]:
    """What an unknown that does not act on the body is called, and what it costs here.

    It costs more where it has not the coefficient that it has where it acts.
    """
    problem = true.problem
    reaction = name in problem.reaction
    cut_free = true.about.joint is not None or true.about.part
    code = "stray-reaction" if reaction and cut_free else "extra"
    if reaction:
        bodies = [reaction_forces(problem, problem.reaction[name].joint)]
    else:
        member = problem.member[name]
        bodies = [(member_force(problem, name, end),) for end in (member.start, member.end)]
    sign, cost = true.own.sign(name), KINDS[code].cost
    parts = [sign * true.equation.sum.of(f) for body in bodies for f in body if f.name == name]
    if any(math.isclose(value, part, rel_tol=0.01) for part in parts):
        return code, cost
    turned = any(math.isclose(abs(value), abs(part), rel_tol=0.01) for part in (*parts, 1.0))
    return code, cost + (STRAY_TURNED if turned else STRAY_SIZE)
