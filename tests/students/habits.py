"""Who are the students? How often each slips and in which way, and how each takes a hint."""

from __future__ import annotations

from dataclasses import dataclass

SIGNS = frozenset({"sign", "sense", "turning", "minus", "pull-push"})
GEOMETRY = frozenset(
    {
        "component",
        "whole-force",
        "slope",
        "angle-mode",
        "arm",
        "no-arm",
        "arm-unit",
        "inclined-support",
    }
)
FORGOTTEN = frozenset({"missing", "lost-load", "extra", "stray-load", "stray-reaction", "double"})
ANY = SIGNS | GEOMETRY | FORGOTTEN | {"magnitude", "unit", "carried"}


@dataclass(frozen=True)
class Habit:
    """One kind of student.

    `rate` is the share of lines, and `value_rate` of values, that are first typed wrong, by a slip
    among `codes` and `value_slips`; `figures` how many are kept. `sees_at` is the hint (1 to 4) at
    which the student mends the line: at 1 and 2 by going through the whole line again, at 3 by doing
    what the hint says and no more, at 4 by copying. `repeats` is how often a refused line is typed
    again as it is before a hint is asked for.
    """

    name: str
    rate: float
    codes: frozenset[str]
    value_rate: float
    value_slips: tuple[str, ...]
    sees_at: int
    repeats: int = 0
    figures: int = 4


HABITS = (
    Habit("careful", 0.1, ANY, 0.05, ("arithmetic",), sees_at=2),
    Habit("hasty", 0.6, SIGNS, 0.5, ("sign", "letter"), sees_at=3),
    Habit("geometry-blind", 0.8, GEOMETRY, 0.3, ("component", "moment"), sees_at=3),
    Habit("forgetful", 0.7, FORGOTTEN, 0.2, ("arithmetic",), sees_at=3),
    Habit("stubborn", 0.5, ANY, 0.4, ("sign", "arithmetic", "unit"), sees_at=3, repeats=3),
    Habit("guesser", 1.0, ANY, 1.0, ("arithmetic", "sign", "letter"), sees_at=4),
    Habit("rounder", 0.2, ANY, 0.1, ("arithmetic",), sees_at=3, figures=2),
)
