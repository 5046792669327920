"""Where is a joint that is given by its distances from others?

F 3 right of A               C 2 right 3 up from A       D 4 above B
F 3 right of A 4 above B     x from the one, y from the other
F 5 at 30 from A             a length and an angle, in degrees from +x
F 5 from A 4 from B          two lengths: the point above, unless below, left or right is said
E middle of AB               half way
E 1/3 of AB                  such a share of the way from A to B
E 2 from A along AB          a length along the line from A to B
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from fractions import Fraction
from math import isqrt

from tutor.drafting.cursor import Cursor, way_of
from tutor.drafting.entries import Entry, Put
from tutor.drafting.names import AT, WAYS, joint_meant, member_meant, needed, new_name
from tutor.drafting.words import (
    Bad,
    Word,
    from_fraction,
    number_of,
    pair_in,
    plus,
    worked_out,
)
from tutor.model import Problem
from tutor.notation import Exact

BESIDE = {"above": "up", "over": "up", "below": "down", "under": "down", "beneath": "down"}
MIDDLE = frozenset({"mid", "middle", "midpoint", "midway", "halfway", "between"})
LEVELS = frozenset({"horizontal", "vertical", "x-axis", "y-axis", "+x", "+y"})
"""What an angle is from, and no place is."""
ALONG = frozenset({"along", "towards", "toward", "on"})
MARKS = frozenset({"from", *BESIDE, *MIDDLE})
TWO = re.compile(r"([A-Za-z]\d*)-?([A-Za-z]\d*)")
LIES = ("is", "at", "lies", "the", "in", "a", "joint")
SIGNS = {"right": 1, "up": 1, "left": -1, "down": -1}
SHAPE = "write F 3 right of A, F 4 above B, F 5 at 30 from A, or F 5 from A 4 from B"
ZERO = Exact.of(0)
FAR = 10**12
MOST_TRIED = 1000
Axis = int


def is_measured(problem: Problem, words: Sequence[Word]) -> bool:
    """Whether a statement says places by distances from other joints."""
    if len(words) < 3 or words[0].is_number:
        return False
    if any(word.lower in LEVELS for word in words):
        return False
    for place, word in enumerate(words):
        if joint_meant(problem, word.text) is not None or place == 0:
            continue
        before = words[place - 1]
        if word.lower in MARKS or (word.lower == "of" and before.lower in WAYS):
            return True
        if word.lower in ("of", "along") and before.is_number and _is_of_line(words, place):
            return True
    return False


def _is_of_line(words: Sequence[Word], place: int) -> bool:
    """Whether a share of a line between two other joints follows, there or named earlier in the statement."""
    line = TWO.fullmatch(words[place + 1].text) if place + 1 < len(words) else None
    subject = words[place - 2].text.upper() if place > 1 else ""
    return line is not None and subject not in (line[1].upper(), line[2].upper())


class Measured(Cursor):
    """Reads a statement of such places from left to right."""

    def read(self) -> list[Entry]:
        """A place for each joint named; Bad where it cannot be read."""
        while not self.done:
            word = self.take(self.words[-1], SHAPE)
            name = joint_meant(self.problem, word.text) or new_name(word)
            while (following := self.peek()) is not None and following.lower in LIES:
                if following.lower == "a" and self.number_at(1):
                    break
                self.place += 1
            x, y = self._plain(name) or self._place(word)
            self.enter(Put(name, x, y))
        return self.entries

    def _plain(self, name: str) -> tuple[Exact, Exact] | None:
        """x and y themselves, where they stand there: two numbers, or one pair."""
        word = self.peek()
        if word is None or not word.is_number:
            return None
        both = pair_in(word)
        if both is None and not self.number_at(1):
            return None
        self.place += 1
        first, second = both or (word, self.take(word, "y too"))
        return self.length(first, name), self.length(second, name)

    def _place(self, word: Word) -> tuple[Exact, Exact]:
        if self.next_is(*MIDDLE):
            return self._middle(word)
        if self.number_at(0) and (shared := self._share()) is not None:
            return shared
        found: dict[Axis, Exact] = {}
        bases: list[str] = []
        base = self._joint(word) if self.next_is("from") else None
        while base is not None or self.number_at(0):
            moved = self._moves(word) if self.number_at(0) else {}
            if isinstance(moved, tuple):
                return moved
            base = base or (bases[-1] if bases and self.done else self._base(word))
            if not moved or moved.keys() & found.keys():
                raise Bad(word.text, "its place is not told wholly, or twice", SHAPE, word)
            for axis, offset in moved.items():
                found[axis] = plus(self._at(base)[axis], offset, word)
            bases.append(base)
            base = None
        if not bases:
            raise Bad(word.text, "a distance from another joint is missing", SHAPE, word)
        first = self._at(bases[0])
        return found.get(0, first[0]), found.get(1, first[1])

    def _moves(self, name: Word) -> dict[Axis, Exact] | tuple[Exact, Exact]:
        """How far along each axis, up to the joint that this is from; or a place of two lengths."""
        moved: dict[Axis, Exact] = {}
        while self.number_at(0):
            word = self.take(name, SHAPE)
            size = self.distance(word)
            following = self.peek()
            if following is not None and following.lower in AT:
                return dict(enumerate(_along(size, self.angle(word), word)))
            if self.next_is("from"):
                return self._from(size, word)
            way = None if following is None else _way(following)
            if way is None:
                raise Bad(word.text, "the way from the other joint is missing", SHAPE, word)
            self.place += 1
            axis = 0 if way in ("left", "right") else 1
            signed = plus(ZERO, size, word, SIGNS[way])
            moved[axis] = plus(moved[axis], signed, word) if axis in moved else signed
        return moved

    def _from(self, size: Exact, word: Word) -> dict[Axis, Exact] | tuple[Exact, Exact]:
        """A length from a joint that is named already: with an angle, or with a second length."""
        base = self._joint(word)
        following = self.peek()
        if following is not None and following.lower in AT:
            way = _along(size, self.angle(word), word)
            at = self._at(base)
            return plus(at[0], way[0], word), plus(at[1], way[1], word)
        if self.next_is(*ALONG):
            return self._along_line(base, size, word)
        if not self.number_at(0):
            message = f"a length from {base} alone does not give a place"
            raise Bad(word.text, message, SHAPE, word)
        second = self.take(word, SHAPE)
        other = self.distance(second)
        if not self.next_is("from", "of"):
            raise Bad(second.text, "the joint that this length is from is missing", SHAPE, second)
        end = self._joint(second)
        side = self.peek()
        said = None if side is None else _way(side)
        if said is not None:
            self.place += 1
        return self._crossing((base, size), (end, other), said or "up", word)

    def _share(self) -> tuple[Exact, Exact] | None:
        """Such a share of the way along a member: 1/3 of AB; None where this is something else."""
        word, of, line = (self.peek(ahead) for ahead in range(3))
        if word is None or of is None or line is None or of.lower not in ("of", "along"):
            return None
        pair = member_meant(self.problem, line)
        if pair is None:
            return None
        self.place += 3
        share, unit = number_of(word, "the share")
        if of.lower == "along" and ("/" not in word.text or unit):
            self.unit(word, unit, self.problem.length)
            return self._reached(pair, share, word)
        if unit or not 0 < share.value < 1:
            cure = f"write a share like 1/3, or a length, like 2 from {pair[0]} along {line.text}"
            raise Bad(word.text, "a share of a member lies between 0 and 1", cure, word)
        return self._between(pair, share, word)

    def _along_line(self, base: str, size: Exact, word: Word) -> tuple[Exact, Exact]:
        """So far from a joint along a member, or towards another joint."""
        line = self.take(word, "the member it lies along, like AB")
        pair = member_meant(self.problem, line) or (base, needed(self.problem, line))
        if base not in pair or pair[0] == pair[1]:
            cure = f"name a member that ends at {base}"
            raise Bad(line.text, f"this does not begin at {base}", cure, line)
        other = pair[1] if pair[0] == base else pair[0]
        return self._reached((base, other), size, word)

    def _reached(self, pair: tuple[str, str], size: Exact, word: Word) -> tuple[Exact, Exact]:
        """The place so far from the first joint towards the second."""
        (ax, ay), (bx, by) = (self._at(name) for name in pair)
        across, up = plus(bx, ax, word, -1), plus(by, ay, word, -1)
        length = worked_out(f"sqrt(({across.text})^2+({up.text})^2)", word)
        if length.value <= 0:
            raise Bad(word.text, f"{pair[0]} and {pair[1]} are at one place", SHAPE, word)
        return self._between(pair, worked_out(f"({size.text})/({length.text})", word), word)

    def _between(self, pair: tuple[str, str], share: Exact, word: Word) -> tuple[Exact, Exact]:
        """The place at such a share of the way from the first joint to the second."""
        (ax, ay), (bx, by) = (self._at(name) for name in pair)
        x, y = (
            plus(one, worked_out(f"({share.text})*({plus(other, one, word, -1).text})", word), word)
            for one, other in ((ax, bx), (ay, by))
        )
        return x, y

    def _crossing(
        self, one: tuple[str, Exact], other: tuple[str, Exact], way: str, word: Word
    ) -> tuple[Exact, Exact]:
        """The point at these lengths from two joints, on the side that is said."""
        numbers = [*self._at(one[0]), *self._at(other[0]), one[1], other[1]]
        ax, ay, bx, by, d1, d2 = (Fraction(repr(n.value)) if n.fraction is None else n.fraction
                                  for n in numbers)  # fmt: skip
        dx, dy = bx - ax, by - ay
        apart = dx * dx + dy * dy
        if apart == 0:
            raise Bad(word.text, "both lengths are from one place", "name two joints", word)
        along = (d1 * d1 - d2 * d2 + apart) / (2 * apart)
        aside = d1 * d1 / apart - along * along
        if aside < 0:
            message = f"no point is so far from {one[0]} and from {other[0]}"
            raise Bad(word.text, message, "look at the two lengths again", word)
        foot = (ax + along * dx, ay + along * dy)
        square = (-dy, dx)
        axis = 0 if way in ("left", "right") else 1
        turn = 1 if square[axis] * SIGNS[way] >= 0 else -1
        x, y = (_beside(foot[i], turn * square[i], aside, word) for i in (0, 1))
        return x, y

    def _middle(self, word: Word) -> tuple[Exact, Exact]:
        """Half way between two joints."""
        while self.next_is("of", "between", "and", "the", "way"):
            pass
        first = self.take(word, "the two joints, like E middle of AB")
        pair = member_meant(self.problem, first)
        if pair is None:
            self.next_is("and")
            second = self.take(first, "both joints, like E middle of AB")
            pair = needed(self.problem, first), needed(self.problem, second)
        (ax, ay), (bx, by) = (self._at(name) for name in pair)
        return _half(plus(ax, bx, word), word), _half(plus(ay, by, word), word)

    def _base(self, word: Word) -> str:
        """The joint that distances are from, perhaps with `of` or `from` before it."""
        self.next_is("of", "from")
        return self._joint(word)

    def _joint(self, word: Word) -> str:
        self.next_is("joint")
        return needed(self.problem, self.take(word, "the joint it is from, like F 3 right of A"))

    def _at(self, name: str) -> tuple[Exact, Exact]:
        joint = self.problem.joint[name]
        return joint.x, joint.y


def _way(word: Word) -> str | None:
    return BESIDE.get(word.lower) or way_of(word)


def _along(size: Exact, angle: Exact, word: Word) -> tuple[Exact, Exact]:
    """How far right and up a length at an angle goes."""
    far = size.text if size.fraction is not None else f"({size.text})"
    x, y = (worked_out(f"{far}*{f}({angle.text})", word) for f in ("cos", "sin"))
    return x, y


def _half(number: Exact, word: Word) -> Exact:
    if number.fraction is not None:
        return from_fraction(number.fraction / 2)
    return worked_out(f"({number.text})/2", word)


def _beside(foot: Fraction, way: Fraction, aside: Fraction, word: Word) -> Exact:
    """foot + way sqrt(aside), rational where it is."""
    if way == 0 or aside == 0:
        return from_fraction(foot)
    root = aside.numerator * aside.denominator  # sqrt(n / d) is sqrt(n d) / d
    share = way / aside.denominator
    if isqrt(root) ** 2 == root:
        return from_fraction(foot + share * isqrt(root))
    if root > FAR or foot.denominator > FAR or share.denominator > FAR:
        return worked_out(f"{float(foot) + float(share) * root**0.5:.10g}", word)
    inside = next((n for n in range(min(isqrt(root), MOST_TRIED), 1, -1) if root % (n * n) == 0), 1)
    share, root = share * inside, root // (inside * inside)
    text = f"{share.numerator}*sqrt({root})"
    if share.denominator != 1:
        text += f"/{share.denominator}"
    return worked_out(text if foot == 0 else f"{foot}+({text})", word)
