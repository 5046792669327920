"""What have the words of a heading said so far? One token after another."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import Literal

from tutor.notation.elements.label import Between, LabelKind
from tutor.notation.elements.lexicon import Meaning, said, says
from tutor.notation.elements.tree import Span
from tutor.notation.elements.unreadable import Broken
from tutor.notation.headings import head_words
from tutor.notation.headings.head_words import axis_at, axis_leads, coordinates, direction, no_joint
from tutor.notation.naming.names import Names


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
    between: Between | None = None
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
    coordinates: list[float] = field(default_factory=list)

    def take(self, found: re.Match[str], at: int, prefix: bool) -> bool:
        """Takes in one token; False where it is no part of a heading."""
        kind = str(found.lastgroup)
        start, stop = found.span(kind)
        said_here = self.text[start:stop]
        if prefix and kind in ("number", "zero") and not self._goes_on(kind, stop):
            return False
        return bool(getattr(self, f"_{kind}")(said_here, start, stop, prefix))

    def _goes_on(self, kind: str, stop: int) -> bool:
        if kind == "zero":
            return self.summed
        angle = self.text[stop - 1] in "°g"
        added = not angle and head_words.ADDED.match(self.text, stop) is not None
        return self.pending in ("angle", "across", "joint") and not added

    def _point(self, word: str, start: int, stop: int, prefix: bool) -> bool:
        begun = not prefix or self.pending or self.turning or self.words or self.summed
        x, y = (float(n.replace(",", ".")) for n in coordinates(word))
        self.point, self.kind, self.settled = (x, y), self.kind or "moment", True
        return bool(begun) and self.kind == "moment"

    def _pair(self, word: str, start: int, stop: int, prefix: bool) -> bool:
        """Two numbers with a comma alone between them: a moment point, else one number."""
        if self.kind == "moment" and self.point is None and not (self.coordinates or prefix):
            self.pending = ""
            return self._point(word, start, stop, prefix)
        goes_on = not prefix or self._goes_on("number", stop)
        return goes_on and self._number(word, start, stop, prefix)

    def _zero(self, word: str, start: int, stop: int, prefix: bool) -> bool:
        self.settled = self.settled or self.summed
        return self.summed or bool(self.kind or self.level or self.upright or self.turning)

    def _arrow(self, word: str, start: int, stop: int, prefix: bool) -> bool:
        place_alone = self.joint and not (self.kind or self.level or self.upright)
        if prefix and self.settled and self.depth == 0 and not place_alone:
            return False
        slanted = word in "↖↗↘↙"
        self.kind = "along" if slanted else self.kind
        self.upright = self.upright or word in "↑↓^"
        self.level = self.level or not (slanted or word in "↑↓^")
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
        slanted = self.kind == "along" and not self._known() and word[-1] in "°g"
        if self.pending in ("angle", "across") or slanted:
            self.degrees = float(digits[0].replace(",", "."))
            self.degrees += 90.0 * (self.pending == "across")
            self.pending, self.settled = "", True
            return True
        if (joint := self.names.joint(digits[0])) is not None:
            return self._place(joint)
        if self.kind == "moment" and self.point is None and not prefix:
            return self._coordinate(float(digits[0].replace(",", ".")))
        return self.numbered

    def _coordinate(self, number: float) -> bool:
        """A number of a moment point without brackets: moment 4, 0."""
        self.coordinates.append(number)
        if len(self.coordinates) == 2:
            self.point, self.settled, self.pending = (self.coordinates[0], number), True, ""
        return True

    def _mark(self, word: str, start: int, stop: int, prefix: bool) -> bool:
        if word in "([{":
            self.depth += 1
            way = head_words.WAY_IN_BRACKETS.match(self.text, start)
            return not (prefix and self.settled) or way is not None
        if word in ")]}":
            self.depth -= 1
            if prefix and self.depth < 0:
                return False
            self.settled = self.depth == 0 and self._known()
        elif word in "⊥∥":
            self.kind, self.pending = "along", "across" if word == "⊥" else "angle"
            self.summed = True
        elif prefix and self.settled and self.depth == 0:
            return head_words.heading_goes_on(self.text, start, stop)
        return True

    def _known(self) -> bool:
        return (
            self.level
            or self.upright
            or self.kind in ("x", "y")
            or self.point is not None
            or bool(self.turning and self.joint)
            or (self.kind == "along" and (self.degrees, self.between) != (None, None))
        )

    def _word(self, word: str, start: int, stop: int, prefix: bool) -> bool:
        self.words += 1
        word = head_words.AXIS_SAID.sub("", word.rstrip("_")) or word
        if self.pending and self._awaited(word, start, stop):
            return True
        if (
            prefix
            and self.settled
            and not says(word, "about", "joint", "filler", "turn", "positive")
            and not (self.joint and not self.kind and len(word) > 3 and says(word, "x", "y"))
        ):
            return False
        if (compact := self._compact(word, start, prefix)) is not None:
            return compact
        if (rest := head_words.summed(word, self.names, not prefix)) is not None:
            self.summed = True
            return bool(self._word(rest, start + word.index(rest), stop, prefix))
        return self._spoken(word, start, stop, prefix)

    def _member(self, word: str, start: int, stop: int, prefix: bool) -> bool:
        """A member with a dash between its joints, where one is called for: along U1-U2."""
        return bool(self.pending) and self._awaited(word, start, stop)

    def _awaited(self, word: str, start: int, stop: int) -> bool:
        """Whether the word is the joint or the member that the one before it calls for."""
        joint, placing = self.names.joint(word.lstrip("_")), self.pending in ("point", "joint")
        if placing and joint is not None:
            return self._place(joint)
        like_a_joint = head_words.BARE_JOINT.fullmatch(word) is not None and word.isupper()
        if placing and like_a_joint and not says(word, "x", "y", "moment"):
            raise no_joint(self.names, start, stop)
        if placing or not self.pending or head_words.is_no_line(self.text, start, stop):
            return False
        way = direction(word, self.names, 90.0 * (self.pending == "across"))
        if way is None:
            return False
        self.degrees, self.between = way
        self.pending, self.settled = "", True
        return True

    def _place(self, joint: str) -> bool:
        if self.kind == "moment" or self.turning or self.pending == "point":
            self.point = joint if self.point is None or not self.words else self.point
            self.kind = self.kind or "moment"
        elif self.joint not in (None, joint):
            return False
        else:
            self.joint = joint
        self.pending, self.settled = "", True
        return True

    def _compact(self, word: str, start: int, prefix: bool) -> bool | None:
        """Fx, F_30, M_A and a joint alone; None where the word is none of them."""
        if self.summed and word.lower() in head_words.AXIS_OF and not self.kind:
            return self._axis(head_words.AXIS_OF[word.lower()])
        own = not self.summed or (self.kind == "moment" and "_" in word)
        unknown = self.names.plainly(word) if own else ()
        of_sum = head_words.SUM_BEFORE_COLON.match(f"{word}{self.text[self.end :]}") is not None
        if unknown and self.names.joint(word) is None and not of_sum:
            return False
        if (found := head_words.FORCE.fullmatch(word)) is not None:
            self.summed = True
            return self._axis(head_words.AXIS_OF[found[1][0].lower()])
        if self.summed and (there := axis_at(word, self.names)) is not None:
            return self._place(there[1]) and self._axis(there[0])
        if (found := head_words.ALONG.fullmatch(word)) is not None and (self.summed or not prefix):
            self.kind, self.degrees = "along", float(found[1])
            self.summed = self.settled = True
            return True
        if (found := head_words.MOMENT.fullmatch(word)) is not None and not said(
            word, *head_words.IN_ORDER
        ):
            return self._moment(found, word, start)
        joint = self.names.joint(word)
        if word == "F" and self.summed and self.kind is None:
            return True
        if joint is None or (joint != word and says(word, "filler", "moment", "force", "x", "y")):
            return None
        way = self.depth and head_words.JOINT_AND_WAY.match(self.text, start + len(word))
        if prefix and not (self.summed or way):
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
        alone = (
            len(inner) < 3
            if self.summed
            else inner.isupper() and head_words.BARE_JOINT.fullmatch(inner)
        )
        if alone and self.names.joint(word) is None:
            raise no_joint(self.names, start + found.start("point"), start + found.end("point"))
        return None

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
        meaning = said(word, *head_words.IN_ORDER)
        axis = prefix and not self.summed and len(word) == 1 and meaning in ("x", "y")
        if axis and not axis_leads(word, self.text[stop : self.end], self.names):
            return False
        if meaning in ("x", "y") and not prefix and self._clashes(meaning, word, start, stop):
            return self.kind == "moment"
        if meaning is not None:
            self._heed(meaning)
            return True
        if prefix:
            return False
        if self.names.meanings(word) and not word.islower():
            return False
        if says(word, "because", "remark") or head_words.in_turn(word, self.text, stop):
            return True
        if self.summed and not self.worded and self.kind is None and len(word) <= 2:
            raise Broken("label", start, stop)
        self.unknown.append(Span(start, stop))
        return True

    def _clashes(self, axis: str, word: str, start: int, stop: int) -> bool:
        """Whether an axis comes behind another sum; raises Broken where it stands for a joint."""
        if self.kind == "moment" and self.point is None and len(word) == 1:
            raise no_joint(self.names, start, stop)
        return self.kind == "moment" or (self.kind in ("x", "y") and self.kind != axis)

    def _heed(self, meaning: Meaning) -> None:
        """Takes in what a word of the lexicon says."""
        about = self.kind == "moment" and self.point is not None and meaning in ("along", "across")
        changes = {} if about else dict(head_words.SAYS.get(meaning, {}))
        self.worded = self.worded or meaning in head_words.SAYS
        if meaning == "joint" and self.kind == "moment":
            changes["pending"] = "point"
        if meaning == "along" and self.kind is not None and not about:
            pending = self.pending if self.pending == "across" else "angle"
            changes = {"summed": True, "pending": pending}
        for name, value in changes.items():
            setattr(self, name, value)
