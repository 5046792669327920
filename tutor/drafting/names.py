"""Which joint or member does a typed word mean?"""

from __future__ import annotations

import re
from itertools import pairwise

from tutor.drafting.words import Bad, Word
from tutor.model import Problem
from tutor.model.defect import nearest_name
from tutor.model.read_parts import NAME, NAMES
from tutor.model.supports import SUPPORTS
from tutor.text import FEW, listed

LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
WAYS = {
    "up": "up",
    "down": "down",
    "left": "left",
    "right": "right",
    "upward": "up",
    "upwards": "up",
    "downward": "down",
    "downwards": "down",
    "↑": "up",
    "↓": "down",
    "←": "left",
    "→": "right",
}
SHORT_WAYS = {"u": "up", "d": "down", "l": "left", "r": "right"}
SUPPORT_WORDS = {word: kind for kind in SUPPORTS.values() for word in (kind.name, *kind.words)}
AT = frozenset({"at", "@"})
KEYWORDS = (*WAYS, *SUPPORT_WORDS, "at")
LETTER = re.compile(r"[a-z]\d*")
PLAIN_NAME = re.compile(r"[A-Z]\d*")


def joint_meant(problem: Problem, text: str) -> str | None:
    """The joint of this name, in other capitals where one alone fits; None where none does."""
    if text in problem.joint:
        return text
    if text.upper() in problem.joint:
        return text.upper()
    alike = [name for name in problem.joint if name.lower() == text.lower()]
    return alike[0] if len(alike) == 1 else None


def new_name(word: Word) -> str:
    """The name for a joint that is not there yet; Bad where it cannot be one.

    A small letter, like a or u1, stands for its capital; in quotes, and any longer name, it stays
    as it is typed.
    """
    if NAME.fullmatch(word.text) is None:
        raise Bad(word.text, "this cannot name a joint", NAMES, word)
    if word.lower in KEYWORDS:
        raise Bad(
            word.text, "this says how a joint is held or pushed", "name the joint first", word
        )
    return word.text.upper() if is_short(word) else word.text


def is_short(word: Word) -> bool:
    """Whether a word is a small letter that stands for its capital."""
    return not word.quoted and LETTER.fullmatch(word.text) is not None


def literal(name: str) -> str:
    """A joint's name so that typing it gives this very name."""
    return name if PLAIN_NAME.fullmatch(name) else f'"{name}"'


def free_name(problem: Problem) -> str:
    """The first letter that no joint has, or else a J with a number."""
    for letter in LETTERS:
        if letter not in problem.joint:
            return letter
    count = len(problem.joints) + 1
    while f"J{count}" in problem.joint:
        count += 1
    return f"J{count}"


def needed(problem: Problem, word: Word, text: str | None = None) -> str:
    """The joint that a word names; Bad where it is not there."""
    name = joint_meant(problem, word.text if text is None else text)
    if name is None:
        raise missing(problem, word, word.text if text is None else text)
    return name


def check_spelling(problem: Problem, word: Word) -> None:
    """Bad where a word that means no joint is nearly one of those for supports and loads."""
    known = joint_meant(problem, word.text) is not None or word.lower in KEYWORDS
    close = nearest_name(word.text, KEYWORDS) if len(word.text) > 2 and not known else None
    if close is not None:
        raise Bad(word.text, "this is no word known here", f"write {close} if you meant that", word)


def missing(problem: Problem, word: Word, name: str) -> Bad:
    """There is no such joint."""
    check_spelling(problem, word)
    there = f"; the joints are {listed(problem.joint, FEW)}" if problem.joints else ""
    sample = name.upper() if LETTER.fullmatch(name) else name if NAME.fullmatch(name) else "A"
    return Bad(
        word.text,
        f"there is no joint {name[:12]} yet{there}",
        f"put it first, like {sample} 4 0",
        word,
    )


def path_of(problem: Problem, word: Word) -> list[tuple[str, str]]:
    """The members that one word names: AB, U1-L2, U1L2, or a path of them like ABCD or A-B-C; Bad."""
    if "-" in word.text:
        parts = word.text.split("-")
        if not all(parts):
            raise Bad(word.text, "a joint is missing beside the dash", "write A-B", word)
        return _steps(word, [needed(problem, word, part) for part in parts])
    halves = {
        (one, other)
        for cut in range(1, len(word.text))
        if (one := joint_meant(problem, word.text[:cut]))
        and (other := joint_meant(problem, word.text[cut:]))
    }
    letters = [joint_meant(problem, letter) for letter in word.text]
    path = [name for name in letters if name is not None]
    if len(letters) > 2 and len(path) == len(letters):
        if halves:
            raise Bad(word.text, "this can be read in two ways", "part the joints by dashes", word)
        return _steps(word, path)
    if len(halves) > 1:
        both = " or ".join("-".join(pair) for pair in sorted(halves))
        raise Bad(word.text, "this can be read in two ways", f"write {both}", word)
    if halves:
        return _steps(word, list(halves.pop()))
    raise _no_path(problem, word)


def member_meant(problem: Problem, word: Word) -> tuple[str, str] | None:
    """The two joints of the one member that a word names and no joint does, there or not."""
    if joint_meant(problem, word.text) is not None:
        return None
    try:
        path = path_of(problem, word)
    except Bad:
        return None
    return path[0] if len(path) == 1 else None


def _steps(word: Word, joints: list[str]) -> list[tuple[str, str]]:
    """Each joint to the next; Bad where two in a row are the same."""
    for one, other in pairwise(joints):
        if one == other:
            message = f"a member cannot go from {one} to {one}"
            raise Bad(word.text, message, "name two different joints", word)
    return list(pairwise(joints))


def _no_path(problem: Problem, word: Word) -> Bad:
    if joint_meant(problem, word.text) is not None:
        name = joint_meant(problem, word.text)
        cure = f"write {name} 4 0 to move it, {name} pin, {name} 12 down, or a member like AB"
        return Bad(word.text, f"joint {name} alone says nothing", cure, word)
    found = re.fullmatch(r"([A-Za-z]\d*)([A-Za-z]\d*)", word.text)
    if found is not None and nearest_name(word.text, KEYWORDS) is None:
        lost = next((part for part in found.groups() if joint_meant(problem, part) is None), "")
        if lost:
            return missing(problem, word, lost.upper())
    return missing(problem, word, word.text)
