"""How else may an unknown be written on paper: V_A, R_A at a roller, P_AB, AE_y for a component?

Words are squeezed (without marks such as _ { } and commas) and taken apart: what stands before and
behind the name of a joint or of two says whether the force or a component of it is meant. `names`
looks here only where a word is none of an unknown's own spellings, so nothing here can take a
spelling away from another.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from fractions import Fraction
from itertools import product
from typing import NamedTuple

from tutor.notation.elements.tree import Axis, Share

MEMBER_LETTERS = "FSNTP"
_AXIS_LETTERS: Mapping[Axis, str] = {"x": "xXhH", "y": "yYvV"}
_FIRST_LETTERS: Mapping[Axis, str] = {"x": "HX", "y": "VY"}
_MARKS = str.maketrans("", "", "_{}()[],. -")
_NUMBERED = re.compile(r"([^\W\d]+)(\d+)")


class Slant(NamedTuple):
    """The direction of an unknown force: its cosines with x and y, and their squares where rational.

    For a member from its start to its end, for a reaction in its positive sense. `pull` says that
    the reaction is that of a link, `alone` that the other one at its joint cannot act, so that R_A
    can mean no other.
    """

    name: str
    x: float
    y: float
    x_square: Fraction | None = None
    y_square: Fraction | None = None
    pull: bool = False
    alone: bool = False

    def share(self, axis: Axis) -> Share:
        """The component along an axis, drawn along the force's own arrow."""
        value = self.x if axis == "x" else self.y
        square = self.x_square if axis == "x" else self.y_square
        return Share(axis, abs(value), square, value < 0)


class Meaning(NamedTuple):
    """What a spelling stands for: an unknown, or a component of it."""

    name: str
    share: Share | None = None


def squeezed(word: str) -> str:
    """`word` without the marks that only say what stands below the line."""
    return word.translate(_MARKS)


def structured(word: str) -> str | None:
    """`word` squeezed but for the mark behind a first letter, None where it has none: "R_Cx"."""
    return f"{word[0]}_{squeezed(word[2:])}" if word[1:2] == "_" else None


class Frames(NamedTuple):
    """What may stand before and behind a name, in the letter case written and in any."""

    exact: frozenset[tuple[str, str]]
    folded: frozenset[tuple[str, str]]


def _frames(pairs: Iterable[tuple[str, str]]) -> Frames:
    exact = frozenset(pairs)
    return Frames(
        exact, frozenset((before.casefold(), behind.casefold()) for before, behind in exact)
    )


def _lettered(letters: str) -> Frames:
    """A letter and what stands below the line behind it, and both run together."""
    return _frames((letter + mark, "") for letter, mark in product(letters, ("_", "")))


def _along(letters: str, axis: Axis) -> Frames:
    """A component along an axis: its letter behind the name or before it, after a letter or not."""
    starts = [letter + mark for letter, mark in product(letters, ("_", ""))]
    return _frames(
        (
            *(("", along) for along in _AXIS_LETTERS[axis]),
            *((start, along) for start, along in product(starts, _AXIS_LETTERS[axis])),
            *((start + along, "") for start, along in product(starts, _AXIS_LETTERS[axis])),
            *((letter + mark, "") for letter, mark in product(_FIRST_LETTERS[axis], ("_", ""))),
        )
    )


_ALONE = _frames([("", "")])
_FORCE = _lettered(MEMBER_LETTERS)
_OF_MEMBER: Mapping[Axis, Frames] = {axis: _along(MEMBER_LETTERS, axis) for axis in _AXIS_LETTERS}
_OF_REACTION: Mapping[Axis, Frames] = {axis: _along("RF", axis) for axis in _AXIS_LETTERS}
_BEHIND: Mapping[Axis, Frames] = {
    axis: _frames(("", letter) for letter in letters) for axis, letters in _AXIS_LETTERS.items()
}
"""The letter of an axis behind a name of one letter: R_v."""
_AT_SUPPORT, _AT_LINK = _lettered("RN"), _lettered("RNST")
_LONGEST_BEFORE, _LONGEST_BEHIND = 3, 1

_Read = tuple[str, Frames, Meaning]


class FurtherSpellings:
    """The further spellings of one truss, by the name that stands in the middle of each."""

    def __init__(
        self,
        members: tuple[tuple[str, str, str], ...],
        reactions: tuple[str, ...],
        joints: tuple[str, ...],
        slants: Mapping[str, Slant],
    ) -> None:
        self._exact: dict[str, list[tuple[Frames, Meaning]]] = {}
        self._folded: dict[str, list[tuple[Frames, Meaning]]] = {}
        for core, frames, meaning in (
            *_members(members, joints, slants),
            *_reactions(reactions, joints, slants),
        ):
            self._exact.setdefault(core, []).append((frames, meaning))
            self._folded.setdefault(core.casefold(), []).append((frames, meaning))

    def exactly(self, word: str) -> set[Meaning]:
        """What a squeezed word may mean, letter case included."""
        return {
            meaning
            for before, core, behind in _taken_apart(word)
            for frames, meaning in self._exact.get(core, ())
            if (before, behind) in frames.exact
        }

    def in_any_case(self, word: str) -> set[Meaning]:
        """What a squeezed word may mean in any letter case."""
        return {
            meaning
            for before, core, behind in _taken_apart(word.casefold())
            for frames, meaning in self._folded.get(core, ())
            if (before, behind) in frames.folded
        }


def _taken_apart(word: str) -> Iterator[tuple[str, str, str]]:
    """Every way to see a name in `word` with something short before and behind it."""
    for behind in range(min(_LONGEST_BEHIND, len(word)) + 1):
        rest, last = word[: len(word) - behind], word[len(word) - behind :]
        for before in range(min(_LONGEST_BEFORE, len(rest)) + 1):
            yield rest[:before], rest[before:], last


def _members(
    members: tuple[tuple[str, str, str], ...],
    joints: tuple[str, ...],
    slants: Mapping[str, Slant],
) -> Iterator[_Read]:
    figures = _figures(joints)
    for name, start, end in members:
        one, other = squeezed(start), squeezed(end)
        for core in (one + other, other + one):
            yield core, _ALONE, Meaning(name)
            yield core, _FORCE, Meaning(name)
            for axis, share in _shares(slants.get(name)):
                yield core, _OF_MEMBER[axis], Meaning(name, share)
        if figures:
            for core in (figures[start] + figures[end], figures[end] + figures[start]):
                yield core, _FORCE, Meaning(name)


def _figures(joints: tuple[str, ...]) -> dict[str, str]:
    """The figures of joints that are all called by one letter and a figure, else nothing."""
    found = [_NUMBERED.fullmatch(joint) for joint in joints]
    if not all(found) or len({match[1] for match in found if match}) != 1:
        return {}
    return {joint: match[2] for joint, match in zip(joints, found, strict=True) if match}


def _shares(slant: Slant | None) -> Iterator[tuple[Axis, Share]]:
    """The components of a force that are not zero."""
    if slant is None:
        return
    axes: tuple[Axis, Axis] = ("x", "y")
    for axis in axes:
        share = slant.share(axis)
        if share.value > 1e-12:
            yield axis, share


def _reactions(
    reactions: tuple[str, ...], joints: tuple[str, ...], slants: Mapping[str, Slant]
) -> Iterator[_Read]:
    numbered = _figures_alone(joints)
    at = [(_joint(name), name) for name in reactions]
    links = [name for name in reactions if name in slants and slants[name].pull]
    inclined = [name for name in reactions if not name.endswith(("_x", "_y"))]
    for letter, called in (("T", links), ("R", inclined)):
        if len(called) == 1:
            yield letter, _ALONE, Meaning(called[0])
            for axis, share in _shares(slants.get(called[0])):
                yield letter, _BEHIND[axis], Meaning(called[0], share)
    for joint, name in at:
        word = squeezed(joint)
        if name.endswith(("_x", "_y")):
            own: Axis = "x" if name.endswith("_x") else "y"
            yield word, _OF_REACTION[own], Meaning(name)
        else:
            for axis, share in _shares(slants.get(name)):
                yield word, _OF_REACTION[axis], Meaning(name, share)
        lone = _lone(joint, at)
        if lone:
            yield word, _ALONE, Meaning(name)
        if lone or (name in slants and slants[name].alone):
            lettered = _AT_LINK if name in links else _AT_SUPPORT
            yield word, lettered, Meaning(name)
            if joint in numbered:
                yield numbered[joint], lettered, Meaning(name)


def _figures_alone(joints: tuple[str, ...]) -> dict[str, str]:
    """The figure of each joint called by a letter and a figure that no other joint has."""
    found = {joint: match[2] for joint in joints if (match := _NUMBERED.fullmatch(joint))}
    return {
        joint: figure for joint, figure in found.items() if list(found.values()).count(figure) == 1
    }


def _lone(joint: str, at: list[tuple[str, str]]) -> bool:
    """Whether one unknown alone acts at the joint from outside."""
    return sum(1 for other, _ in at if other == joint) == 1


def _joint(reaction: str) -> str:
    """The joint that a reaction acts at: "A" of A_x and of R_A."""
    base, _, sub = reaction.rpartition("_")
    return base if sub in ("x", "y") and base else sub
