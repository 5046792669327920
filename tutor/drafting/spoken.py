"""How is a statement said shortly that was typed as one speaks: `a load of 12 kN at C, downward`?

Words that say nothing more are passed over, and what stands before its joint goes behind it. A word
that is a joint's name, or stands in quotes, is never one of these.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from tutor.drafting.names import AT, SHORT_WAYS, SUPPORT_WORDS, WAYS, joint_meant
from tutor.drafting.words import FORCES, UNITS, Word
from tutor.model import Problem

KINDS = frozenset(
    f"{kind}{end}"
    for kind in ("joint", "node", "point", "member", "bar", "support", "load", "force", "line")
    for end in ("", "s")
)
OF_LOADS = frozenset({"wind", "dead", "live"})
"""Words that say where a load comes from."""
VERBS = frozenset({"connect", "join", "add", "put", "draw", "hold", "apply", "place"})
BETWEEN = frozenset({"is", "are", "has", "of", "on", "with", "acts", "acting", "supported", "by"})
ARTICLES = frozenset({"a", "an", "the"})
AXES = {
    "fx": ("right", "left"),
    "px": ("right", "left"),
    "fy": ("up", "down"),
    "py": ("up", "down"),
}
WEIGHT = "weight"
WEIGHTS = frozenset({WEIGHT, "snow", "hangs", "hanging", "hung", "suspended"})
DOWN = "down"
THOUSANDS = re.compile(r"\d{3}")
CALLED = re.compile(r"[A-Z](?:_?\{?\w{1,2}\}?)?")
"""What a load is called in print: P, W, F_1."""


def short(problem: Problem, words: Sequence[Word]) -> list[Word]:
    """The words of a statement without those that say nothing, each phrase led by its joints."""
    found = _axes(problem, _bare(problem, _uncalled(problem, _joined(words))))
    return _turned(problem, _path(problem, words, _weighed(problem, found)))


def _joined(words: Sequence[Word]) -> list[Word]:
    """With sizes whose thousands are parted by spaces as one number: 1 500 down."""
    kept = list(words)
    for place in range(len(words) - 3, -1, -1):
        before, first, rest, after = (
            words[i] if i >= 0 else None for i in range(place - 1, place + 3)
        )
        if first is None or rest is None or after is None or (before and before.is_number):
            continue
        parted = re.fullmatch(r"[1-9]\d{0,2}", first.text) and THOUSANDS.fullmatch(rest.text)
        if parted and (after.lower in WAYS or UNITS.get(after.lower) in FORCES):
            kept[place : place + 2] = [Word(f"{first.text}{rest.text}", first.start, rest.end)]
    return kept


def _uncalled(problem: Problem, words: Sequence[Word]) -> list[Word]:
    """Without what a load is called in print, P = 12 kN down at C, where its joint is said as well."""
    called = len(words) > 3 and not _is_name(problem, words[0]) and words[1].is_number
    if called and CALLED.fullmatch(words[0].text) and _at_joint(problem, words[1:]):
        return list(words[1:])
    return list(words)


def _is_name(problem: Problem, word: Word) -> bool:
    return word.quoted or joint_meant(problem, word.text) is not None


def _bare(problem: Problem, words: Sequence[Word]) -> list[Word]:
    """Without articles, verbs and words for kinds; one that two numbers follow names a joint."""
    kept: list[Word] = []
    for place, word in enumerate(words):
        ahead = [*words[place + 1 : place + 3]]
        named = len(ahead) == 2 and all(each.is_number for each in ahead)
        if word.lower in ARTICLES and ahead and not word.quoted:
            led = place == 0 or words[place - 1].lower in (*BETWEEN, *VERBS)
            led = led and (place > 0 or _at_joint(problem, words))
            spoken = led and ahead[0].lower in (*SUPPORT_WORDS, *KINDS, *OF_LOADS, *WEIGHTS)
            spoken = spoken or (word.lower == "the" and not _is_name(problem, word))
        elif word.lower in (*VERBS, *BETWEEN, *KINDS):
            spoken = not _is_name(problem, word) and not (named and word.lower not in KINDS)
        elif word.lower in OF_LOADS:
            spoken = not _is_name(problem, word) and not named
        elif word.lower == "to":
            spoken = bool(kept) and not _is_name(problem, word)
        else:
            spoken = bool(kept) and _is_coordinate(problem, words, place)
        if not spoken:
            kept.append(word)
    return kept or list(words)


def _at_joint(problem: Problem, words: Sequence[Word]) -> bool:
    """Whether `at` stands before a joint, so that the first word need not be one."""
    return any(
        word.lower in AT and joint_meant(problem, after.text) is not None
        for word, after in pairwise(words)
    )


def _is_coordinate(problem: Problem, words: Sequence[Word], place: int) -> bool:
    """Whether a small x or y only says which coordinate the number behind it is: D x 1 y 1."""
    if words[place].text not in ("x", "y") or _is_name(problem, words[place]):
        return False
    letters = [word.text for word in words]
    followed = place + 1 < len(words) and words[place + 1].is_number
    return followed and "x" in letters and "y" in letters


def _axes(problem: Problem, words: Sequence[Word]) -> list[Word]:
    """A component by its sign, `C Fy -12`, as a size and a way."""
    kept: list[Word] = []
    place = 0
    while place < len(words):
        word, after = words[place], words[place + 1] if place + 1 < len(words) else None
        ways = AXES.get(word.lower)
        if kept and ways and after is not None and after.is_number and not _is_name(problem, word):
            negative = after.text.startswith("-")
            bare = replace(after, text=after.text.lstrip("+-"))
            kept += [bare, replace(word, text=ways[negative])]
            place += 2
        else:
            kept.append(word)
            place += 1
    return kept


def _weighed(problem: Problem, words: Sequence[Word]) -> list[Word]:
    """A weight, or what hangs from a joint, as a load downward."""
    place = next((i for i, w in enumerate(words) if w.lower in WEIGHTS), None)
    if place is None or _is_name(problem, words[place]):
        return list(words)
    hung = words[place].lower not in (WEIGHT, "snow")
    others = [
        replace(word, text="at") if hung and word.lower == "from" else word
        for i, word in enumerate(words)
        if i != place
    ]
    if any(_way(word) for word in others):
        return others
    last = max((i for i, word in enumerate(others) if word.is_number), default=None)
    if last is None:
        return others
    if last + 1 < len(others) and others[last + 1].lower in UNITS:
        last += 1
    return [*others[: last + 1], replace(words[place], text=DOWN), *others[last + 1 :]]


def _path(problem: Problem, typed: Sequence[Word], words: list[Word]) -> list[Word]:
    """Joints behind a verb that joins them, as one path."""
    joins = bool(typed) and typed[0].lower in ("connect", "join") and typed[0] not in words
    joints = [joint_meant(problem, word.text) for word in words]
    if not joins or len(words) < 3 or None in joints:
        return words
    text = "-".join(name for name in joints if name is not None)
    return [Word(text, words[0].start, words[-1].end)]


def _way(word: Word) -> bool:
    return word.lower in WAYS or word.text in SHORT_WAYS


def _turned(problem: Problem, words: list[Word]) -> list[Word]:
    """What stands before its joint, `12 down at C` or `pin at A`, behind it."""
    kept: list[Word] = []
    place = 0
    while place < len(words):
        end = _before_joints(problem, words, place)
        if end is None or (kept and joint_meant(problem, kept[-1].text) is not None):
            kept.append(words[place])
            place += 1
            continue
        last = end + 1
        while last < len(words) and joint_meant(problem, words[last].text) is not None:
            last += 1
        joints, more = words[end + 1 : last], last
        while more < len(words) and _way(words[more]):
            more += 1
        kept += [*joints, *words[place:end], *words[last:more]]
        place = more
    return kept


def _before_joints(problem: Problem, words: Sequence[Word], place: int) -> int | None:
    """Where the `at` is between what begins at `place` and the joints it is for; None for none."""
    first = words[place]
    if not (first.is_number or first.lower in SUPPORT_WORDS or first.lower in WAYS):
        return None
    for i in range(place + 1, len(words) - 1):
        word, after = words[i], words[i + 1]
        if word.lower in SUPPORT_WORDS or joint_meant(problem, word.text) is not None:
            return None
        if word.lower in AT and joint_meant(problem, after.text) is not None:
            return i
    return None
