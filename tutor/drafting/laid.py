"""Which load is laid along which members?

spread 2 down AB BC        2 kN/m down on AB and BC        spread 12 down in all AB
spread 2 down AD by span   so much for each unit of the span instead of the member's length
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from tutor.drafting.cursor import way_of
from tutor.drafting.entries import Entry, Lay
from tutor.drafting.names import path_of
from tutor.drafting.words import FORCES, LENGTHS, UNITS, Bad, Word, number_of
from tutor.model import Problem, Spread
from tutor.model.parts import AXES, PushDirection
from tutor.model.spread import Per, measure_along
from tutor.notation import Exact

HOW = "write spread 2 down AB BC, with by span for a load like snow, or in all for the whole of it"
FOR_EACH = re.compile(
    rf"(?P<number>[-+\d.,]*)(?P<force>{'|'.join(FORCES)}|lbf)/(?P<length>{'|'.join(LENGTHS)})",
    re.IGNORECASE,
)
BESIDE = frozenset(
    [
        *("spread", "a", "on", "over", "along", "the", "and", "of", "load", "member", "members"),
        *("per", "each", "by", "in", "is", "lies", "with"),
    ]
)
WHOLE = frozenset({"all", "total", "altogether"})
MEASURES: dict[str, Per] = {"span": "span", "height": "span", "length": "length", "slope": "length"}


def laid_in_passing(problem: Problem, words: Sequence[Word]) -> list[Entry] | None:
    """The load of a statement with a word like kN/m in it, where all of it can be read so."""
    if not any(FOR_EACH.fullmatch(word.text) for word in words):
        return None
    try:
        return laid(problem, words)
    except Bad:
        return None


def laid(problem: Problem, words: Sequence[Word]) -> list[Entry]:
    """The load that a statement lays on members; Bad where it cannot be read."""
    reader = _Reader(problem)
    for word in words:
        reader.take(word)
    return [Lay(reader.spread(words[0]))]


class _Reader:
    """What was read of a statement so far."""

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        self.on: list[str] = []
        self.sizes: list[Exact] = []
        self.ways: list[PushDirection] = []
        self.per: Per = "length"
        self.total = False

    def take(self, word: Word) -> None:
        if (unit := FOR_EACH.fullmatch(word.text)) is not None:
            self._unit(word, unit)
        elif word.is_number:
            self._size(word)
        elif (way := way_of(word)) is not None and word.lower not in BESIDE:
            self.ways.append(way)
        elif word.lower in WHOLE:
            self.total = True
        elif word.lower in MEASURES:
            self.per = MEASURES[word.lower]
        elif word.text in (self.problem.force, self.problem.length) or word.lower in BESIDE:
            return
        elif word.lower in UNITS:
            raise self._other_unit(word)
        else:
            self._members(word)

    def _unit(self, word: Word, unit: re.Match[str]) -> None:
        own = f"{self.problem.force}/{self.problem.length}".lower()
        if f"{unit['force']}/{unit['length']}".lower().replace("lbf", "lb") != own:
            raise self._other_unit(word)
        if unit["number"]:
            self._size(Word(unit["number"], word.start, word.end))

    def _other_unit(self, word: Word) -> Bad:
        own = f"{self.problem.force} and {self.problem.length}"
        return Bad(word.text, f"this truss is in {own}", "write the numbers in these units", word)

    def _size(self, word: Word) -> None:
        size, unit = number_of(word, "the size of a load")
        if unit and unit != self.problem.force:
            raise self._other_unit(word)
        if size.value < 1e-9:
            cure = "write a size above 0, and the way that it acts"
            raise Bad(word.text, "a load of this size is no load here", cure, word)
        self.sizes.append(size)

    def _members(self, word: Word) -> None:
        for start, end in path_of(self.problem, word):
            member = self.problem.between(start, end)
            if member is None:
                message = f"there is no member from {start} to {end}"
                raise Bad(word.text, message, "join them first, or name one that is there", word)
            if member.name not in self.on:
                self.on.append(member.name)

    def spread(self, first: Word) -> Spread:
        """The whole load; Bad where something of it is missing."""
        if not self.on:
            raise Bad(first.text, "no member is named that the load lies on", HOW, first)
        if len(self.sizes) != len(self.ways) or not self.sizes:
            raise Bad(
                first.text, "each size wants the way that it acts, and each way a size", HOW, first
            )
        if self.total and len(self.sizes) > 1:
            raise Bad(first.text, "a load in all acts one way", HOW, first)
        pushes = tuple(zip(self.ways, self.sizes, strict=True))
        if len({AXES[way][0] == 0 for way in self.ways}) < len(pushes):
            raise Bad(
                first.text, "these pushes are along one line", "write one along each axis", first
            )
        found = Spread(tuple(self.on), pushes, self.per, self.total)
        for way, _ in pushes:
            for name in self.on:
                here = self.problem.member[name]
                if measure_along(self.problem.joint, here, self.per, way).value == 0.0:
                    message = f"member {name} has no span across a load {way}"
                    raise Bad(name, message, "leave by span out", first)
        return found
