"""Which of the numbers there are does a student get: the first in their order that meet everything."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Iterable, Iterator, Sequence
from functools import cached_property
from itertools import chain, islice
from pathlib import Path

from tutor.model import Problem, load_problem
from tutor.model.source import read_source
from tutor.variants.conditions import AsWritten, misses
from tutor.variants.lot import lot
from tutor.variants.makes import how_many, made, numbers_at
from tutor.variants.many import Many
from tutor.variants.sure import Sure

MOST_TRIED = 2000
FEW, MANY = 1, 256
"""How many choices of a student are looked at together, first and at most."""
MOST_KEPT = 64
TOGETHER = 5
"""How often the next few of all students of a class are looked at together, before it is one by one."""


class NoVariant(Exception):  # noqa: N818 - a fact about the problem, not a slip
    """No numbers of a problem meet its conditions.

    `condition` is the one that the nearest numbers miss, as the file says it; `nearest` says in
    words which numbers those are and how they miss it; `tried` is how many were.
    """

    def __init__(self, condition: str, nearest: str, tried: int) -> None:
        super().__init__(condition, nearest, tried)
        self.condition = condition
        self.nearest = nearest
        self.tried = tried

    def __str__(self) -> str:
        choices = "the one choice" if self.tried == 1 else f"none of {self.tried} choices"
        meets = "does not meet" if self.tried == 1 else "meets"
        return f"{choices} of numbers {meets} every condition; nearest is {self.nearest}"


class Varied:
    """A problem with `[vary]`, and what is known so far of each of its choices of numbers."""

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        self.count = how_many(problem.vary) if problem.vary is not None else 1
        self._written = AsWritten(problem)
        self._sound: dict[int, Sure] = {}
        self._asked: dict[int, None] = {}
        self._made: dict[int, Problem] = {}

    def index_for(self, set_name: str, student: str) -> int:
        """The number of the choice that one student of a set gets. Raises NoVariant."""
        return self._first_sound(self._in_turn(set_name, student))

    def indices_for(self, set_name: str, students: Sequence[str]) -> list[int]:
        """As `index_for`, for each student of a class. Raises NoVariant where one gets nothing."""
        turns = [self._in_turn(set_name, student) for student in students]
        taken: list[list[list[int]]] = [[] for _ in students]
        waiting = list(range(len(students)))
        for _ in range(TOGETHER):
            for place in waiting:
                taken[place] += islice(turns[place], 1)
            waiting = [place for place in waiting if taken[place]]
            self._look_at(index for place in waiting for index in taken[place][-1])
            waiting = [p for p in waiting if not any(map(self._sound.get, taken[p][-1]))]
        return [self._first_sound(chain(*each)) for each in zip(taken, turns, strict=True)]

    def _first_sound(self, turn: Iterable[list[int]]) -> int:
        """The first choice of a student, a few at a time, that is sound. Raises NoVariant."""
        for few in turn:
            self._look_at(few)
            for index in few:
                self._asked[index] = None
                if self._is_sound(index):
                    return index
        raise self._nothing()

    def of(self, set_name: str, student: str) -> Problem:
        """The problem of one student of a set. Raises NoVariant."""
        if self.problem.vary is None:
            return self.problem
        index = self.index_for(set_name, student)
        if index not in self._made:
            self._made[index] = self._make(index)
        return self._made[index]

    def _in_turn(self, set_name: str, student: str) -> Iterator[list[int]]:
        """The choices that a student may get in their order, a few at a time, then more."""
        order = lot(set_name, problem_name(self.problem), student, self.count)
        tried = islice(order, MOST_TRIED + 1)
        size = FEW
        while few := list(islice(tried, size)):
            yield few
            size = min(2 * size, MANY)

    def _look_at(self, indices: Iterable[int]) -> None:
        """Find out together which of these choices are sound, as far as that can be told together."""
        new = [index for index in dict.fromkeys(indices) if index not in self._sound]
        for start in range(0, len(new), MANY):
            some = new[start : start + MANY]
            self._sound.update(zip(some, self._many.met(some), strict=True))

    def _is_sound(self, index: int) -> bool:
        """Whether choice `index` meets every condition."""
        sound = self._sound[index]
        if sound is None:
            found = self._make(index)
            sound = self._sound[index] = next(misses(found, self._written), None) is None
            if sound:
                self._made[index] = found
        return sound

    @cached_property
    def _many(self) -> Many:
        assert self.problem.vary is not None
        return Many(self.problem, self.problem.vary, self._written)

    def _make(self, index: int) -> Problem:
        assert self.problem.vary is not None
        return made(self.problem, *numbers_at(self.problem.vary, index))

    def _nothing(self) -> NoVariant:
        """Of the choices tried, the one that misses the fewest conditions, and these by the least."""
        assert self.problem.vary is not None
        found = {index: tuple(misses(self._make(index), self._written)) for index in self._asked}

        def far(each: int) -> tuple[int, float]:
            missed = found[each]
            return sum(one.weight for one in missed), sum(one.gap for one in missed)

        index = min(found, key=far)
        nearest = found[index][0]
        numbers, turned = numbers_at(self.problem.vary, index)
        words = [f"{choice.words} = {value.text}" for choice, value in numbers]
        words += ["mirrored"] if turned else []
        missed = f"{', '.join(words)}, which misses “{nearest.condition}”: {nearest.how}"
        return NoVariant(nearest.condition, missed, len(found))


def problem_name(problem: Problem) -> str:
    """The name by which a student's numbers of a problem are drawn: its id, or its file's."""
    if problem.id:
        return problem.id
    return problem.source.stem if problem.source is not None else problem.title


_kept: OrderedDict[int, Varied] = OrderedDict()
_read: OrderedDict[str, tuple[str, Problem]] = OrderedDict()


def varied_of(problem: Problem) -> Varied:
    """The choices of a problem; the last few problems are kept ready."""
    kept = _kept.get(id(problem))
    if kept is None or kept.problem is not problem:
        kept = _kept[id(problem)] = Varied(problem)
    _kept.move_to_end(id(problem))
    while len(_kept) > MOST_KEPT:
        _kept.popitem(last=False)
    return kept


def variant_of(problem: Problem, *, student: str, set: str) -> Problem:
    """One student's problem; the problem itself where nothing of it varies. Raises NoVariant."""
    return varied_of(problem).of(set, student)


def variant(path: str | Path, *, student: str, set: str = "") -> Problem:
    """The problem in the file at `path` with this student's numbers, for the set of that name.

    The same on every machine: see `tutor.variants.lot`. A problem without `[vary]` is the same for
    everyone. Raises ProblemError where the file cannot be used, NoVariant where no numbers meet its
    conditions.
    """
    source = read_source(path)
    key = str(path)
    text, problem = _read.get(key, ("", None))
    if problem is None or text != source.text or source.defects:
        problem = load_problem(path)
        _read[key] = (source.text or "", problem)
        while len(_read) > MOST_KEPT:
            _read.popitem(last=False)
    return variant_of(problem, student=student, set=set)
