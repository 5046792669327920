"""Which lines of a page are one line that copying broke in two, or a heading and the line below it?

A line is joined to the next only where it cannot be read alone and both together can.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from tutor.judge import Judge
from tutor.notation import Unreadable, read_heading, without_marks

HYPHENATED = re.compile(r"(?P<word>[^=]*[a-z]{2,})-\s*")
GOES_ON = re.compile(r"\s*[a-z]{2,}[^=]*")
OPEN_END = re.compile(r"(?:[-+*/=·×−–(]|[-+−–] ?[FSNT])\s*$")
SPLIT_NAME = re.compile(r"[-+−–] ?[FSNT]\s*$")
OPEN_START = re.compile(r"\s*[+=×]\s*[^\s+=×]")
HEADED = re.compile(r"[^=]*=\s*0\s*:?(?P<sum>[^=]*[^=\s:][^=]*)")
"""A heading that is set to zero, and behind it a sum without an equals sign of its own."""
RATIO_END = re.compile(r"(?:\b0?\.\d+|\b\d\s*/\s*\d+|(?:sin|cos)\s*\(?[\d.]+\s*°?\)?)\s*$")
"""A factor that stands alone at the end, of which the force is missing."""
MINUS_START = re.compile(r"\s*[-−–]\s*(?:[\d.]|[^\W\d_][\w{}]*\s*[*·×(]\s*[\d.])")
FORMULA = re.compile(r"\d\s*[-+*·×]\s*[\w(]")
TO_ZERO = re.compile(r"[^=:]*=\s*0(?!\.?\d)(?P<rest>.*)")
LONGEST = 240


def mended(desk: Judge, lines: Sequence[str]) -> list[str]:
    """The lines with what belongs together in one, at the number where its formula begins."""
    made = list(lines)
    for index in range(len(made) - 1):
        one, other = made[index], made[index + 1]
        if len(one) + len(other) > LONGEST:
            continue
        if (found := HYPHENATED.fullmatch(one)) and GOES_ON.fullmatch(other):
            made[index : index + 2] = "", f"{found['word']}{other.lstrip()}"
        elif (whole := _joined(desk, one, other)) is not None:
            made[index : index + 2] = whole, ""
        elif (below := _under_heading(desk, one, other)) is not None:
            made[index : index + 2] = "", below
    return made


def goes_on(desk: Judge, one: str, other: str) -> str | None:
    """Both lines as one, where the second, typed next, can only go on with the first.

    A line that was broken off and is typed anew from its start is one of its own.
    """
    whole = _joined(desk, one, other)
    split = SPLIT_NAME.search(without_marks(one)) or OPEN_START.match(other)
    return whole if split or not _is_whole(desk, other) else None


def _joined(desk: Judge, one: str, other: str) -> str | None:
    """A formula that goes on in the next line; None where each line is one of its own."""
    begun = without_marks(one)
    if not any(map(str.isalnum, begun)):
        return None
    if _half_headed(desk, one, other):
        return f"{one.rstrip()} {other.strip()}"
    subtracts = MINUS_START.match(other) and TO_ZERO.fullmatch(other) and FORMULA.search(begun)
    starts = OPEN_START.match(other) or subtracts
    if OPEN_END.search(begun) is None and not starts:
        return None
    whole = f"{one.rstrip()} {other.strip()}"
    return whole if not _is_whole(desk, one) and _is_whole(desk, whole) else None


def _half_headed(desk: Judge, one: str, other: str) -> bool:
    """Whether a sum under a heading that is zero goes on in the next line, which says so again.

    The heading alone makes a sum of each half; that the next begins with the next term, or that the
    first ends in a factor without its force, shows that they are one.
    """
    if HEADED.fullmatch(without_marks(one)) is None or TO_ZERO.fullmatch(other) is None:
        return False
    if MINUS_START.match(other) is None and RATIO_END.search(one) is None:
        return False
    return _is_whole(desk, f"{one.rstrip()} {other.strip()}")


def _is_whole(desk: Judge, text: str) -> bool:
    """Whether a text can be read and sets something equal."""
    line = desk.read(text)
    return not isinstance(line, Unreadable) and len(line.result.sides) > 1


def _under_heading(desk: Judge, one: str, other: str) -> str | None:
    """A line with the heading that stands alone above it; None where no sum is named there."""
    alone = desk.read(one)
    if not isinstance(alone, Unreadable) or alone.code != "label":
        return None
    heading = without_marks(one).rstrip(" :")
    label, below = read_heading(heading, desk.names), desk.read(other)
    if isinstance(label, Unreadable) or label.kind is None or isinstance(below, Unreadable):
        return None
    whole = f"{heading}: {other.strip()}"
    return whole if below.label is None and _is_whole(desk, whole) else None
