"""Which numbers and functions stand in a term as it was typed?"""

from __future__ import annotations

import math
import re
from collections.abc import Iterable
from dataclasses import dataclass

from tutor.judge.options import sort_of
from tutor.judge.truth import Spot
from tutor.notation import Span

NUMBER = r"\d+(?:[.,]\d+)?|[.,]\d+"
WRITTEN = re.compile(
    rf"(?:(sin|cos|tan|sqrt|√)[ (]*)?({NUMBER})(?:\s*/\s*({NUMBER}))?", re.IGNORECASE
)
FUNCTION = re.compile(r"sin|cos|tan|sqrt|√", re.IGNORECASE)
RADIANS = re.compile(r"rad\b", re.IGNORECASE)
OF = {
    "sin": lambda angle: math.sin(math.radians(angle)),
    "cos": lambda angle: math.cos(math.radians(angle)),
    "tan": lambda angle: math.tan(math.radians(angle)),
    "sqrt": math.sqrt,
    "√": math.sqrt,
}
SAME = 0.005
OF_NEITHER = frozenset({"sign", "turning", "minus", "sense", "missing", "extra", "double"})


@dataclass(frozen=True)
class TermText:
    """What is typed in one term: its numbers, fractions and values of functions; its functions."""

    numbers: tuple[float, ...]
    functions: frozenset[str]
    radians: bool

    @staticmethod
    def of(text: str, spans: Iterable[Span]) -> TermText:
        """What stands in these parts of `text`."""
        typed = " ".join(text[span.start : span.end] for span in spans)
        functions = frozenset(name.lower() for name in FUNCTION.findall(typed))
        return TermText(tuple(_numbers(typed)), functions, bool(RADIANS.search(typed)))

    def holds(self, number: float, scale: float = 1.0) -> bool:
        """Whether the size of a number, or of `scale` times it, stands there."""
        return any(
            math.isclose(n, abs(wanted), rel_tol=SAME)
            for wanted in (number, scale * number)
            for n in self.numbers
        )

    def speaks_against(self, code: str, spot: Spot, scale: float) -> bool:
        """Whether the other of size and factor is the one that is typed wrong.

        A mistake at the factor leaves the size as it was, and one at the size the factor. In a
        moment a unit may be the force's or the arm's, and a bare size has no arm.
        """
        if code in OF_NEITHER or not spot.numeric:
            return False
        if code == "needless-component":
            return len(self.numbers) > 1 and min(self.numbers) >= 1.0
        if len(self.numbers) < 2:
            return spot.is_moment and code != "no-arm" and self.holds(spot.scale, scale)
        if code == "unit" and spot.is_moment:
            return False
        factor = self.holds(spot.per_unit, scale)
        size = self.holds(spot.scale, scale)
        return size and not factor if sort_of(code) == "size" else factor and not size

    def may_show(self, code: str, rounded: bool, in_moment: bool) -> bool:
        """Whether a mistake can look like this.

        A calculator's answer to the wrong kind of angle is a rounded number or says "rad"; a tangent
        is not written as a sine or a cosine, and only they are taken of a ratio; a bare distance
        beside a force in a moment holds no component.
        """
        if code == "angle-mode":
            return self.radians or (rounded and not self.functions)
        if code == "component" and in_moment:
            return len(self.numbers) != 1 or bool(self.functions)
        if code == "ratio":
            return bool(self.functions & {"sin", "cos"})
        return code != "tangent" or not self.functions & {"sin", "cos"}


def _numbers(typed: str) -> Iterable[float]:
    for function, above, below in WRITTEN.findall(typed):
        first, *rest = (float(n.replace(",", ".")) for n in (above, below) if n)
        yield OF[function.lower()](first) if function else first
        yield from rest
        if rest and rest[0] != 0.0 and not function:
            yield first / rest[0]
