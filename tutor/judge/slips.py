"""What does one account of a wrong line consist of?"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from tutor.judge.compare import TINY
from tutor.judge.options import Option
from tutor.judge.truth import Spot
from tutor.model import Tolerance
from tutor.notation import Span


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
    tolerance: Tolerance,
) -> Option | None:
    """The cheapest wrong contribution that `value` is, at `scale`, to its own precision."""
    near: Option | None = None
    for option in choices:
        target = scale * option.value
        off = abs(value - target)
        if off <= tolerance.silent * abs(target) + min(radius, 0.01 * abs(target)) + TINY * abs(
            scale
        ):
            return option
        if near is None and off <= tolerance.remark * abs(target):
            near = option
    return near


def rounded_harder(value: float, radius: float, true: float) -> bool:
    """Whether a rounded number stands for the true one with too few figures."""
    return radius > 0.0 and value * true > 0 and abs(value - true) <= radius * (1 + 1e-9)
