"""What have the words of a heading said so far? One token after another."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, Literal

from tutor.notation.label import Label, LabelKind
from tutor.notation.lexicon import Meaning, said, says
from tutor.notation.names import Names
from tutor.notation.tree import Span
from tutor.notation.unreadable import Broken

_NUMBER = r"[-+]?(?:[0-9]+(?:[.,][0-9]+)?|\.[0-9]+)"
_AXIS_OF = {"x": "x", "h": "x", "y": "y", "v": "y"}
_FORCE = re.compile(r"[FfPR]_?\{?\(?(x|y|h|v|hor|horiz|ver|vert)[')}]*", re.IGNORECASE)
_ALONG = re.compile(r"[Ff]_?\{?(-?[0-9]+)\}?")
_MOMENT = re.compile(r"[Mm]_?(?P<point>\{[^{}]+\}|[^{}]+)")
_SUMMED = re.compile(r"(?:sum|sigma)(?=[FMfmXYHV])(?P<rest>.*)")
_BARE_JOINT = re.compile(r"[^\W\d_]['\d]*")


@dataclass(frozen=True)
class Heading:
    """A heading found in a text: what it names, where it ends, and what of it was passed over.

    `summed` says that it names a sum or a direction, and not only a place.
    """

    label: Label | None
    end: int
    summed: bool
    passed: tuple[Span, ...] = ()


@dataclass
class Head:
    """What the tokens of a heading have said so far."""

    text: str
    names: Names
    end: int
    kind: LabelKind | None = None
    point: str | tuple[float, float] | None = None
    joint: str | None = None
    degrees: float | None = None
    summed: bool = False
    whole: bool = False
    settled: bool = False
    pending: Literal["", "point", "joint", "angle", "across"] = ""
    depth: int = 0
    level: bool = False
    upright: bool = False
    turning: bool = False
    numbered: bool = False
    worded: bool = False
    words: int = 0
    unknown: list[Span] = field(default_factory=list)

    def take(self, found: re.Match[str], at: int, prefix: bool) -> bool:
        """Takes in one token; False where it is no part of a heading."""
        kind = str(found.lastgroup)
        start, stop = found.span(kind)
        said_here = self.text[start:stop]
        if prefix and kind in ("number", "zero") and not self._goes_on(kind):
            return False
        return bool(getattr(self, f"_{kind}")(said_here, start, stop, prefix))

    def _goes_on(self, kind: str) -> bool:
        if kind == "number":
            return self.pending in ("angle", "across", "joint")
        return self.summed

    def _point(self, word: str, start: int, stop: int, prefix: bool) -> bool:
        x, y = (float(n.replace(",", ".")) for n in _coordinates(word))
        self.point, self.kind, self.settled = (x, y), self.kind or "moment", True
        return self.kind == "moment"

    def _zero(self, word: str, start: int, stop: int, prefix: bool) -> bool:
        self.settled = self.settled or self.summed
        return True

    def _arrow(self, word: str, start: int, stop: int, prefix: bool) -> bool:
        if prefix and self.settled and self.depth == 0:
            return False
        if word in "↑↓^":
            self.upright = True
        else:
            self.level = True
        self.settled = self.depth == 0
        return True

    def _turn(self, word: str, start: int, stop: int, prefix: bool) -> bool:
        self.turning, self.pending = True, self.pending or "point"
        self.settled = self.depth == 0
        return True

    def _sum(self, word: str, start: int, stop: int, prefix: bool) -> bool:
        self.summed, self.settled = True, False
        return True

    def _number(self, word: str, start: int, stop: int, prefix: bool) -> bool:
        digits = re.match(r"-?[0-9]+(?:[.,][0-9]+)?", word)
        assert digits is not None
        if self.pending in ("angle", "across"):
            self.degrees = float(digits[0].replace(",", "."))
            self.degrees += 90.0 * (self.pending == "across")
            self.pending, self.settled = "", True
            return True
        joint = self.names.joint(digits[0])
        if joint is not None:
            return self._place(joint)
        return self.numbered

    def _mark(self, word: str, start: int, stop: int, prefix: bool) -> bool:
        if word in "([{":
            if (
                prefix
                and self.settled
                and not re.match(
                    r"[(\[{] *(?:[-+←→↑↓↺↻^]|about|at|a?c?cw|taking|positive|up\b|down\b|left\b|right\b)",
                    self.text[start:],
                )
            ):
                return False
            self.depth += 1
        elif word in ")]}":
            self.depth -= 1
            if prefix and self.depth < 0:
                return False
            self.settled = self.depth == 0 and self._known()
        elif word in "⊥∥":
            self.kind, self.pending = "along", "across" if word == "⊥" else "angle"
            self.summed = True
        elif prefix and self.settled and self.depth == 0:
            return False
        return True

    def _known(self) -> bool:
        arrow = self.level or self.upright
        return (
            arrow
            or self.kind in ("x", "y")
            or self.point is not None
            or (self.kind == "along" and self.degrees is not None)
        )

    def _word(self, word: str, start: int, stop: int, prefix: bool) -> bool:
        self.words += 1
        word = word.rstrip("_") or word
        if self.pending and self._awaited(word, start, stop):
            return True
        if (
            prefix
            and self.settled
            and not says(word, "about", "joint", "filler", "turn", "positive")
        ):
            return False
        compact = self._compact(word, start, prefix)
        if compact is not None:
            return compact
        if (glued := _SUMMED.fullmatch(word)) is not None:
            self.summed = True
            return bool(self._word(glued["rest"], start + word.index(glued["rest"]), stop, prefix))
        return self._spoken(word, start, stop, prefix)

    def _awaited(self, word: str, start: int, stop: int) -> bool:
        """Whether the word is the joint or the member that the one before it calls for."""
        joint = self.names.joint(word.lstrip("_"))
        if self.pending in ("point", "joint") and joint is not None:
            return self._place(joint)
        like_a_joint = _BARE_JOINT.fullmatch(word) is not None and word.isupper()
        if (
            self.pending in ("point", "joint")
            and like_a_joint
            and not says(word, "x", "y", "moment")
        ):
            raise self._no_joint(start, stop)
        found = self.names.plainly(word)
        if self.pending in ("angle", "across") and len(found) == 1:
            slant = self.names.slant.get(found[0])
            if slant is not None:
                turn = math.degrees(math.atan2(slant.y, slant.x)) + 90.0 * (
                    self.pending == "across"
                )
                self.degrees = turn % 180.0
            self.pending, self.settled = "", True
            return True
        return False

    def _place(self, joint: str) -> bool:
        if self.kind == "moment" or self.turning or self.pending == "point":
            self.point = joint
            self.kind = self.kind or "moment"
        else:
            self.joint = self.joint or joint
        self.pending, self.settled = "", True
        return True

    def _compact(self, word: str, start: int, prefix: bool) -> bool | None:
        """Fx, F_30, M_A and a joint alone; None where the word is none of them."""
        if self.summed and word.lower() in _AXIS_OF and not self.kind:
            return self._axis(_AXIS_OF[word.lower()])
        unknown = self.names.plainly(word) if not self.summed else ()
        if unknown and self.names.joint(word) is None:
            return False
        if (found := _FORCE.fullmatch(word)) is not None:
            self.summed = True
            return self._axis(_AXIS_OF[found[1][0].lower()])
        if (found := _ALONG.fullmatch(word)) is not None and (self.summed or not prefix):
            self.kind, self.degrees, self.summed, self.settled = (
                "along",
                float(found[1]),
                True,
                True,
            )
            return True
        if (found := _MOMENT.fullmatch(word)) is not None and not says(word, "moment"):
            return self._moment(found, word, start)
        joint = self.names.joint(word)
        if joint is None or (joint != word and says(word, "filler", "moment", "force", "x", "y")):
            return None
        if prefix and not self.summed:
            return False
        if word == "R" and re.match(r" *[(\[]? *[←→↑↓]", self.text[start + 1 :]):
            return None
        return self._place(joint)

    def _moment(self, found: re.Match[str], word: str, start: int) -> bool | None:
        joint = self.names.joint(found["point"])
        if joint is not None and (self.names.joint(word) is None or self.summed):
            self.kind, self.summed = "moment", True
            return self._place(joint)
        inner = found["point"].strip("{}")
        alone = self.summed or (_BARE_JOINT.fullmatch(inner) is not None and inner.isupper())
        if alone and self.names.joint(word) is None:
            raise self._no_joint(start + found.start("point"), start + found.end("point"))
        return None

    def _no_joint(self, start: int, end: int) -> Broken:
        joints = self.names.joints
        listed = ", ".join(joints[:12]) + (" and so on" if len(joints) > 12 else "")
        return Broken("label/joint", start, end, joints=listed)

    def _axis(self, axis: str) -> bool:
        self.kind = "x" if axis == "x" else "y"
        self.pending, self.settled = "", True
        return True

    def _spoken(self, word: str, start: int, stop: int, prefix: bool) -> bool:
        """A word of the lexicon, or one that is not understood."""
        if word == "@" or word.lower() in ("at", "um", "en", "in"):
            self.pending = "point" if self.kind == "moment" else "joint"
            self.settled = False
            return True
        if word == "R":
            self.summed = True
            return True
        meaning = said(word, *_IN_ORDER)
        if prefix and not self.summed and len(word) == 1 and meaning in ("x", "y"):
            return False
        if meaning is not None:
            self._heed(meaning)
            return True
        if prefix:
            return False
        if self.names.meanings(word) and not word.islower():
            return False
        if self.summed and not self.worded and self.kind is None and len(word) <= 2:
            raise Broken("label", start, stop)
        self.unknown.append(Span(start, stop))
        return True

    def _heed(self, meaning: Meaning) -> None:
        """Takes in what a word of the lexicon says."""
        changes = dict(_SAYS.get(meaning, {}))
        self.worded = self.worded or meaning in _SAYS
        if meaning == "joint" and self.kind == "moment":
            changes["pending"] = "point"
        if meaning == "along" and self.kind is not None:
            changes = {
                "summed": True,
                "pending": self.pending if self.pending == "across" else "angle",
            }
        for name, value in changes.items():
            setattr(self, name, value)

    def heading(self, start: int, end: int) -> Heading | None:
        """What the heading comes to; None where it says nothing at all."""
        start += len(self.text[start:end]) - len(self.text[start:end].lstrip())
        stop = max(start, start + len(self.text[start:end].rstrip()))
        span = Span(start, stop)
        if self.turning and self.kind is None:
            self.kind, self.point = "moment", self.point or self.joint
        kind: LabelKind | None = self.kind
        if kind is None and self.level != self.upright:
            kind = "x" if self.level else "y"
        point = self.point if kind == "moment" else self.joint
        if kind == "moment" and point is None:
            point = self.joint
        summed = self.summed or kind is not None
        if kind is None and point is None and not self.whole:
            if not (self.words or self.numbered):
                return None
            return Heading(None, end, summed, (span,))
        label = Label(kind, point, self.degrees, span, self.whole)
        return Heading(label, end, summed, tuple(self.unknown))


def _coordinates(point: str) -> list[str]:
    """The two numbers of "(4, 0)", "(4,5; 0)" or "(4 m, 0)"."""
    halves = point.split(";") if ";" in point else point.rsplit(",", 1)
    return [found[0] for half in halves if (found := re.search(_NUMBER, half)) is not None]


_SAYS: Mapping[Meaning, Mapping[str, Any]] = {
    "sum": {"summed": True, "settled": False},
    "force": {"summed": True, "settled": False},
    "resolve": {},
    "moment": {"kind": "moment", "summed": True, "pending": "point", "settled": False},
    "about": {"pending": "point"},
    "joint": {"pending": "joint"},
    "x": {"kind": "x", "summed": True, "pending": "", "settled": True},
    "y": {"kind": "y", "summed": True, "pending": "", "settled": True},
    "along": {"kind": "along", "summed": True, "pending": "angle"},
    "across": {"kind": "along", "summed": True, "pending": "across"},
    "whole": {"whole": True},
    "number": {"numbered": True},
}
"""What each word of the lexicon says of a heading."""
_IN_ORDER: tuple[Meaning, ...] = (
    "moment", "sum", "force", "about", "resolve", "joint", "x", "y", "along", "across", "whole",
    "number", "body", "turn", "positive", "up", "down", "left", "right", "filler", "is",
)  # fmt: skip
