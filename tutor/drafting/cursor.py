"""What stands next in a statement: its words one by one, and the numbers, units and angles in them?"""

from __future__ import annotations

from tutor.drafting.entries import Entry, applied
from tutor.drafting.names import AT, SHORT_WAYS, WAYS, joint_meant
from tutor.drafting.words import UNITS, Bad, Word, number_of
from tutor.model import Problem
from tutor.model.parts import PushDirection
from tutor.notation import Exact

LONG_UNITS = frozenset(unit for unit in UNITS.values() if len(unit) > 1)
ANGLES = "write degrees from +x, counter-clockwise, from -360 to 360"
DEGREES = ("deg", "degrees", "°")


class Cursor:
    """A place among the words of a statement, which goes on as they are read.

    `problem` is the truss with what was entered so far, `entries` what that was.
    """

    def __init__(self, problem: Problem, words: list[Word]) -> None:
        self.problem = problem
        self.words = words
        self.place = 0
        self.entries: list[Entry] = []

    @property
    def done(self) -> bool:
        """Whether every word was read."""
        return self.place >= len(self.words)

    def enter(self, entry: Entry) -> None:
        """Take an entry; what is read after it sees the truss with it."""
        self.entries.append(entry)
        self.problem = applied(self.problem, entry)

    def peek(self, ahead: int = 0) -> Word | None:
        """The word that comes next, or so many behind it; None behind the last."""
        place = self.place + ahead
        return self.words[place] if place < len(self.words) else None

    def next_is(self, *known: str) -> bool:
        """Whether the next word is one of these; it is passed over then."""
        word = self.peek()
        if word is None or word.lower not in known:
            return False
        self.place += 1
        return True

    def take(self, after: Word, wanted: str) -> Word:
        """The next word; Bad where there is none."""
        word = self.peek()
        if word is None:
            raise Bad(after.text, "something is missing after this", f"write {wanted}", after)
        self.place += 1
        return word

    def number_at(self, ahead: int) -> bool:
        """Whether the word so many ahead begins as a number does."""
        word = self.peek(ahead)
        return word is not None and word.is_number

    def length(self, word: Word, name: str) -> Exact:
        """A coordinate of the joint `name` that stands in this word; Bad."""
        if not word.is_number:
            cure = f"write x and y, like {name} 4 0"
            raise Bad(word.text, f"joint {name} wants two numbers", cure, word)
        number, unit = number_of(word, f"the place of {name}", self.problem.length)
        self.unit(word, unit, self.problem.length)
        return number

    def distance(self, word: Word) -> Exact:
        """A distance in this word, more than nothing; Bad."""
        if not word.is_number:
            cure = "write how far, like F 3 right of A, or F 5 at 30 from A"
            raise Bad(word.text, "a distance is wanted here", cure, word)
        number, unit = number_of(word, "the distance", self.problem.length)
        self.unit(word, unit, self.problem.length)
        if number.value < 0:
            cure = "write the opposite way, without the sign"
            raise Bad(word.text, "a distance is negative", cure, word)
        return number

    def size(self, word: Word) -> Exact:
        """The size of a load in this word; Bad."""
        size, unit = number_of(word, "the size of a load", self.problem.force)
        self.unit(word, unit, self.problem.force)
        if abs(size.value) < 1e-9:
            raise Bad(word.text, "a load of this size is no load", "give it a size", word)
        if size.value < 0:
            cure = "write the size without the sign, and the opposite way"
            raise Bad(word.text, "the size of a load is negative", cure, word)
        return size

    def unit(self, word: Word, unit: str, own: str) -> None:
        """Pass over a unit that is the truss's own; Bad for another."""
        following = self.peek()
        if not unit and following is not None and following.lower in UNITS:
            after = self.peek(1)
            spelled = len(following.text) > 2 and UNITS[following.lower] == own
            if (
                following.text == own
                or (following.text.lower() == own.lower() and after is None)
                or (spelled and joint_meant(self.problem, following.text) is None)
            ):
                unit = own
                self.place += 1
            elif joint_meant(self.problem, following.text) is None and (
                after is None or not after.is_number or following.text in LONG_UNITS
            ):
                unit = UNITS[following.lower]
        if unit and unit != own:
            cure = f"write it in {own}, or type {unit} alone to change the unit of the whole truss"
            raise Bad(word.text, f"this truss is in {own}, not {unit}", cure, word)

    def angle(self, word: Word) -> Exact:
        """The angle behind this word, perhaps with an at before it; Bad."""
        self.next_is(*AT)
        number = self.take(word, "an angle in degrees, like 150")
        angle, unit = number_of(number, "the angle")
        if unit:
            raise Bad(number.text, "an angle is in degrees", ANGLES, number)
        if abs(angle.value) > 360:
            raise Bad(number.text, "an angle is larger than a full turn", ANGLES, number)
        self.next_is(*DEGREES)
        return angle


def way_of(word: Word) -> PushDirection | None:
    """The way up, down, left or right that a word says; None where it says none."""
    way = WAYS.get(word.lower) or SHORT_WAYS.get(word.text)
    for known in ("up", "down", "left", "right"):
        if way == known:
            return known
    return None
