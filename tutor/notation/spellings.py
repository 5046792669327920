"""How else may an unknown be written on paper: V_A, R_A at a roller, P_AB, AE_y for a component?

A table of squeezed spellings (without marks such as _ { } and commas). `names` looks here only where
a word is none of an unknown's own spellings, so nothing here can take a spelling away from another.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from fractions import Fraction
from typing import NamedTuple

from tutor.notation.tree import Axis, Share

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


def more_spellings(
    members: Iterable[tuple[str, str, str]],
    reactions: Iterable[str],
    joints: Iterable[str],
    slants: Mapping[str, Slant],
) -> dict[str, set[Meaning]]:
    """Every further spelling, squeezed, and what it may mean."""
    table: dict[str, set[Meaning]] = {}
    for word, meaning in (
        *_members(tuple(members), tuple(joints), slants),
        *_reactions(tuple(reactions), tuple(joints), slants),
    ):
        table.setdefault(word, set()).add(meaning)
    return table


def _members(
    members: tuple[tuple[str, str, str], ...],
    joints: tuple[str, ...],
    slants: Mapping[str, Slant],
) -> Iterator[tuple[str, Meaning]]:
    figures = _figures(joints)
    for name, start, end in members:
        one, other = squeezed(start), squeezed(end)
        for core in (one + other, other + one):
            yield core, Meaning(name)
            for letter in MEMBER_LETTERS:
                yield from _lettered(letter, core, Meaning(name))
            for axis, share in _shares(slants.get(name)):
                for word in _components(core, axis):
                    yield word, Meaning(name, share)
        if figures:
            for core in (figures[start] + figures[end], figures[end] + figures[start]):
                for letter in MEMBER_LETTERS:
                    yield from _lettered(letter, core, Meaning(name))


def _lettered(letter: str, core: str, meaning: Meaning) -> Iterator[tuple[str, Meaning]]:
    """A letter and what stands below the line behind it, and both run together."""
    yield f"{letter}_{core}", meaning
    yield letter + core, meaning


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


def _components(core: str, axis: Axis) -> Iterator[str]:
    for letter in _AXIS_LETTERS[axis]:
        yield core + letter
        for force in MEMBER_LETTERS:
            for mark in ("_", ""):
                yield force + mark + core + letter
                yield force + mark + letter + core
    for letter in _FIRST_LETTERS[axis]:
        yield f"{letter}_{core}"
        yield letter + core


def _reactions(
    reactions: tuple[str, ...], joints: tuple[str, ...], slants: Mapping[str, Slant]
) -> Iterator[tuple[str, Meaning]]:
    numbered = _figures_alone(joints)
    at = [(_joint(name), name) for name in reactions]
    links = [name for name in reactions if name in slants and slants[name].pull]
    if len(links) == 1:
        yield "T", Meaning(links[0])
    inclined = [name for name in reactions if not name.endswith(("_x", "_y"))]
    if len(inclined) == 1:
        yield "R", Meaning(inclined[0])
    for joint, name in at:
        word = squeezed(joint)
        own: Axis | None = None
        if name.endswith(("_x", "_y")):
            own = "x" if name.endswith("_x") else "y"
            for spelled in _along(word, own):
                yield spelled, Meaning(name)
        else:
            for axis, share in _shares(slants.get(name)):
                for spelled in _along(word, axis):
                    yield spelled, Meaning(name, share)
            if joint in numbered and own is not None:
                for spelled in _along(numbered[joint], own):
                    if not spelled[0].isdigit():
                        yield spelled, Meaning(name)
        alone = name in slants and slants[name].alone
        if _lone(joint, at) or alone:
            letters = ("R", "N", "S", "T") if name in links else ("R", "N")
            if _lone(joint, at):
                yield word, Meaning(name)
            for letter in letters:
                yield from _lettered(letter, word, Meaning(name))
                if joint in numbered:
                    yield from _lettered(letter, numbered[joint], Meaning(name))


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


def _along(joint: str, axis: Axis) -> Iterator[str]:
    """The spellings of what acts at a joint along an axis."""
    for letter in _AXIS_LETTERS[axis]:
        yield joint + letter
        for force in "RF":
            for mark in ("_", ""):
                yield force + mark + joint + letter
                yield force + mark + letter + joint
    for letter in _FIRST_LETTERS[axis]:
        yield f"{letter}_{joint}"
        yield letter + joint
