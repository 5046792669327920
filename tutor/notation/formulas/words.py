"""What does a word in a formula stand for: a name, a unit, a function, or several run together?"""

from __future__ import annotations

import re
from collections.abc import Container
from functools import lru_cache
from typing import Literal

from tutor.notation.elements import units
from tutor.notation.elements.fact import fact
from tutor.notation.elements.tree import Share
from tutor.notation.elements.unreadable import Broken
from tutor.notation.naming.names import Names, spelling
from tutor.notation.naming.spellings import Meaning
from tutor.notation.naming.symbols import LETTERS

Kind = Literal["NAME", "UNIT", "ANGLE", "FUNCTION", "PI"]

FUNCTIONS = {
    "sin": "sin",
    "cos": "cos",
    "tan": "tan",
    "asin": "asin",
    "acos": "acos",
    "atan": "atan",
    "arcsin": "asin",
    "arccos": "acos",
    "arctan": "atan",
    "sqrt": "sqrt",
    "√": "sqrt",
    "cot": "cot",
    "cotan": "cot",
    "ctg": "cot",
    "sec": "sec",
    "csc": "csc",
    "cosec": "csc",
    "sen": "sin",
    "tg": "tan",
    "arctg": "atan",
    "arcsen": "asin",
}
ANGLES = frozenset(
    [
        "θ",
        "α",
        "β",
        "γ",
        "δ",
        "φ",
        "ϕ",
        "ψ",
        "ϑ",
        "theta",
        "alpha",
        "beta",
        "gamma",
        "delta",
        "phi",
        "psi",
    ]
)
"""Letters that stand for an angle, by sign and by name."""
OTHER_FUNCTIONS = frozenset(
    [
        "log",
        "ln",
        "lg",
        "exp",
        "abs",
        "sinh",
        "cosh",
        "tanh",
        "atan2",
        "root",
        "cbrt",
        "max",
        "min",
        "mod",
        "floor",
        "ceil",
        "round",
        "sgn",
        "sign",
        "int",
        "sum",
        "diff",
    ]
)
"""Functions that are known by name and not read here."""
_LONGEST_FIRST = sorted(FUNCTIONS, key=len, reverse=True)
_LONGEST_RUN = 40
_TAIL = re.compile(rf"-[{LETTERS}0-9']++(?![_{{])")


@fact
class Front:
    """The front of a word: what it is, what it means and how many characters it takes."""

    kind: Kind
    value: str
    length: int
    share: Share | None = None


@lru_cache(maxsize=4096)
def front_piece(word: str, names: Names | None, measured: bool) -> Front | None:
    """What the front of `word` stands for, or None if it is unknown.

    `measured` says that a unit may stand here. The whole word comes first, then the longest front
    that leaves a name or a function ("F_ABcos" is F_AB times a cosine). Raises Broken where two
    meanings are equally good, with columns counted from the start of `word`.
    """
    piece = _whole(word, names, measured)
    if piece is not None or len(word) > _LONGEST_RUN:
        return piece
    for cut in range(len(word) - 1, 0, -1):
        piece = _front(word[:cut], word[cut:], names, measured)
        if piece is not None:
            return piece
    return None


def _whole(word: str, names: Names | None, measured: bool) -> Front | None:
    size = len(word)
    if measured:
        unit = _unit(word, names)
        if unit is not None:
            return unit
    function = FUNCTIONS.get(word) or FUNCTIONS.get(word.lower())
    if function and word in FUNCTIONS and not _exactly(word, names):
        return Front("FUNCTION", function, size)
    meanings = names.meanings(word) if names is not None else ()
    found = tuple(meaning.name for meaning in meanings)
    if function and not found:
        return Front("FUNCTION", function, size)
    if function:
        raise Broken(
            "ambiguous/function",
            0,
            size,
            name=found[0],
            spelling=spelling(found[0]),
            function=function,
        )
    if len(found) == 1:
        return Front("NAME", found[0], size, meanings[0].share)
    if found:
        raise Broken(
            "ambiguous",
            0,
            size,
            one=_described(meanings[0]),
            other=_described(meanings[1]),
            cure=" or ".join(map(spelling, dict.fromkeys(found[:3]))),
        )
    return Front("PI", "pi", size) if word in ("pi", "Pi", "PI", "π") else None


def _exactly(word: str, names: Names | None) -> bool:
    """Whether `word` is a name in just these letters."""
    return names is not None and bool(names.spelled(word))


def _unit(word: str, names: Names | None) -> Front | None:
    """`word` as a unit or angle unit; one that is a name in just these letters is ambiguous."""
    found = names.plainly(word) if names is not None else ()
    angle = units.angle_unit(word)
    spelled = units.SPELLED.get(word)
    unit = angle or spelled or units.LOOSELY.get(word.lower()) or american(word, names)
    if unit is None and not (found and word.lower() == "mn"):
        return None
    exact = _exactly(word, names)
    if exact and spelled is None and angle is None:
        return None
    if found and (exact or (spelled is None and angle is None)):
        assert names is not None
        raise Broken(
            "ambiguous/unit",
            0,
            len(word),
            name=found[0],
            spelling=spelling(found[0]),
            own=names.length if unit in units.METRES else names.force,
        )
    assert unit is not None
    return Front("ANGLE" if angle else "UNIT", unit, len(word))


def american(word: str, names: Names | None) -> str | None:
    """The kip by its letter and the pound by its sign, only where kip or lb is the problem's own."""
    own = names is not None and names.force in ("kip", "lb")
    return {"k": "kip", "K": "kip", "#": "lb"}.get(word) if own else None


def _front(front: str, rest: str, names: Names | None, measured: bool) -> Front | None:
    function = FUNCTIONS.get(front.lower())
    if function and (rest[0].isdigit() or not rest[0].isascii() or _known(rest, names)):
        return Front("FUNCTION", function, len(front))
    if not (_known(rest, names) or _starts_function(rest, names)):
        return None
    if function or front.lower() in ("pi",):
        return None
    return _whole(front, names, measured)


def _known(rest: str, names: Names | None) -> bool:
    if rest.lower() in FUNCTIONS or rest in ("pi", "π") or rest.lower() in ANGLES:
        return True
    return bool(names and (names.plainly(rest) or (len(rest) > 2 and names.meanings(rest))))


def _starts_function(rest: str, names: Names | None) -> bool:
    """Whether `rest` begins with a function that can end there: cos36, cosF_AB, not cosine."""
    for word in _LONGEST_FIRST:
        if rest.lower().startswith(word):
            after = rest[len(word) :]
            return not after or after[0].isdigit() or _known(after, names)
    return False


def _described(meaning: Meaning) -> str:
    part = "" if meaning.share is None else f"the {meaning.share.axis} component of "
    name = meaning.name
    return part + (f"the reaction {name}" if "_" in name else f"the force in member {name}")


def is_times(word: str, start: int, text: str, operand: bool, measured: bool) -> bool:
    """Whether an x stands for times: between two numbers, or apart between two factors.

    `operand` and `measured`: what an operator, or a unit, may follow stands before it.
    """
    if len(word) == 1 and text[start - 1 : start] == " " and operand:
        return _APART.match(text, start + 1) is not None
    between = measured and _FACTOR.match(text, start + 1) is not None
    return between and not (len(word) > 1 and text[start - 1] == " ")


_FACTOR = re.compile(r" *[0-9.(\[]")
_APART = re.compile(rf" +[0-9.(\[{{{LETTERS}√]")


def letter_of(word: str, letters: Container[str], names: Names | None) -> str | None:
    """The angle or length of `letters` that a word is, or begins with where a name follows it."""
    if word in letters:
        return word
    if word[0] not in letters:
        return None
    rest = word[1:]
    alone = not word[0].isascii() or rest in letters
    return word[0] if alone or (names is not None and names.meanings(rest)) else None


def dashed(word: str, start: int, text: str, names: Names) -> tuple[str, int] | None:
    """The member that a word at `start` and the tail right behind it name, such as "U1-L2", and
    where it ends; None where the dash is a minus sign, Broken where it could be either."""
    tail = _TAIL.match(text, start + len(word))
    if tail is None or not names.meant(word + tail.group()):
        return None
    return _dashed_member(word, tail.group(), start, names), tail.end()


def _dashed_member(word: str, tail: str, start: int, names: Names) -> str:
    """The member that a word and its tail, such as "U1" and "-L2", name; Broken where a difference
    of two forces may be meant as well.

    Two joints without a space are their member, also where a joint alone may be a reaction.
    """
    found = names.meant(word + tail)
    joints = names.joint(word) is not None and names.joint(tail[1:]) is not None
    if len(found) > 1 or (not joints and names.meant(word) and names.meant(tail[1:])):
        raise Broken(
            "ambiguous",
            start,
            start + len(word + tail),
            one=f"the force in member {found[0]}",
            other=f"the difference {word} - {tail[1:]}",
            cure=f"F_{{{found[0]}}} or spaces around the minus sign",
        )
    return found[0]
