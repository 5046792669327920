"""What does one typed statement about joints, members, supports and loads enter?

A statement is a row of phrases, each beginning with names:

    A 0 0 B 4 0        joints at places; numbers alone name the joints themselves
    AB BC CD, ABCD     members, one by one or as a path
    A pin              supports: pin, roller, roller 150 (its push, in degrees), link -1 4
    C D 12 down        loads: pushes along the axes, or 5 at 210 (degrees)
"""

from __future__ import annotations

from tutor.drafting.entries import Entry, Hold, Join, Push, Put, applied
from tutor.drafting.names import (
    AT,
    SHORT_WAYS,
    SUPPORTS,
    WAYS,
    check_spelling,
    free_name,
    joint_meant,
    needed,
    new_name,
    path_of,
)
from tutor.drafting.words import UNITS, Bad, Word, number_of, pair_in
from tutor.model import Load, Problem, Support
from tutor.model.parts import PushDirection
from tutor.notation import Exact

LONG_UNITS = frozenset(unit for unit in UNITS.values() if len(unit) > 1)
ANGLES = "write degrees from +x, counter-clockwise, from -360 to 360"
LOADS = "write a size and a way, like C 12 down 3 right, or C 5 at 210"


class Phrases:
    """Reads the words of one statement from left to right; the entries are checked as they come."""

    def __init__(self, problem: Problem, words: list[Word]) -> None:
        self.problem = problem
        self.words = words
        self.place = 0
        self.entries: list[Entry] = []

    def read(self) -> list[Entry]:
        """All entries of the statement; Bad where something cannot be read."""
        while self.place < len(self.words):
            self._phrase()
        return self.entries

    def _phrase(self) -> None:
        if self.words[self.place].is_number:
            self._point(free_name(self.problem))
            return
        names = self._names()
        word = self._peek()
        if not names:
            assert word is not None
            raise Bad(
                word.text, "no joint is named before this", "write it as C pin or C 12 down", word
            )
        if word is None or not self._is_predicate(word):
            self._members(names)
        elif word.lower in SUPPORTS:
            self._supports(self._targets(names))
        elif self._is_load():
            self._loads(self._targets(names))
        else:
            self._members(names[:-1])
            if word.lower in AT:
                self.place += 1
            self._point(self._placed(names[-1]))

    def _peek(self, ahead: int = 0) -> Word | None:
        place = self.place + ahead
        return self.words[place] if place < len(self.words) else None

    def _take(self, after: Word, wanted: str) -> Word:
        """The next word; Bad where there is none."""
        word = self._peek()
        if word is None:
            raise Bad(after.text, "something is missing after this", f"write {wanted}", after)
        self.place += 1
        return word

    def _names(self) -> list[Word]:
        names = []
        while (word := self._peek()) is not None and not self._is_predicate(word):
            names.append(word)
            self.place += 1
        return names

    def _is_predicate(self, word: Word) -> bool:
        return word.is_number or word.lower in WAYS or word.lower in SUPPORTS or word.lower in AT

    def _enter(self, entry: Entry) -> None:
        self.entries.append(entry)
        self.problem = applied(self.problem, entry)

    # Joints

    def _placed(self, word: Word) -> str:
        """The joint that a place is for: one that is there, or a new one; in quotes, of this very name."""
        known = joint_meant(self.problem, word.text)
        if known is None or (word.quoted and known != word.text):
            return new_name(word)
        return known

    def _point(self, name: str) -> None:
        word = self._take(self.words[self.place - 1], "x and y, like A 4 0")
        both = pair_in(word)
        following = self._peek()
        if both is not None and (following is None or not following.is_number):
            x, y = (self._length(part, name) for part in both)
        else:
            x = self._length(word, name)
            y = self._length(self._take(word, f"y too, like {name} {word.text} 0"), name)
        self._enter(Put(name, x, y))

    def _length(self, word: Word, name: str) -> Exact:
        if not word.is_number:
            cure = f"write x and y, like {name} 4 0"
            raise Bad(word.text, f"joint {name} wants two numbers", cure, word)
        number, unit = number_of(word, f"the place of {name}")
        self._unit(word, unit, self.problem.length)
        return number

    def _unit(self, word: Word, unit: str, own: str) -> None:
        """Pass over a unit that is the truss's own; Bad for another."""
        following = self._peek()
        if not unit and following is not None and following.lower in UNITS:
            after = self._peek(1)
            if following.text == own or (following.text.lower() == own.lower() and after is None):
                unit = own
                self.place += 1
            elif joint_meant(self.problem, following.text) is None and (
                after is None or not after.is_number or following.text in LONG_UNITS
            ):
                unit = UNITS[following.lower]
        if unit and unit != own:
            cure = f"write it in {own}, or type {unit} alone to change the unit of the whole truss"
            raise Bad(word.text, f"this truss is in {own}, not {unit}", cure, word)

    # Members

    def _members(self, names: list[Word]) -> None:
        joints = [joint_meant(self.problem, word.text) for word in names]
        if len(names) == 2 and joints[0] and joints[1]:
            if joints[0] == joints[1]:
                message = f"a member cannot go from {joints[0]} to {joints[0]}"
                raise Bad(names[1].text, message, "name two different joints", names[1])
            self._enter(Join(joints[0], joints[1]))
            return
        for word in names[1:]:
            check_spelling(self.problem, word)
        for word in names:
            for start, end in path_of(self.problem, word):
                self._enter(Join(start, end))

    def _targets(self, names: list[Word]) -> list[str]:
        """The joints that a support or load is for: the last names; what stands before is members."""
        first = len(names) - 1
        while first > 0 and joint_meant(self.problem, names[first - 1].text) is not None:
            first -= 1
        targets = [needed(self.problem, word) for word in names[first:]]
        self._members(names[:first])
        return targets

    # Supports

    def _supports(self, joints: list[str]) -> None:
        word = self._take(self.words[-1], "pin, roller or link")
        kind = SUPPORTS[word.lower]
        angle: Exact | None = None
        anchor: tuple[Exact, Exact] | None = None
        following = self._peek()
        if (
            kind == "roller"
            and following is not None
            and (following.is_number or following.lower in AT)
        ):
            angle = self._angle(word)
        elif kind == "link":
            anchor = self._anchor(word, joints[0])
        for joint in joints:
            if anchor is not None and self._same_place(joint, anchor):
                cure = f"give it a fixed point away from joint {joint}"
                raise Bad(word.text, f"the link at {joint} has no length", cure, word)
            if kind == "pin":
                self._enter(Hold(Support(joint, "pin")))
            elif kind == "roller":
                self._enter(Hold(Support(joint, "roller", angle=angle)))
            else:
                self._enter(Hold(Support(joint, "link", anchor=anchor)))

    def _anchor(self, word: Word, joint: str) -> tuple[Exact, Exact]:
        wanted = f"the fixed point of the link, like {joint} link -1 4"
        following = self._peek()
        if following is not None and following.lower in (*AT, "to"):
            self.place += 1
        first = self._take(word, wanted)
        both = pair_in(first)
        parts = both if both is not None else (first, self._take(first, wanted))
        x, y = (self._length(part, joint) for part in parts)
        return x, y

    def _same_place(self, joint: str, anchor: tuple[Exact, Exact]) -> bool:
        return self.problem.joint[joint].at == (anchor[0].value, anchor[1].value)

    # Loads

    def _is_load(self) -> bool:
        """Whether a load begins here: a way, or a size with a way or an angle behind it."""
        word, after = self._peek(), self._peek(1)
        if word is None:
            return False
        if word.lower in WAYS:
            return True
        if not word.is_number or after is None:
            return False
        if after.lower in UNITS and after.lower not in SHORT_WAYS:
            following = self._peek(2)
            return following is not None and (
                following.lower in WAYS
                or following.lower in AT
                or (following.text in SHORT_WAYS and not self._number_at(3))
            )
        if after.text in SHORT_WAYS:
            return not self._number_at(2) or self._way_after(3)
        return after.lower in WAYS or after.lower in AT

    def _number_at(self, ahead: int) -> bool:
        word = self._peek(ahead)
        return word is not None and word.is_number

    def _way_after(self, ahead: int) -> bool:
        word = self._peek(ahead)
        return word is not None and (word.lower in WAYS or word.text in SHORT_WAYS)

    def _loads(self, joints: list[str]) -> None:
        pushes: list[tuple[PushDirection, Exact]] = []
        while self._is_load():
            word = self._take(self.words[-1], LOADS)
            if word.lower in WAYS:
                number = self._take(word, f"a size, like 12 {word.lower}")
                pushes.append((self._way(word), self._size(number)))
                continue
            size = self._size(word)
            way = self._take(word, LOADS)
            if way.lower in AT:
                self.place -= 1
                self._slanted(joints, size, way)
            else:
                pushes.append((self._way(way), size))
        axes = ["y" if way in ("up", "down") else "x" for way, _ in pushes]
        if len(set(axes)) < len(axes):
            cure = "write one push along each axis"
            raise Bad(joints[0], "two pushes of this load are along one line", cure, self.words[-1])
        for joint in joints if pushes else ():
            self._enter(Push(Load(joint, tuple(pushes))))

    def _slanted(self, joints: list[str], size: Exact, way: Word) -> None:
        angle = self._angle(way)
        for joint in joints:
            self._enter(Push(Load(joint, (), size, angle)))

    def _way(self, word: Word) -> PushDirection:
        way = WAYS.get(word.lower) or SHORT_WAYS.get(word.text)
        for known in ("up", "down", "left", "right"):
            if way == known:
                return known
        raise Bad(word.text, "this is no way a load can act", "write up, down, left or right", word)

    def _size(self, word: Word) -> Exact:
        size, unit = number_of(word, "the size of a load")
        self._unit(word, unit, self.problem.force)
        if abs(size.value) < 1e-9:
            raise Bad(word.text, "a load of this size is no load", "give it a size", word)
        if size.value < 0:
            cure = "write the size without the sign, and the opposite way"
            raise Bad(word.text, "the size of a load is negative", cure, word)
        return size

    def _angle(self, word: Word) -> Exact:
        following = self._peek()
        if following is not None and following.lower in AT:
            self.place += 1
        number = self._take(word, "an angle in degrees, like 150")
        angle, unit = number_of(number, "the angle")
        if unit:
            raise Bad(number.text, "an angle is in degrees", ANGLES, number)
        if abs(angle.value) > 360:
            raise Bad(number.text, "an angle is larger than a full turn", ANGLES, number)
        after = self._peek()
        if after is not None and after.lower in ("deg", "degrees", "°"):
            self.place += 1
        return angle
