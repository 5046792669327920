"""What does one account of a wrong line consist of?"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from tutor.judge.blocks import TINY
from tutor.judge.mistakes import KINDS
from tutor.judge.options import Option
from tutor.judge.term_text import TermText
from tutor.judge.truth import Spot
from tutor.model import Tolerance
from tutor.notation import Span

PRECISELY, LOOSE, MISPLACED = 3e-4, 0.3, 0.5
WIDEST_RADIUS = 0.01
UNEXPLAINED = KINDS["not-equilibrium"].cost
OTHER_SLOPE, OTHER_SLOPE_TURNED = 2.2, 0.4
STRAY_TURNED = 0.1
CALCULATED = frozenset({"angle-mode", "ratio"})


@dataclass(frozen=True)
class Slip:
    """One mistake at one force; `spot` is None where the force does not act on the body."""

    code: str
    force: str | None
    spot: Spot | None
    span: Span | None = None


@dataclass(frozen=True)
class Account:
    """Slips that together turn `scale` times the true line into the typed one."""

    cost: float
    slips: tuple[Slip, ...]
    scale: float

    @property
    def named(self) -> frozenset[tuple[str, str | None]]:
        return frozenset((slip.code, slip.force) for slip in self.slips)


def found_option(
    value: float,
    radius: float,
    scale: float,
    choices: Sequence[Option],
    spot: Spot,
    text: TermText,
    tolerance: Tolerance,
) -> Option | None:
    """The most plausible wrong contribution that `value` is at `scale`, or None.

    One that is `value` only when rounded harder than typed, or whose other factor is the one typed
    wrong, is less plausible; one that is off by more than `tolerance.silent` is the last resort.
    """
    best: Option | None = None
    far: Option | None = None
    widest = max(tolerance.remark, tolerance.silent + WIDEST_RADIUS)
    tiny = TINY * abs(scale)
    for option in choices:
        if best is not None and option.cost >= best.cost:
            break
        target = scale * option.value
        off, size = abs(value - target), abs(target)
        if off > widest * size + tiny or not text.may_show(
            option.codes[0], radius > 0.0, spot.is_moment
        ):
            continue
        precise = off <= PRECISELY * size + radius + tiny
        if not precise and option.codes[0] in CALCULATED:
            continue
        if off > tolerance.silent * size + min(radius, WIDEST_RADIUS * size) + tiny:
            if far is None and off <= tolerance.remark * size:
                far = replace(option, cost=option.cost + MISPLACED)
            continue
        cost = option.cost + (0.0 if precise else LOOSE)
        if text.speaks_against(option.codes[0], spot, scale):
            cost += MISPLACED
        if best is None or cost < best.cost:
            best = replace(option, cost=cost)
    return best or far


def rounded_harder(value: float, radius: float, true: float) -> bool:
    """Whether a rounded number stands for the true one with too few figures."""
    return radius > 0.0 and value * true > 0 and abs(value - true) <= radius * (1 + 1e-9)


def other_factor_cost(per_unit: float, spot: Spot) -> float:
    """What a factor costs that no rule makes: less where it could be a slanting force's component."""
    ux, uy = spot.unit_vector
    slanting = min(abs(ux), abs(uy)) > 1e-9 and not spot.is_moment
    if not slanting or abs(per_unit) > 1.0 + PRECISELY:
        return UNEXPLAINED
    return OTHER_SLOPE + (OTHER_SLOPE_TURNED if per_unit * spot.per_unit < 0 else 0.0)
