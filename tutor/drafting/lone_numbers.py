"""What does a number beside a name leave open, and how would it be said?

`AB 100 down`, `AB 4`, `AB 4 3`, `AX 3 right`, `C 12`: a load between the joints, a length, a place for a
member, a joint that is not there yet, half of something.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from tutor.drafting.names import joint_meant
from tutor.drafting.words import UNITS, Bad, Word, number_of
from tutor.model import Problem
from tutor.notation import Exact

Pair = tuple[str, str]


def load_on_member(problem: Problem, member: Pair, words: Sequence[Word], word: Word) -> Bad:
    """A load between the joints: half of it acts at each end, if it acts at the middle."""
    size, rest = _size(words)
    half = "" if size is None else f", {_half(size)} {rest} each"
    return Bad(
        word.text,
        "a truss is loaded at its joints, not along a member",
        f"put half at each end, {member[0]} and {member[1]}{half}, where it acts at the middle; one that "
        "lies all along it is typed like spread 2 down AB",
        word,
    )


def span_of_member(problem: Problem, member: Pair, word: Word) -> Bad:
    """A length beside a member: lengths come from where the joints are."""
    one, other = member
    return Bad(
        word.text,
        f"how long {one}{other} is follows from the places of {one} and {other}",
        f"move one of them, like {other} 4 right of {one}, or {other} 5 at 30 from {one}",
        word,
    )


def place_of_member(problem: Problem, member: Pair, word: Word) -> Bad:
    """A place beside a member: a joint of that name is hardly meant."""
    one, other = member
    return Bad(
        word.text,
        f"this is the member from {one} to {other}, and has no place of its own",
        f"name one joint, like {other} 4 0, or write “{one}{other}” in quotes for a joint called so",
        word,
    )


def half_there(problem: Problem, word: Word) -> Bad | None:
    """Two joints written together of which one is there: what to say to a way beside them, or None."""
    found = re.fullmatch(r"([A-Za-z]\d*)([A-Za-z]\d*)", word.text)
    if found is None or joint_meant(problem, word.text) is not None:
        return None
    one, other = (joint_meant(problem, part) for part in found.groups())
    if (one is None) == (other is None):
        return None
    there, lost = one or other, (found[2] if one else found[1]).upper()
    return Bad(
        word.text,
        f"there is no joint {lost} yet",
        f"put it first, like {lost} 3 right of {there}, and then write {there}{lost} for the member",
        word,
    )


def which_way(joint: str, word: Word) -> Bad:
    """One number behind a joint: half a place, or a load without a way."""
    return Bad(
        f"{joint} {word.text}",
        "one number behind a joint may be a load without its way, or a place without its y",
        f"write {joint} {word.text} down for a load, or write y too, like {joint} {word.text} 0",
        word,
    )


def no_way(joint: str, word: Word, after: Word) -> Bad:
    """A load whose way is said by a word that is none."""
    return Bad(
        f"{joint} {word.text} {after.text}",
        f"“{after.text}” is no way in which a load acts",
        f"write {joint} {word.text} down, or up, left or right, or its direction in degrees from +x, like "
        f"{joint} {word.text} at 210",
        word,
    )


def _size(words: Sequence[Word]) -> tuple[Exact | None, str]:
    """The one size in the words of a load, and what stands behind it; None where there are more."""
    numbers = [word for word in words if word.is_number]
    if len(numbers) != 1:
        return None, ""
    try:
        size, _ = number_of(numbers[0], "the size")
    except Bad:
        return None, ""
    ways = [word.text for word in words if not word.is_number and word.lower not in UNITS]
    return size, " ".join(ways)


def _half(size: Exact) -> str:
    return f"{size.value / 2:.6g}"
