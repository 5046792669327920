"""Which joint was given what, in a text such as "A 6 down, B: 12 kN" or "6 12 6"?"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from tutor.model import Problem
from tutor.model.naming import joint_meant
from tutor.model.parts import AXES, PushDirection
from tutor.notation import Unreadable, read_line, value_of
from tutor.notation.elements.units import SPELLED
from tutor.text import listed, shown

LONGEST = 500
WAYS: Mapping[str, PushDirection] = {
    **{way: way for way in AXES},
    **{f"{way}ward{s}": way for way in AXES for s in ("", "s")},
    "↓": "down",
    "↑": "up",
    "→": "right",
    "←": "left",
}
BESIDE = frozenset(
    [
        "joint",
        "joints",
        "node",
        "at",
        "takes",
        "take",
        "gets",
        "carries",
        "and",
        "each",
        "to",
        "the",
        "is",
        "are",
        "of",
        "load",
        "loads",
        "it",
        "a",
        "with",
    ]
)
"""Words that may stand between."""
TOKEN = re.compile(
    r"(?P<number>(?:sqrt|[\d.()√½¼¾⅓⅔²³+*/^·×−-]|,(?=\d))+)"
    r"|(?P<way>[↓↑→←])|(?P<word>[^\W\d_]\w*)|(?P<equal>=)|(?P<other>[^\s:;,])"
)
OPERATOR = re.compile(r"\s*([+*/^·×])\s*")
MINUS = re.compile(r"(?<=[\d)])\s*[-−]\s*(?=[\d(])")
IN_BRACKETS = re.compile(r"[(\[]\s*(\w+|[↓↑→←])\s*[)\]]")
FOR_EACH = re.compile(r"\b([kM]?N|lb|lbf|kips?)\s*/\s*([cm]?m|ft|in)\b")
LENGTH_BESIDE = re.compile(r"(?<=\d)\s*(?:mm|cm|m|ft|in)\b")
TWO_NUMBERS = "“{text}” may be one number or two; put a blank behind a comma between two numbers."
HOW = "write each joint with what it takes and which way, like {like}."


@dataclass
class Amount:
    """A force as it was typed, and which way it acts, where that was said."""

    text: str
    way: PushDirection | None = None


@dataclass
class Typed:
    """What was typed: amounts by joint, and in their order those for which no joint was named."""

    joints: dict[str, list[Amount]] = field(default_factory=dict)
    bare: list[Amount] = field(default_factory=list)
    complaint: str = ""


@dataclass(frozen=True)
class ForceRead:
    """One force as it is read: its size in the unit of the problem, negative where typed so."""

    size: float
    radius: float
    way: PushDirection | None


def amounts_in(problem: Problem, text: str, like: str) -> Typed:
    """The amounts in a text; a `complaint` where it cannot be read, with `like` as an example."""
    how = HOW.format(like=like)
    if len(text) > LONGEST:
        return Typed(complaint=f"over {LONGEST} characters; {how}")
    if re.search(r"\d,\d+,\d", text):
        found = re.search(r"[\d,.]+,[\d,.]+", text)
        return Typed(complaint=TWO_NUMBERS.format(text=found[0] if found else text))
    return _Reader(problem, _spelled(problem, text), how).read()


def read_amount(problem: Problem, amount: Amount) -> ForceRead | str:
    """The force that an amount says, or why it cannot be read."""
    reading = value_of(read_line(amount.text, problem.names))
    if isinstance(reading, Unreadable):
        return f"“{amount.text}”: {reading.message}"
    return ForceRead(reading.value, reading.radius, amount.way)


def _spelled(problem: Problem, text: str) -> str:
    """The text without blanks around operators, and without the units of a product of lengths."""
    if FOR_EACH.search(text):
        text = LENGTH_BESIDE.sub("", FOR_EACH.sub("", text))
    text = IN_BRACKETS.sub(lambda found: found[1] if found[1].lower() in WAYS else found[0], text)
    return MINUS.sub("-", OPERATOR.sub(r"\1", text))


class _Reader:
    """Goes through the words of a text, one after the other."""

    def __init__(self, problem: Problem, text: str, how: str) -> None:
        self.problem = problem
        self.text = text
        self.how = how
        self.typed = Typed()
        self.named: list[str] = []
        self.here: list[Amount] = []
        self.way: PushDirection | None = None
        self.equals = False
        self.late = False

    def read(self) -> Typed:
        tokens = list(TOKEN.finditer(self.text))
        for place, token in enumerate(tokens):
            after = self.text[token.end() :].lstrip()[:1]
            trouble = self._take(
                token, after, place > 0 and tokens[place - 1].lastgroup == "number"
            )
            if trouble:
                return Typed(complaint=f"{trouble}; {self.how}")
        self._close()
        if self.typed.joints and self.typed.bare:
            return Typed(complaint=f"some numbers stand without a joint; {self.how}")
        empty = [joint for joint, amounts in self.typed.joints.items() if not amounts]
        if empty or not (self.typed.joints or self.typed.bare):
            lacks = f"{listed(empty)} has no number" if empty else "there is no number"
            return Typed(complaint=f"{lacks}; {self.how}")
        return self.typed

    def _take(self, token: re.Match[str], after: str, behind_number: bool) -> str:
        """Take one token; what is wrong with it, or ""."""
        text, kind = token[0], token.lastgroup
        if kind == "number":
            self._number(text.strip(","))
        elif kind == "equal":
            self.equals = bool(self.here)
        elif kind == "way" or text.lower() in WAYS:
            self._points(WAYS[text.lower()])
        elif kind == "word" and behind_number and text in SPELLED and after not in (":", "="):
            self.here[-1].text += f" {text}"
        elif kind == "word" and (joint := joint_meant(self.problem, text)) is not None:
            self._joint(joint)
        elif text.lower() in ("at", "to"):
            self.late = bool(self.here and not self.named)
        elif text.lower() not in BESIDE:
            return f"{shown(text)} is no joint, number or direction"
        return ""

    def _number(self, text: str) -> None:
        if self.equals and self.here:
            self.here[-1].text += f" = {text}"
            self.equals = False
            return
        self.here.append(Amount(text, self.way))
        self.way = None

    def _points(self, way: PushDirection) -> None:
        if self.here and self.here[-1].way is None:
            self.here[-1].way = way
        else:
            self.way = way

    def _joint(self, joint: str) -> None:
        if self.here and not self.late:
            self._close()
        self.named.append(joint)
        if self.late:
            self._close()

    def _close(self) -> None:
        """What was gathered belongs to the joints named before it."""
        for joint in self.named:
            self.typed.joints.setdefault(joint, []).extend(self.here)
        if not self.named:
            self.typed.bare += self.here
        self.named, self.here, self.way = [], [], None
        self.equals = self.late = False


def sizes_like(problem: Problem, joints: Sequence[str], avoid: Sequence[float]) -> str:
    """An example for the first of some joints, with a size that is not the answer."""
    size = next(
        n
        for n in range(7, 100)
        if all(abs(n + more - value) > 0.5 for value in avoid for more in (0, 2))
    )
    ways = sorted({way for spread in problem.spreads for way, _ in spread.pushes})
    second = f" {size + 2} {ways[-1]}" if len(ways) > 1 else ""
    return f"{joints[0]} {size} {ways[0]}{second}"
