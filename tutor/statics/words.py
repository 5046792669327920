"""How is a motion said in plain words?"""

from __future__ import annotations

import math
from collections.abc import Mapping

from tutor.text import listed

Pair = tuple[float, float]
NEARLY_NOTHING = 1e-9
UNIT_WORDS: Mapping[str, str] = {
    "N": "newtons",
    "kN": "kilonewtons",
    "MN": "meganewtons",
    "lb": "pounds",
    "kip": "kips",
    "mm": "millimetres",
    "cm": "centimetres",
    "m": "metres",
    "in": "inches",
    "ft": "feet",
}


def unit_in_words(unit: str) -> str:
    """A unit without a number, as it reads in a sentence and is said aloud: "metres" for m."""
    return UNIT_WORDS.get(unit, unit)


def heading(dx: float, dy: float) -> str:
    """The direction of (dx, dy) in words: "right", "up", "left and down"."""
    size = math.hypot(dx, dy)
    parts = []
    if abs(dx) > 0.05 * size:
        parts.append("right" if dx > 0 else "left")
    if abs(dy) > 0.05 * size:
        parts.append("up" if dy > 0 else "down")
    return " and ".join(parts)


def motion_of(places: Mapping[str, Pair], steps: Mapping[str, Pair]) -> str:
    """One sentence on a small motion of the joints at `places`, one step a joint."""
    return as_one_body(places, steps) or _of_some(steps)


def _of_some(steps: Mapping[str, Pair]) -> str:
    moving = [name for name, step in steps.items() if step != (0.0, 0.0)]
    start = "to begin with, with no member stretched"
    if len(moving) == 1:
        return f"Joint {moving[0]} can move {heading(*steps[moving[0]])}, {start}."
    ways = ", ".join(f"{name} {heading(*steps[name])}" for name in moving)
    aside = f" ({ways})" if len(moving) < 4 else ""
    return f"Joints {listed(moving)} can move together{aside}, {start}."


def as_one_body(places: Mapping[str, Pair], steps: Mapping[str, Pair]) -> str:
    """The sentence for a motion of the whole truss as one rigid body, "" for any other."""
    names = list(places)
    base = names[0]
    far = max(names, key=lambda name: math.dist(places[name], places[base]))
    rx, ry = places[far][0] - places[base][0], places[far][1] - places[base][1]
    span = rx * rx + ry * ry
    if span == 0.0:
        return ""
    (bx, by), (fx, fy) = steps[base], steps[far]
    turn = (rx * (fy - by) - ry * (fx - bx)) / span
    for name in names:
        x, y = places[name][0] - places[base][0], places[name][1] - places[base][1]
        if math.hypot(steps[name][0] - bx + turn * y, steps[name][1] - by - turn * x) > 1e-6:
            return ""
    if abs(turn) * math.sqrt(span) < 1e-6:
        return f"The whole truss can slide {heading(bx, by)}."
    still = [name for name in names if math.hypot(*steps[name]) < 1e-9]
    if still:
        return f"The whole truss can turn about joint {still[0]}."
    centre = places[base][0] - by / turn, places[base][1] + bx / turn
    x, y = (0.0 if abs(c) < NEARLY_NOTHING * math.sqrt(span) else c for c in centre)
    return f"The whole truss can turn about the point ({x:.4g}, {y:.4g})."
