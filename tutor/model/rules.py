"""How is a problem to be worked: how exactly, with which hints, how many tries, after what?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from typing import Literal, get_args

from tutor.notation.elements.same import SAME

Hints = Literal["all", "no lines", "none"]
Mode = Literal["practice", "check"]
HINTS: tuple[Hints, ...] = get_args(Hints)
MODES: tuple[Mode, ...] = get_args(Mode)


@dataclass(frozen=True)
class Tolerance:
    """How far off a rounded coefficient may be, as fractions: `silent` unremarked, `remark` right."""

    silent: float = SAME
    remark: float = 0.02


@dataclass(frozen=True)
class Rules:
    """What the instructor of a set allows; the defaults are those of a problem on its own.

    `hints` on request: "all" levels, "no lines" (all but the line itself) or "none". `attempts` is
    how many tries one equation or value has, None without a limit. `mode` "check" says of a line
    only whether it is right. `tolerance` is that of the set's problems, where their files give none.
    `after` names for a problem, by its file's stem, those that come before it. `due` is told, not
    enforced. `id` is the name by which the set is known to whoever draws numbers from it.
    """

    hints: Hints = "all"
    attempts: int | None = None
    mode: Mode = "practice"
    tolerance: Tolerance | None = None
    after: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    due: date | None = None
    id: str = ""
