"""Which terms of a line that no slip explains are right as they stand?"""

from __future__ import annotations

from tutor.judge.blocks import left_unpaired
from tutor.judge.fit import slack_of
from tutor.judge.same import are_same
from tutor.judge.true_equation import TrueEquation
from tutor.judge.typed import TypedEquation
from tutor.model import Tolerance

AS_WRITTEN = (1.0, -1.0)


def fitting(line: TypedEquation, true: TrueEquation, tolerance: Tolerance) -> tuple[str, ...]:
    """The forces whose terms fit together, the unknowns first; none where it is not sure.

    Terms fit at one scale of the whole line. It is not sure which do where another scale lets as
    many others fit, or where a single term fits at a scale of its own only.
    """
    ratios = [
        coefficient.value / true.unknowns[name].true
        for name, coefficient in line.unknowns.items()
        if name in true.unknowns and true.unknowns[name].true != 0.0
    ]
    found = {_fit_at(line, true, s, tolerance) for s in AS_WRITTEN}
    found |= {names for s in ratios if s and len(names := _fit_at(line, true, s, tolerance)) > 1}
    most = max(map(len, found))
    best = [names for names in found if len(names) == most]
    return best[0] if len(best) == 1 else ()


def _fit_at(
    line: TypedEquation, true: TrueEquation, scale: float, tolerance: Tolerance
) -> tuple[str, ...]:
    """The forces that fit at one scale, in the order of the body.

    A number fits where it stands for one force only, and no second time; of two loads called alike
    none is said to fit.
    """
    names = []
    for name, spot in true.unknowns.items():
        typed = line.unknowns.get(name)
        if typed is not None and spot.true != 0.0:
            off = abs(typed.value - scale * spot.true)
            if off <= slack_of(typed, spot, scale, tolerance, "remark"):
                names.append(name)
    numbers = true.numbers(line.names)
    over, left = left_unpaired(line.constants, numbers, scale, tolerance)
    for spot in numbers:
        others = [s for s in numbers if s is not spot]
        alike = any(s.name == spot.name or _same(abs(s.true), abs(spot.true)) for s in others)
        again = any(_same(abs(term.value), abs(scale * spot.true)) for term in over)
        open_still = any(s is spot for s in left)
        if spot.true != 0.0 and not open_still and not alike and not again:
            names.append(spot.name)
    return tuple(dict.fromkeys(names))


def _same(one: float, other: float) -> bool:
    return are_same(one, other)
