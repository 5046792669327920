"""Which entries are right to the figures written, given the steps that lead there?

An entry is right if it is the true value to its own figures, or if some step of the walk gives it
so from right entries: then it may be as far off as those were when they were put in, and no
further. A blank was worked with as well, to three figures as anybody would; what that may add is
bounded, and beyond the bound an entry is left undecided rather than called wrong. An entry farther off
than what passes as hard rounding of a number is right only where the right entries of a body give it as
they are written, to its own last figure: where their roundings may merely explain it, it is coarse, which
is undecided too. Nothing else widens a tolerance, so that an entry that comes to the sheet can only
narrow it.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from tutor.homework.equations_beside import WELL, equations_beside
from tutor.homework.sheet import NEGLIGIBLE, SLOPE, Bodies, ForcePart, Sheet
from tutor.homework.vectors import PARALLEL, Vector
from tutor.homework.work import LEAST_FIGURES, Entry, half_step
from tutor.model import Problem

NOTHING = 1e-6
"""A force so small beside the largest is none at all; common practice, no source."""
CARRIED = 0.03
"""Nobody's roundings come to so much of the largest force; found by trying, no source."""
SURELY = 4.0
"""So many times what roundings in blanks add on the average is more than they ever add."""


@dataclass(frozen=True)
class Off:
    """How far a value may be from the truth as it was carried on (force unit).

    `low` and `high` come from what was written; `doubt` is the variance of what blanks add, and `dark`
    whether there are any on the way.
    """

    low: float
    high: float
    doubt: float
    dark: bool


NO_PART = Off(0.0, 0.0, 0.0, dark=False)


@dataclass(frozen=True)
class Correctness:
    """Which of the entries are right, which are wrong, and which nobody can decide as yet.

    Blanks leave some `open`; some are `coarse`: too far off to be right, as roundings may come to.
    """

    right: frozenset[str]
    wrong: frozenset[str]
    open: frozenset[str]
    coarse: frozenset[str]

    @property
    def undecided(self) -> frozenset[str]:
        return self.open | self.coarse


def correctness(
    problem: Problem,
    bodies: Bodies,
    entries: Mapping[str, Entry],
    true: Mapping[str, float],
    figures: int = LEAST_FIGURES,
) -> Correctness:
    """Which entries are right against `true`, the values that the same bodies have in truth.

    `figures` are those that a blank was worked with.
    """
    walk = _Walk(problem, bodies, entries, true, figures)
    walk.go()
    right, undecided, coarse = map(frozenset, (walk.right, walk.open, walk.coarse))
    wrong = frozenset(entries) - right - undecided - coarse
    return Correctness(right, wrong, undecided, coarse)


class _Walk:
    """All steps that anybody could have taken, from the loads on."""

    def __init__(
        self,
        problem: Problem,
        bodies: Bodies,
        entries: Mapping[str, Entry],
        true: Mapping[str, float],
        figures: int,
    ) -> None:
        self.figures = figures
        self.bodies = bodies
        self.entries = entries
        self.true = true
        self.share = problem.tolerance.remark
        self.nothing = NOTHING * max(map(abs, true.values()), default=0.0)
        largest = self.nothing / NOTHING
        self.little = problem.tolerance.silent * largest
        self.lost = self.little if any(m.name not in entries for m in problem.members) else 0.0
        self.carried = CARRIED * 10 ** (LEAST_FIGURES - figures) * largest
        self.off: dict[str, Off] = {}
        self.blank: dict[tuple[str, str], Off] = {}
        self.right: set[str] = set()
        self.sure: set[str] = set()  # right without any blank on the way
        self.open: set[str] = set()
        self.coarse: set[str] = set()
        self.at = bodies.at

    def go(self) -> None:
        for name, entry in self.entries.items():
            if abs(entry.value - self.true[name]) <= self._own(entry) and self._near(name):
                self.sure.add(name)
                self._take(name, self.right)
        while True:
            for least in (WELL, PARALLEL):
                self._go_on(least)
            among, fresh = self.coarse, list(filter(self._is_coarse, self.entries))
            if not fresh:
                among, fresh = self.open, list(filter(self._is_open, self.entries))
            if not fresh:
                return
            for name in fresh:
                self._take(name, among)

    def _go_on(self, least: float) -> None:
        """Every step there is, with equations that hold so much of what they give."""
        waiting = dict.fromkeys(self.bodies)
        while waiting:
            sheet = self.bodies[next(iter(waiting))]
            del waiting[sheet.name]
            for name in self._found(sheet, least):
                waiting.update(dict.fromkeys(self.at[name]))

    def _is_coarse(self, name: str) -> bool:
        """Whether an entry too far off to be right is so by its own rounding or by that of others."""
        if name in self.off:
            return False
        own = abs(self.entries[name].value - self.true[name]) <= self._own(self.entries[name])
        return own or any(self._verdict(*at, name) == "coarse" for at in self._equations(name))

    def _is_open(self, name: str) -> bool:
        """Whether blanks make it impossible to say that an entry is wrong."""
        if name in self.off:
            return False
        if abs(self.entries[name].value - self.true[name]) <= self.lost:
            return True
        return not self._settled(name) and any(
            self._verdict(*at, name) == "open" for at in self._equations(name)
        )

    def _settled(self, name: str) -> bool:
        """Whether equations without blanks give the value, and the entry is far from all of them.

        Far is more than roundings carried on come to beside the forces of this truss.
        """
        off, beyond = self.entries[name].value - self.true[name], []
        for sheet, n in self._equations(name):
            may, slope = self._carried(sheet, name, n)
            if not may.dark:
                near = self.carried + slope
                beyond.append(off > may.high + near or off < may.low - near)
        return bool(beyond) and all(beyond)

    def _equations(self, name: str) -> Iterator[tuple[Sheet, Vector]]:
        """The equations that give a value from what is known by now."""
        for body in self.at[name]:
            sheet = self.bodies[body]
            open_names = self._open_names(sheet)
            for n in sheet.equations(name, open_names):
                yield sheet, n
            for n in self._beside(sheet, name, open_names):
                yield sheet, n

    def _own(self, entry: Entry) -> float:
        return entry.radius + NEGLIGIBLE * abs(entry.value) + self.nothing

    def _take(self, name: str, among: set[str]) -> None:
        off = self.entries[name].value - self.true[name]
        among.add(name)
        dark = among is self.open or name not in self.sure | self.coarse
        self.off[name] = Off(min(0.0, off), max(0.0, off), 0.0, dark)

    def _found(self, sheet: Sheet, least: float) -> list[str]:
        """What the body gives now: entries that are right by it, and blanks.

        `least` is how much of a force an equation must hold to give it.
        """
        open_names = self._open_names(sheet)
        found = []
        for name in sheet.part:
            if name in self.off or (name, sheet.name) in self.blank:
                continue
            equations = [
                n
                for n in sheet.equations(name, open_names)
                if abs(sheet.part[name].share(n)) > least
            ]
            if not equations:
                continue
            beside = list(self._beside(sheet, name, open_names))
            if name not in self.entries:
                self.blank[name, sheet.name] = self._blank(sheet, name, equations, beside)
                found.append(name)
                continue
            said = {self._verdict(sheet, n, name) for n in (*equations, *beside)}
            if "right" in said or "likely" in said:
                self.sure.update({name} if "right" in said else ())
                self._take(name, self.right)
                found.append(name)
        return found

    def _open_names(self, sheet: Sheet) -> list[str]:
        """The unknowns of a body that nothing written and no other body tells by now."""
        return [name for name in sheet.part if self._into(sheet, name) is None]

    def _beside(self, sheet: Sheet, name: str, open_names: Sequence[str]) -> Iterator[Vector]:
        """The equations that give `name` with others that are known by now, or without any blank."""
        yield from equations_beside(sheet, name, open_names)
        blank = [n for n in sheet.part if n not in self.off and n not in open_names and n != name]
        if blank and name in self.entries:
            yield from sheet.equations(name, (*open_names, *blank))

    def _into(self, sheet: Sheet, name: str) -> Off | None:
        """How far off a value is as it comes to a body: as written, or a blank as the other body gave it."""
        if name in self.off:
            return self.off[name]
        ways = (self.blank.get((name, body)) for body in self.at[name] if body != sheet.name)
        return next((off for off in ways if off is not None), None)

    def _verdict(self, sheet: Sheet, n: Vector, name: str) -> str:
        entry = self.entries[name]
        off, own = entry.value - self.true[name], self._own(entry)
        may, slope = self._carried(sheet, name, n)
        beyond = max(may.low - own - slope - off, off - may.high - own - slope, 0.0)
        if beyond > SURELY * math.sqrt(may.doubt):
            return "wrong"
        if self._near(name) or self._given(sheet, n, name):
            return "likely" if may.dark else "right"
        return "open" if may.dark else "coarse"

    def _given(self, sheet: Sheet, n: Vector, name: str) -> bool:
        """Whether right entries of a body give one as they are written, with three figures, to its last."""
        entry, per = self.entries[name], sheet.part[name].share(n)
        total = entry.value - self.true[name]
        for part in sheet.parts:
            share = part.share(n) / per
            if part.is_load or part.name == name or abs(share) <= PARALLEL:
                continue
            if part.name not in self.sure:
                return False
            total += share * (self.entries[part.name].value - self.true[part.name])
        return self.figures >= LEAST_FIGURES and abs(total) <= self._own(entry)

    def _near(self, name: str) -> bool:
        """Whether an entry is no farther off than what passes as hard rounding of the number."""
        entry, true = self.entries[name], self.true[name]
        much = self.share * abs(true) if abs(true) > self.nothing else self.little
        return abs(entry.value - true) <= much + self.nothing

    def _blank(
        self, sheet: Sheet, name: str, equations: Sequence[Vector], beside: Sequence[Vector]
    ) -> Off:
        own = half_step(self.true[name], self.figures)
        found = [self._carried(sheet, name, n) for n in equations]
        doubt = max(off.doubt + (slope**2 + own**2) / 3.0 for off, slope in found)
        offs = [off for off, _ in found] + [self._carried(sheet, name, n)[0] for n in beside]
        return Off(min(off.low for off in offs), max(off.high for off in offs), doubt, dark=True)

    def _carried(self, sheet: Sheet, name: str, n: Vector) -> tuple[Off, float]:
        """How far a value is off by the equation `n`: as its terms are, and by rounded slopes."""
        per = sheet.part[name].share(n)
        low = high = doubt = slope = 0.0
        dark = False
        for part in sheet.parts:
            share = part.share(n) / per
            if abs(share) <= PARALLEL:
                continue
            slope += self._slope(part) / abs(per)
            if part.is_load or part.name == name:
                continue
            off = self._into(sheet, part.name) or NO_PART
            ends = (-share * off.low, -share * off.high)
            low, high = low + min(ends), high + max(ends)
            doubt, dark = doubt + share**2 * off.doubt, dark or off.dark
        return Off(low, high, doubt, dark), slope

    def _slope(self, part: ForcePart) -> float:
        """What a sine or cosine rounded to three decimals, or to the figures of a value, may add."""
        if part.straight:
            return 0.0
        if part.is_load:
            return SLOPE * abs(part.number)
        entry = self.entries.get(part.name)
        rounded = SLOPE * abs(self.true[part.name])
        return rounded if entry is None else min(rounded, entry.radius)
