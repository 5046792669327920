"""Which joint, member or unknown is meant by a name as a person types it?"""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Mapping
from functools import lru_cache

from tutor.model import Member, Problem

LOOSE = re.compile(r"[\s_{}()]")


def joint_named(problem: Problem, text: str) -> str | None:
    """The joint of this name, in upper or lower case where only one fits."""
    return _only(text.strip(), {joint.name: joint.name for joint in problem.joints})


def member_named(problem: Problem, text: str) -> Member | None:
    """The member of this name, from either end: "AC", "CA", "A-C", "F_AC", "U1-L2", "u1 l2"."""
    name = _only(LOOSE.sub("", text), _member_spellings(problem))
    return None if name is None else problem.member[name]


def unknown_named(problem: Problem, text: str) -> str | None:
    """The member force or reaction of this name: "AC", "F_AC", "A_x", "Ax", "R_C"."""
    reactions = {LOOSE.sub("", name): name for name in problem.reaction}
    return _only(LOOSE.sub("", text), {**_member_spellings(problem), **reactions})


def names_like(problem: Problem, text: str) -> list[str]:
    """Every member, reaction and joint that this text could be the name of, in any case."""
    wanted = LOOSE.sub("", text).casefold()
    known = {
        **_member_spellings(problem),
        **{LOOSE.sub("", name): name for name in problem.reaction},
        **{joint.name: joint.name for joint in problem.joints},
    }
    return _distinct(name for spelled, name in known.items() if spelled.casefold() == wanted)


def spellings(problem: Problem) -> Iterable[str]:
    """Every way in which a member or a reaction may be called, as it is looked up."""
    yield from _member_spellings(problem)
    yield from (LOOSE.sub("", name) for name in problem.reaction)


def direction_of(problem: Problem, member: Member) -> float:
    """The inclination of a member in degrees from +x, from 0 up to 180, to four places."""
    here, there = problem.joint[member.start].at, problem.joint[member.end].at
    turn = math.degrees(math.atan2(there[1] - here[1], there[0] - here[0]))
    return round(turn % 180.0, 4) % 180.0


@lru_cache(maxsize=8)
def _spellings(pairs: tuple[tuple[str, str, str], ...]) -> Mapping[str, str]:
    found: dict[str, str] = {}
    for start, end, name in pairs:
        for one, other in ((start, end), (end, start)):
            for text in (f"{one}{other}", f"{one}-{other}"):
                for spelled in (text, *(letter + text for letter in "FSNT")):
                    found.setdefault(spelled, name)
    return found


def _member_spellings(problem: Problem) -> Mapping[str, str]:
    return _spellings(tuple((m.start, m.end, m.name) for m in problem.members))


def _only(text: str, known: Mapping[str, str]) -> str | None:
    """What `text` stands for exactly, else whatever it alone stands for in any case."""
    if text in known:
        return known[text]
    fitting = _distinct(
        name for spelled, name in known.items() if spelled.casefold() == text.casefold()
    )
    return fitting[0] if len(fitting) == 1 else None


def _distinct(names: Iterable[str]) -> list[str]:
    return list(dict.fromkeys(names))
