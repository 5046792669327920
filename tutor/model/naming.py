"""Which unknown, member, reaction or joint of a problem is meant by a name as a person types it?

Everything that takes a name from outside comes here: every spelling that the notation reads is one.
"""

from __future__ import annotations

import difflib
from collections.abc import Collection, Iterable, Sequence
from fractions import Fraction
from typing import TYPE_CHECKING, NoReturn

from tutor.model.direction import Direction
from tutor.notation import Names, Slant, read_name, spelling
from tutor.notation.elements.characters import plain
from tutor.text import as_text, shown

if TYPE_CHECKING:
    from tutor.model.problem import Problem

LONGEST = 100
MOST_LISTED = 12


class UnknownNameError(ValueError, KeyError):
    """A name that the problem does not have, or that may stand for several: says which are nearest.

    A KeyError too, which is what looking up a force by a wrong name has always raised.
    """

    def __str__(self) -> str:
        return str(self.args[0])


def names_of(problem: Problem) -> Names:
    """The table of names for reading what is typed about `problem`."""
    return Names.of(
        ((m.name, m.start, m.end) for m in problem.members),
        (r.name for r in problem.reactions),
        (j.name for j in problem.joints),
        problem.force,
        problem.length,
        slants_of(problem),
        ((j.name, *j.at) for j in problem.joints),
    )


def slants_of(problem: Problem) -> tuple[Slant, ...]:
    """The directions of all unknowns, for reading components."""
    ways = [(r.name, r.direction, r.pull) for r in problem.reactions]
    for member in problem.members:
        ways.append((member.name, problem.pulls[member.name, member.start], False))
    level = [reaction.joint for reaction in problem.reactions if reaction.direction.x]
    pushed = any(abs(load.vector[0]) > 1e-12 for load in problem.loads)
    held = () if pushed or len(level) > 1 else level
    upright = {r.name for r in problem.reactions if r.axis == "y" and r.joint in held}
    return tuple(
        Slant(name, way.x, way.y, *_squares(way), pull=pull, alone=name in upright)
        for name, way, pull in ways
    )


_SQUARED_COSINES = {0: Fraction(1), 30: Fraction(3, 4), 45: Fraction(1, 2)}
_SQUARED_COSINES |= {90 - angle: 1 - square for angle, square in _SQUARED_COSINES.items()}


def _squares(way: Direction) -> tuple[Fraction | None, Fraction | None]:
    """The squares of the direction cosines where they are seen to be rational."""
    if way.vector is not None:
        dx, dy = (part.fraction for part in way.vector)
        if dx is None or dy is None:
            return None, None
        square = dx * dx + dy * dy
        return dx * dx / square, dy * dy / square
    turn = None if way.angle is None else way.angle.fraction
    square_x = (
        None if turn is None else _SQUARED_COSINES.get(int(min(turn % 180, 180 - turn % 180)))
    )
    if turn is None or turn.denominator != 1 or square_x is None:
        return None, None
    return square_x, 1 - square_x


def unknown_meant(problem: Problem, text: str) -> str | None:
    """The one unknown that `text` may be a spelling of: "A_x", "Ax", "R_C", "BA", "F_{AB}"."""
    if text in problem.member or text in problem.reaction:
        return text
    meant = _meant(problem, text)
    return meant[0] if len(meant) == 1 else read_name(text, problem.names)


def _meant(problem: Problem, text: str) -> tuple[str, ...]:
    """The unknowns that `text` may mean as one word."""
    word = plain(text[:LONGEST]).strip()
    return problem.names.meant(word) if word[:1].isalnum() else ()


def member_meant(problem: Problem, text: str) -> str | None:
    """The one member that `text` may be a spelling of, from either end."""
    return _among(problem.member, unknown_meant(problem, text))


def reaction_meant(problem: Problem, text: str) -> str | None:
    """The one reaction that `text` may be a spelling of."""
    return _among(problem.reaction, unknown_meant(problem, text))


def joint_meant(problem: Problem, text: str) -> str | None:
    """The joint called `text`, in upper or lower case where only one fits."""
    return problem.names.joint(plain(text[:LONGEST]))


def _among(names: Collection[str], name: str | None) -> str | None:
    return name if name is not None and name in names else None


def unknown_called(problem: Problem, text: object) -> str:
    """The one name of an unknown, as `unknown_meant`. UnknownNameError where there is none of that name."""
    found = unknown_meant(problem, text) if isinstance(text, str) else None
    return found or _refuse(problem, text, "unknown", "there are", problem.unknowns)


def member_called(problem: Problem, *text: object) -> str:
    """The one name of a member by any spelling, or by its two joints. UnknownNameError else."""
    found = None
    if len(text) == 1 and isinstance(text[0], str):
        found = member_meant(problem, text[0])
    elif len(text) == 2:
        one, other = (joint_meant(problem, t) if isinstance(t, str) else None for t in text)
        member = problem.between(one, other) if one and other else None
        found = member.name if member else None
    said = text[0] if len(text) == 1 else "".join(map(str, text))
    return found or _refuse(problem, said, "member", "the members are", list(problem.member))


def reaction_called(problem: Problem, text: object) -> str:
    """The one name of a reaction, as `reaction_meant`. UnknownNameError where there is none."""
    found = reaction_meant(problem, text) if isinstance(text, str) else None
    return found or _refuse(problem, text, "reaction", "the reactions are", list(problem.reaction))


def joint_called(problem: Problem, text: object) -> str:
    """The one name of a joint, as `joint_meant`. UnknownNameError where there is none of that name."""
    found = joint_meant(problem, text) if isinstance(text, str) else None
    return found or _refuse(problem, text, "joint", "the joints are", list(problem.joint))


def _refuse(problem: Problem, text: object, what: str, has: str, names: Sequence[str]) -> NoReturn:
    said = shown(as_text(text))
    several = [n for n in (_meant(problem, text) if isinstance(text, str) else ()) if n in names]
    if len(several) > 1:
        ways = " or ".join(map(spelling, several))
        raise UnknownNameError(f"{said} may be {' or '.join(several)} here; write {ways}")
    there = ", ".join(names[:MOST_LISTED]) + (", …" if len(names) > MOST_LISTED else "")
    near = nearest_names(as_text(text), names)
    asked = f"; did you mean {' or '.join(near)}?" if near else ""
    raise UnknownNameError(f"{said} is no {what} here; {has} {there or 'none'}{asked}")


def nearest_names(text: str, names: Iterable[str]) -> list[str]:
    """Up to two of the names whose spelling is closest to `text`, the closest first."""
    known = {spelling(name): name for name in names} | {name: name for name in names}
    known |= {name.casefold(): full for name, full in known.items()}
    close = difflib.get_close_matches(text[:LONGEST].casefold(), known, n=4, cutoff=0.4)
    return list(dict.fromkeys(known[match] for match in close))[:2]
