"""How far is a line off as a whole, when the forces are put in?"""

from __future__ import annotations

from collections.abc import Mapping

from tutor.judge.true_equation import TrueEquation
from tutor.judge.typed import TypedEquation


def off_by(
    line: TypedEquation, true: TrueEquation, scale: float, values: Mapping[str, float]
) -> float:
    """What is left of the line at the solution, as a share of its own largest term.

    The student's own values are put in where there are any, else the true ones (`values`, in the
    positive sense); what own values leave of the true line is not the line's fault.
    """
    known, opposed, spots = true.own.known, true.own.opposed, true.unknowns
    left = line.total - scale * true.total(line.names)
    largest = max([abs(term.value) for term in line.constants], default=0.0)
    for name, coefficient in line.unknowns.items():
        if name in known:
            own = known[name].value
        else:
            own = -values[name] if name in opposed else values[name]
        left += (coefficient.value - scale * spots[name].true) * own
        largest = max(largest, abs(coefficient.value * own))
    return abs(left) / largest if largest else 0.0
