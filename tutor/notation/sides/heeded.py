"""What do words and arrows behind a number say of it: T or C, which way, zero, or that it is not so?"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import Literal

from tutor.notation.elements.lexicon import DENYING, WAYS, Meaning, folded, said, says
from tutor.notation.elements.unreadable import Broken
from tutor.notation.lines.line import Letter, Sense

ARROWS: dict[str, Sense] = {
    "←": "left", "→": "right", "↑": "up", "↓": "down",
    "↖": "up and left", "↗": "up and right", "↙": "down and left", "↘": "down and right",
}  # fmt: skip
Bit = tuple[str, int, int]
DRAWN = frozenset(("drew", "drawn", "draw", "assumed", "assume"))
"""Words behind which stands how an arrow was drawn, and not how the force acts."""
PUSHING = frozenset(("pushes", "pushing", "pulls", "pulling", "presses", "pressing"))
"""What a member does to its joints in compression and tension, and what any force does that acts some way."""
_HOLDING_UP = re.compile(r"(?:hang|hold|keep|prop)(?:s|ing)?")
"""Verbs whose "up" says what is done to something, and not which way a force acts: it hangs the load up."""
_HOW_FAR = frozenset(
    ("halfway", "way", "higher", "lower", "further", "end", "m", "ft", "mm", "feet", "metres")
)
_PLACES = frozenset(("top", "there", "here"))
_BOTH = frozenset(("both", "jts", "ends", "end"))
_HOLDING = frozenset(
    ("wall", "roller", "pin", "support", "ground", "floor", "link", "reaction", "hinge", "abutment")
)
NEGATED = rf"{DENYING}|no|non|niet|geen|pas|sin|without"
"""What denies the T or C, the way or the number said with it."""
_NEGATED = re.compile(NEGATED)
DENIES = re.compile(rf"\b(?:{NEGATED})\b|n['’]t\b", re.IGNORECASE)
"""The same anywhere in a text: is no tie, isn't a tie."""
RESULT: tuple[Meaning, ...] = (*WAYS, "against", "zero")


@dataclass
class Said:
    """What words behind a number say; `acts` where its letter is a verb: it pushes on the wall.

    `pointed` where its sense is an arrow. An arrow beside T or C only draws how it pulls or pushes at one end.
    """

    letter: Letter | None = None
    sense: Sense | None = None
    zero: tuple[int, int] | None = None
    acts: bool = False
    pointed: bool = False
    places: list[tuple[int, int]] = field(default_factory=list)
    passed: bool = False

    def add(self, word: str, start: int, end: int) -> bool:
        """Takes in a word or an arrow; False where it says nothing. Raises Broken for a second one."""
        meaning = said(word, *RESULT)
        sense = ARROWS.get(word) or arrow(word)
        letter: Letter | None = meaning if meaning in ("T", "C") else None
        if meaning == "zero":
            self.zero = self.zero or (start, end)
            return True
        if letter is None and sense is None:
            sense = meaning  # type: ignore[assignment]
        if letter is None and sense is None:
            return False
        acts = letter is not None and _ACTS.match(folded(word)) is not None
        self.take(Said(letter, sense, None, acts, word in ARROWS, [(start, end)]))
        return True

    def take(self, said: Said) -> None:
        """Takes in what is said of T or C or a way; Broken where that is not what was said before."""
        if not said.places or (self.letter and not self.acts and said.pointed):
            return
        if self.pointed and said.letter and not said.acts:
            self.sense = None
            self.places.clear()
        same = (self.letter, self.sense) == (said.letter, said.sense)
        if (self.letter or self.sense) and not same:
            raise Broken("value/two", *max(*said.places, *self.places))
        self.letter, self.sense, self.acts = said.letter, said.sense, said.acts
        self.pointed = said.pointed
        self.places += said.places


_ACTS = re.compile(r"(?:push|pull)(?:e?s|ed|ing)?$|druckt|zieht")
"""Words for what a force does to something, which say T or C of a member alone."""


def arrow(word: str) -> Sense | None:
    if len(word) > 1 and word[-1] == ">" and word[0] in "-=":
        return "right"
    return "left" if len(word) > 1 and word[0] == "<" and word[-1] in "-=" else None


def heed(bits: list[Bit], heeded: Said, reason: bool) -> None:
    """Takes in the words that say something, up to a word that begins a reason."""
    if reason:
        return
    denied = next((at for at, bit in enumerate(bits) if denies(bit[0])), None)
    if denied is not None:
        _heed_denied(bits, denied, heeded)
        return
    for index, (word, start, end) in enumerate(bits):
        if (says(word, "because", "where") and not says(word, "filler")) or folded(word) in DRAWN:
            break
        behind = bits[index + 1][0] if index + 1 < len(bits) else ""
        pointing = (word in ("←", "→") or arrow(word)) and says(behind, "remark", "T", "C")
        pointing = pointing or (word == "=>" and len(behind) > 1 and behind.isalpha())
        single = len(word) == 1 and word.isalpha()
        alone = len(bits) <= 2 or index == 0 or (index == 1 and _enclosed(bits))
        if pointing or (single and (word not in "TCtc" or not alone)) or _is_place(bits, index):
            continue
        if heeded.sense is not None and says(word, "against"):
            continue
        if folded(word) in PUSHING and _led_way(bits, index) == "acts":
            continue
        if _is_way(word) and _is_of_a_verb(bits, index):
            continue
        heeded.add(word, start, end)
    if heeded.zero is not None:
        heeded.zero = heeded.zero[0], bits[-1][2]


def _enclosed(bits: list[Bit]) -> bool:
    """Whether words begin with one in brackets by itself: (C) [the gulls sit there]."""
    return len(bits) > 2 and bits[0][0] in "([{" and bits[2][0] in ")]}"


def _is_of_a_verb(bits: list[Bit], way: int) -> bool:
    """Whether a way is what something is done to, by a verb before it: it pushes on E ←, it hangs the load up."""
    before = [folded(word) for word, _, _ in bits[:way]]
    held = says(bits[way][0], "up") and any(map(_HOLDING_UP.fullmatch, before))
    return held or any(_led_way(bits, at) == "on" for at in range(way))


def _is_way(word: str) -> bool:
    """Whether a word or an arrow says which way."""
    return word in ARROWS or arrow(word) is not None or says(word, "left", "right", "up", "down")


def _led_way(bits: list[Bit], index: int) -> Literal["", "acts", "on"]:
    """How a verb leads to a way: "pushes ←" is how a force acts, "pushes on E ←" what a member does to a joint."""
    if folded(bits[index][0]) not in PUSHING:
        return ""
    way = next((at for at in range(index + 1, len(bits)) if _is_way(bits[at][0])), None)
    if way is None:
        return ""
    on = any(_is_joint(word) for word, _, _ in bits[index + 1 : way])
    holds = any(folded(word) in _HOLDING for word, _, _ in bits[:index])
    return "on" if on and not holds else "acts"


def _is_joint(word: str) -> bool:
    return says(word, "joint") or (word[0].isupper() and len(word) < 4) or folded(word) in _BOTH


def denies(word: str) -> bool:
    """Whether a word denies what is said with it of a force."""
    return _NEGATED.fullmatch(folded(word)) is not None


def _heed_denied(bits: list[Bit], at: int, heeded: Said) -> None:
    """Takes in T or C before a word that denies the other: T, not C; where none stands before it, as well."""
    opposite = {"T": "compression", "C": "tension"}
    before = [bit for bit in bits[:at] if said(bit[0], "T", "C")]
    behind = [bit for bit in bits[at + 1 : at + 5] if len(bit[0]) > 1 and said(bit[0], "T", "C")]
    if len(behind) != 1 or folded(bits[at][0]) not in ("not", "nicht", "pas", "non", "niet"):
        return
    word, start, end = behind[0]
    other = opposite[str(said(word, "T", "C"))]
    for bit in (*before, (other, start, end)):
        heeded.add(*bit)


def _is_place(bits: list[Bit], index: int) -> bool:
    """Whether a way says where something is: on the right, left of D, the left half, halfway up; or left out."""
    before = [folded(word) for word, _, _ in bits[max(0, index - 2) : index]]
    behind = folded(bits[index + 1][0]) if index + 1 < len(bits) else ""
    if says(bits[index][0], "up", "down"):
        return behind in _PLACES or bool(_HOW_FAR.intersection(before[-1:]))
    led = "on" in before[-1:] or (
        before[-1:] == ["the"] and before[:1] in (["on"], ["from"], ["at"])
    )
    return says(bits[index][0], "left", "right") and (
        led
        or behind
        in (
            "of",
            "hand",
            "side",
            "end",
            "half",
            "support",
            "part",
            "out",
            "over",
            "alone",
            "behind",
        )
    )
