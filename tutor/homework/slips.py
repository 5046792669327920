"""What does the review need of the judge besides its verdicts: slips, what they change, their words?

The catalogue of mistakes reaches the homework through this module alone. `Slips` are plain numbers:
what each slip makes of each force in one line that somebody could have written.
"""

from __future__ import annotations

from dataclasses import dataclass

from tutor.judge import Equation, Mistake, Value
from tutor.judge.about import equation_of
from tutor.judge.edits import turning_code
from tutor.judge.kind import Case
from tutor.judge.known_values import NOTHING_OWN
from tutor.judge.mistakes import KINDS
from tutor.judge.mistakes.unit import FACTORS
from tutor.judge.scale import A_SLIP, in_numbers
from tutor.judge.true_equation import TrueEquation, TrueTerm
from tutor.model import Problem

__all__ = ["FACTORS", "Slips", "TrueTerm", "Wrong", "cost_of", "mistake_of", "stands_in"]

Wrong = tuple[str, float, float]
"""The code of a slip at one force, what the force then contributes, and the cost."""


@dataclass(frozen=True)
class Slips:
    """A true line with the slips at each of its forces; nothing here depends on the numbers.

    Contributions of an unknown are per unit of the force, those of a load are whole.
    """

    about: Equation
    unknowns: dict[str, tuple[TrueTerm, tuple[Wrong, ...]]]
    loads: tuple[tuple[TrueTerm, tuple[Wrong, ...]], ...]
    is_moment: bool

    @classmethod
    def of(cls, problem: Problem, about: Equation) -> Slips:
        true = TrueEquation(problem, about, NOTHING_OWN)
        unknowns = {name: (spot, _wrong(spot)) for name, spot in true.unknowns.items()}
        loads = tuple((spot, _wrong(spot)) for spot in true.loads)
        return cls(about, unknowns, loads, true.is_moment)


def _wrong(spot: TrueTerm) -> tuple[Wrong, ...]:
    """Each slip at one force, alone or with a wrong sign besides."""
    turned, scale = cost_of(turning_code(spot)), spot.scale
    found: list[Wrong] = []
    for kind in KINDS.values():
        if kind.variants is None:
            continue
        code, cost = kind.code, cost_of(kind.code)
        for per_unit in kind.variants(spot):
            value = per_unit * scale
            found.append((code, value, cost))
            if value not in (0.0, -spot.true):
                found.append((code, -value, cost + turned))
    return tuple(found)


def cost_of(code: str) -> float:
    """What a mistake of the catalogue costs against others; lower is more plausible."""
    return A_SLIP + in_numbers(KINDS[code].rare)


def stands_in(problem: Problem, about: Equation, name: str) -> bool:
    """Whether this unknown has a part in that equation."""
    return name in equation_of(problem, about).linear


def acting(problem: Problem, about: Equation) -> int:
    """How many forces have a part in an equation."""
    true = TrueEquation(problem, about, NOTHING_OWN)
    return sum(1 for spot in (*true.unknowns.values(), *true.loads) if spot.true != 0.0)


def mistake_of(
    problem: Problem,
    about: Equation | Value,
    code: str,
    force: str | None,
    spot: TrueTerm | None = None,
    work: str = "",
) -> Mistake:
    """One mistake of the catalogue, made at one force of one line or in one value; `work` is what was made
    wrong, where that is no typed line."""
    count = 0 if isinstance(about, Value) else acting(problem, about)
    kind = KINDS[code]
    case = Case(problem, about, force, spot, count, work=work)
    return Mistake(code, force, kind.look(case).text, kind.reason(case), kind.place(case).text)
