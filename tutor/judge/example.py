"""Which small trusses do the examples of the catalogue speak of, and what is one example?

The mast is the triangle of sides thirteen, fourteen and fifteen, so that every slope and every result
is tidy; the gangway has a short link for a support, so that a reaction is inclined.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from tutor.judge.about import Asked
from tutor.model import Joint, Load, Member, Problem, Support
from tutor.notation import Exact

TrussName = Literal["mast", "gangway"]


@dataclass(frozen=True)
class Example:
    """A line or value that shows a mistake: what it should be, and what was typed.

    `senses` and `known` are the student's own, as `judge` takes them; `truss` is a key of `TRUSSES`.
    """

    about: Asked
    text: str
    senses: Mapping[str, str] = field(default_factory=dict)
    known: Mapping[str, str] = field(default_factory=dict)
    truss: TrussName = "mast"


def _joint(name: str, x: int, y: int) -> Joint:
    return Joint(name, Exact.of(x), Exact.of(y))


MAST = Problem(
    title="Signal mast at the harbour mouth",
    force="kN",
    length="m",
    joints=(_joint("A", 0, 0), _joint("B", 9, 0), _joint("C", 14, 0), _joint("D", 9, 12)),
    members=tuple(Member(name, *name) for name in ("AB", "BC", "AD", "BD", "CD")),
    supports=(Support("A", "pin"), Support("C", "roller")),
    loads=(
        Load("D", (("down", Exact.of(12)), ("right", Exact.of(5)))),
        Load("B", (("down", Exact.of(6)),)),
        Load("B", (("down", Exact.of(8)),)),
    ),
)

GANGWAY = Problem(
    title="Gangway held by a link",
    force="kN",
    length="m",
    joints=(_joint("A", 0, 0), _joint("B", 4, 0), _joint("C", 4, 3)),
    members=tuple(Member(name, *name) for name in ("AB", "BC", "AC")),
    supports=(
        Support("A", "pin"),
        Support("B", "link", anchor=(Exact.of(7), Exact.of(-4))),
    ),
    loads=(Load("C", (("down", Exact.of(12)),)),),
)

TRUSSES: Mapping[TrussName, Problem] = {"mast": MAST, "gangway": GANGWAY}
"""The trusses of the examples, by name."""
