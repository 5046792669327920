"""What is a typed number that no rule makes: an arm, another load, another result, or a wrong size?"""

from __future__ import annotations

import math

from tutor.judge.costs import LOOSE, MISPLACED, OTHER_SIZE, SIZE_SHOWN
from tutor.judge.edits import PRECISELY, Edit, TypedNumber, other_factor_cost, turning_code
from tutor.judge.elsewhere import is_load_elsewhere
from tutor.judge.factors import Factors
from tutor.judge.mistakes import KINDS
from tutor.judge.same import are_same, opposed
from tutor.judge.scale import A_SLIP
from tutor.judge.true_equation import TrueEquation, TrueTerm
from tutor.model import Load

SAME_RESULT = 0.002


def other_number(number: TypedNumber, spot: TrueTerm, true: TrueEquation) -> Edit:
    """The most plausible account of a number that no rule makes at this force."""
    others = [_other_number(number, spot)]
    if (copied := _other_result(number, spot, true)) is not None:
        others.append(copied)
    if (elsewhere := _other_load(number, spot, true)) is not None:
        others.append(elsewhere)
    if (whole := _whole_load(number, spot)) is not None:
        others.append(whole)
    return min(others, key=lambda edit: edit.cost)


def is_meant(other: Edit, found: Edit, factors: Factors) -> bool:
    """Whether what no rule makes explains a number better than a rule; that nothing explains it never does.

    Another own result that stands in a product with the right factor does so at the same cost.
    """
    if other.codes == ("not-equilibrium",):
        return False
    as_typed = other.codes == ("carried",) and factors.count > 1
    return other.cost < found.cost or (as_typed and other.cost == found.cost)


def _other_result(number: TypedNumber, spot: TrueTerm, true: TrueEquation) -> Edit | None:
    """An own earlier value that is another force's, with the right factor; or None."""
    if spot.force.kind == "load":
        return None
    size = abs(number.scale * spot.per_unit)
    for name, carried in true.own.known.items():
        if name != spot.name and math.isclose(
            abs(number.value), size * abs(carried.value), rel_tol=SAME_RESULT
        ):
            factors, kind = number.factors, KINDS["carried"]
            own = factors.holds(spot.scale, number.scale)
            other = factors.holds(spot.per_unit, number.scale)
            doubt = MISPLACED if factors.count > 1 and own and not other else 0.0
            return Edit(number.value, ("carried",), kind.cost + doubt)
    return None


def _other_load(number: TypedNumber, spot: TrueTerm, true: TrueEquation) -> Edit | None:
    """A load of another joint that stands by itself where the one of this joint counts whole; or None."""
    joint, size = true.about.joint, abs(number.value)
    whole = spot.force.kind == "load" and abs(spot.per_unit * number.scale) == 1.0
    if joint is None or not whole or number.factors.count > 1:
        return None
    if opposed(number.unscaled, spot.true) or not is_load_elsewhere(true.problem, (joint,), size):
        return None
    return Edit(number.value, ("magnitude",), A_SLIP)


def _other_number(number: TypedNumber, spot: TrueTerm) -> Edit:
    """A number no rule makes: a wrong arm or factor where the size is written, else a wrong size."""
    factors, scale = number.factors, number.scale
    code = "magnitude" if spot.force.kind == "load" else "carried"
    cost = KINDS[code].cost + OTHER_SIZE
    size, factor = factors.holds(spot.scale, scale), factors.holds(spot.per_unit, scale)
    whole = number.plain and abs(spot.per_unit) == 1.0
    if size and not factor and spot.scale != 0.0 and factors.count > 1:
        code = "arm" if spot.is_moment else "not-equilibrium"
        per_unit = number.unscaled / spot.scale
        arm = KINDS["arm"].cost + SIZE_SHOWN
        cost = arm if spot.is_moment else other_factor_cost(per_unit, spot)
    elif (factors.count > 1 and factor) or (factors.is_one_number and whole):
        cost = KINDS[code].cost
    if opposed(number.unscaled, spot.true) and code != "not-equilibrium":
        turned = turning_code(spot)
        return Edit(number.value, (code, turned), cost + KINDS[turned].cost)
    return Edit(number.value, (code,), cost)


def _whole_load(number: TypedNumber, spot: TrueTerm) -> Edit | None:
    """The resultant of a load that is given by its two components, where one of them counts; or None."""
    load = spot.force.source
    if not isinstance(load, Load) or spot.part or min(map(abs, load.vector)) == 0.0:
        return None
    whole = math.hypot(*load.vector)
    right = spot.scale < whole and are_same(
        abs(number.value), abs(number.scale * spot.per_unit) * whole
    )
    if not right:
        return None
    off = abs(abs(number.value) - abs(number.scale * spot.per_unit) * whole)
    precise = off <= PRECISELY * whole * abs(number.scale * spot.per_unit) + number.radius
    cost = KINDS["whole-force"].cost + (0.0 if precise else LOOSE)
    if not opposed(number.unscaled, spot.true):
        return Edit(number.value, ("whole-force",), cost)
    turned = turning_code(spot)
    return Edit(number.value, ("whole-force", turned), cost + KINDS[turned].cost)
