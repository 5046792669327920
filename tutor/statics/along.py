"""How is a load that lies on members said in words, and what the joints take of it?"""

from __future__ import annotations

from tutor.model import Load, Problem, Spread
from tutor.model.parts import PushDirection
from tutor.text import listed


def intensity_words(problem: Problem, spread: Spread, way: PushDirection, size: float) -> str:
    """How much of it acts one way: "2 kN/m down", "2 kN/m down by the span", "12 kN down in all"."""
    if spread.total:
        return f"{size:.6g} {problem.force} {way} in all{measured(spread, way)}"
    return f"{size:.6g} {problem.force}/{problem.length} {way}{measured(spread, way)}"


def measured(spread: Spread, way: PushDirection) -> str:
    """What a load given across its way is given by; "" for one along the member."""
    if spread.per == "length":
        return ""
    return " by the span" if way in ("up", "down") else " by the height"


def spread_words(problem: Problem, spread: Spread) -> str:
    """A spread load with the members it lies on: "2 kN/m down, spread over AB and BC"."""
    sizes = (intensity_words(problem, spread, way, s.value) for way, s in spread.pushes)
    on = [name for name in spread.on if name in problem.member]
    return f"{' and '.join(sizes)}, spread over {listed(on, len(on))}"


def push_words(load: Load) -> str:
    """The pushes of a load without their unit: "6 down", "6 down 2 right"."""
    return " ".join(f"{size.value:.5g} {way}" for way, size in load.pushes)
