"""What does one typed statement about joints, members, supports and loads enter?

A statement is a row of phrases, each beginning with names:

    A 0 0 B 4 0        joints at places; numbers alone name the joints themselves
    AB BC CD, ABCD     members, one by one or as a path
    A pin              supports: pin, roller, roller 150 (its push, in degrees), link -1 4
    C D 12 down        loads: pushes along the axes, or 5 at 210 (degrees)
"""

from __future__ import annotations

from tutor.drafting.cursor import Cursor, way_of
from tutor.drafting.entries import Entry, Hold, Join, Push, Put
from tutor.drafting.lone_numbers import (
    half_there,
    load_on_member,
    no_way,
    place_of_member,
    span_of_member,
    which_way,
)
from tutor.drafting.names import (
    AT,
    SHORT_WAYS,
    SUPPORT_WORDS,
    WAYS,
    check_spelling,
    free_name,
    joint_meant,
    member_meant,
    needed,
    new_name,
    path_of,
)
from tutor.drafting.surfaces import slope_or_wall
from tutor.drafting.words import FORCES, UNITS, Bad, Word, pair_in
from tutor.model import Load, Support
from tutor.model.parts import PushDirection
from tutor.model.supports import SUPPORTS
from tutor.notation import Exact

LOADS = "write a size and a way, like C 12 down 3 right, or C 5 at 210"
PUSHES: dict[PushDirection, int | None] = {"right": 0, "up": None, "left": 180, "down": 270}
"""The way in which a roller pushes, in degrees; None on a level floor, which needs no angle."""


class Phrases(Cursor):
    """Reads the words of one statement from left to right; the entries are checked as they come."""

    def read(self) -> list[Entry]:
        """All entries of the statement; Bad where something cannot be read."""
        while not self.done:
            self._phrase()
        return self.entries

    def _phrase(self) -> None:
        if self.words[self.place].is_number:
            self._refuse_force(self.words[self.place])
            self._point(free_name(self.problem))
            return
        names = self._names()
        word = self.peek()
        if not names:
            assert word is not None
            raise Bad(
                word.text, "no joint is named before this", "write it as C pin or C 12 down", word
            )
        if word is None or not self._is_predicate(word):
            self._members(names)
        elif word.lower in SUPPORT_WORDS:
            self._supports(self._targets(names))
        elif self._is_load():
            self._loads(self._targets(names))
        else:
            self._refuse_size(names[-1], word)
            self._members(names[:-1])
            if word.lower in AT:
                self.place += 1
            self._point(self._placed(names[-1]))

    def _names(self) -> list[Word]:
        names = []
        while (word := self.peek()) is not None and not self._is_predicate(word):
            names.append(word)
            self.place += 1
        return names

    def _is_predicate(self, word: Word) -> bool:
        return (
            word.is_number or word.lower in WAYS or word.lower in SUPPORT_WORDS or word.lower in AT
        )

    # Joints

    def _placed(self, word: Word) -> str:
        """The joint that a place is for: one that is there, or a new one; in quotes, of this very name."""
        known = joint_meant(self.problem, word.text)
        if known is None or (word.quoted and known != word.text):
            return new_name(word)
        return known

    def _point(self, name: str) -> None:
        word = self.take(self.words[self.place - 1], "x and y, like A 4 0")
        both = pair_in(word)
        following = self.peek()
        if both is not None and (following is None or not following.is_number):
            x, y = (self.length(part, name) for part in both)
        else:
            x = self.length(word, name)
            y = self.length(self.take(word, f"y too, like {name} {word.text} 0"), name)
        self.enter(Put(name, x, y))

    # Members

    def _members(self, names: list[Word]) -> None:
        joints = [joint_meant(self.problem, word.text) for word in names]
        if len(names) == 2 and joints[0] and joints[1]:
            if joints[0] == joints[1]:
                message = f"a member cannot go from {joints[0]} to {joints[0]}"
                raise Bad(names[1].text, message, "name two different joints", names[1])
            self.enter(Join(joints[0], joints[1]))
            return
        for word in names[1:]:
            check_spelling(self.problem, word)
        for word in names:
            for start, end in path_of(self.problem, word):
                self.enter(Join(start, end))

    def _targets(self, names: list[Word]) -> list[str]:
        """The joints that a support or load is for: the last names; what stands before is members."""
        first = len(names) - 1
        while first > 0 and joint_meant(self.problem, names[first - 1].text) is not None:
            first -= 1
        member = member_meant(self.problem, names[-1])
        if member is not None and self._is_load():
            raise load_on_member(self.problem, member, self.words[self.place :], names[-1])
        if (lost := half_there(self.problem, names[-1])) is not None and self._is_load():
            raise lost
        targets = [needed(self.problem, word) for word in names[first:]]
        self._members(names[:first])
        return targets

    def _refuse_size(self, name: Word, word: Word) -> None:
        """Bad where a number stands alone behind a member, or one force behind a joint."""
        member = member_meant(self.problem, name)
        if member is not None and not name.quoted:
            lone = pair_in(word) is None and not self.number_at(1)
            raise (span_of_member if lone else place_of_member)(self.problem, member, name)
        after = self.peek(1)
        joint = joint_meant(self.problem, name.text)
        lone = after is None or (
            self.peek(2) is None and after.lower in UNITS and UNITS[after.lower] in FORCES
        )
        if joint is not None and word.is_number and pair_in(word) is None and lone:
            raise which_way(joint, word)

        if joint is not None and after is not None and pair_in(word) is None:
            self._refuse_way(joint, word, after)

    def _refuse_way(self, joint: str, word: Word, after: Word) -> None:
        """Bad where a number behind a joint goes on with a word that is neither way, unit nor name."""
        known = after.is_number or after.lower in UNITS or after.quoted
        if word.is_number and not known and joint_meant(self.problem, after.text) is None:
            raise no_way(joint, word, after)

    def _refuse_force(self, word: Word) -> None:
        """Bad where a force stands before any joint."""
        after = self.peek(1)
        force = after is not None and UNITS.get(after.lower) in FORCES
        if force and after is not None and joint_meant(self.problem, after.text) is None:
            message = "this force has no joint before it, or no way behind it"
            raise Bad(f"{word.text} {after.text}", message, LOADS, word)

    # Supports

    def _supports(self, joints: list[str]) -> None:
        *kinds, last = SUPPORTS
        word = self.take(self.words[-1], f"{', '.join(kinds)} or {last}")
        kind = SUPPORT_WORDS[word.lower]
        angle: Exact | None = None
        anchor: tuple[Exact, Exact] | None = None
        if kind.takes == "angle":
            angle = self._push(joints[0], word)
            if angle is None and not kind.alone:
                cure = f"write an angle from +x behind it, like {joints[0]} {kind.name} 150"
                raise Bad(word.text, "it does not say which way it pushes", cure, word)
        elif kind.takes == "point":
            anchor = self._anchor(word, joints[0])
        for joint in joints:
            if anchor is not None and self._same_place(joint, anchor):
                cure = f"give it a fixed point away from joint {joint}"
                raise Bad(word.text, f"the {kind.name} at {joint} has no length", cure, word)
            self.enter(Hold(Support(joint, kind.name, angle=angle, anchor=anchor)))

    def _push(self, joint: str, word: Word) -> Exact | None:
        """The way in which a roller pushes, where it is not up: degrees, or a way in words."""
        following = self.peek()
        if following is None:
            return None
        if following.is_number or following.lower in AT:
            return self.angle(word)
        refused = slope_or_wall(self.problem, joint, self.words[self.place :])
        if refused is not None:
            raise refused
        way = way_of(following) if following.lower in WAYS else None
        if way is None:
            return None
        self.place += 1
        degrees = PUSHES[way]
        return None if degrees is None else Exact.of(degrees)

    def _anchor(self, word: Word, joint: str) -> tuple[Exact, Exact]:
        wanted = f"the fixed point of the link, like {joint} link -1 4"
        following = self.peek()
        if following is not None and following.lower in (*AT, "to"):
            self.place += 1
        first = self.take(word, wanted)
        both = pair_in(first)
        parts = both if both is not None else (first, self.take(first, wanted))
        x, y = (self.length(part, joint) for part in parts)
        return x, y

    def _same_place(self, joint: str, anchor: tuple[Exact, Exact]) -> bool:
        return self.problem.joint[joint].at == (anchor[0].value, anchor[1].value)

    # Loads

    def _is_load(self) -> bool:
        """Whether a load begins here: a way, or a size with a way or an angle behind it."""
        word, after = self.peek(), self.peek(1)
        if word is None:
            return False
        if word.lower in WAYS:
            return True
        if not word.is_number or after is None:
            return False
        if after.lower in UNITS and after.lower not in SHORT_WAYS:
            following = self.peek(2)
            return following is not None and (
                following.lower in WAYS
                or following.lower in AT
                or (following.text in SHORT_WAYS and not self.number_at(3))
            )
        if after.text in SHORT_WAYS:
            return not self.number_at(2) or self._way_after(3)
        return after.lower in WAYS or after.lower in AT

    def _way_after(self, ahead: int) -> bool:
        word = self.peek(ahead)
        return word is not None and (word.lower in WAYS or word.text in SHORT_WAYS)

    def _loads(self, joints: list[str]) -> None:
        pushes: list[tuple[PushDirection, Exact]] = []
        while self._is_load():
            word = self.take(self.words[-1], LOADS)
            if word.lower in WAYS:
                number = self.take(word, f"a size, like 12 {word.lower}")
                pushes.append((self._way(word), self.size(number)))
                continue
            size = self.size(word)
            way = self.take(word, LOADS)
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
            self.enter(Push(Load(joint, tuple(pushes))))

    def _slanted(self, joints: list[str], size: Exact, way: Word) -> None:
        angle = self.angle(way)
        for joint in joints:
            self.enter(Push(Load(joint, (), size, angle)))

    def _way(self, word: Word) -> PushDirection:
        way = way_of(word)
        if way is None:
            cure = "write up, down, left or right"
            raise Bad(word.text, "this is no way a load can act", cure, word)
        return way
