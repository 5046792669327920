"""What did the student hand in? Values with the precision they were written with, lines, senses.

Values are kept in the positive senses: tension, +x, +y, the stated direction of an inclined roller
or link. Nothing here raises on what somebody wrote; what cannot be read is told, and left out.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from decimal import Decimal
from itertools import islice
from numbers import Real
from typing import Any

from tutor.judge import Equation, Judge, Value
from tutor.judge.about import about_called, is_asked, is_bounded
from tutor.judge.known_values import NOTHING_OWN, KnownValue, KnownValues, senses_for, signed
from tutor.model import Problem, UnknownNameError
from tutor.model.naming import joint_called, unknown_called
from tutor.notation import Unreadable, read_letters, value_of
from tutor.text import as_text, listed, marked, raised

LEAST_FIGURES = 3
MOST_LINES = 5000
PARTS = ("reactions", "forces", "lines", "senses", "letters", "order")
NO_PART = f"There is no such part of a homework; there are {listed(PARTS)}."
BLANK = frozenset({"", "-", "–", "—", "?", "…", "...", "n/a", "none"})


@dataclass(frozen=True)
class Entry:
    """One value: in the positive sense, how far its figures may be off, and as it was written."""

    name: str
    value: float
    radius: float
    text: str


@dataclass(frozen=True)
class WorkLine:
    """One line of the student's: its place in the list, the equation it is meant to be, the text."""

    index: int
    about: Equation | Value
    text: str


@dataclass(frozen=True)
class LeftOut:
    """Something that was left out: which entry ("AB", "line 2", "order") and why, in a sentence.

    `complaint` is what the notation says of it, where that is why; `lead` is what the sentence has
    before that. Of a whole file, `line` is the number of the line.
    """

    name: str
    text: str
    message: str
    complaint: Unreadable | None = None
    lead: str = ""
    line: int | None = None

    def led(self, lead: str) -> LeftOut:
        """The same with words before its sentence."""
        return replace(self, message=f"{lead}{self.message}", lead=f"{lead}{self.lead}")


@dataclass(frozen=True)
class Work:
    """A whole homework, as far as it could be read.

    `letters` are the angles (degrees) and lengths (the problem's unit) that its lines call by a letter.
    """

    entries: Mapping[str, Entry] = field(default_factory=dict)
    lines: tuple[WorkLine, ...] = ()
    given: KnownValues = NOTHING_OWN
    order: tuple[str, ...] = ()
    refused: tuple[LeftOut, ...] = ()
    letters: Mapping[str, float] = field(default_factory=dict)

    def own(self, without: Iterable[str] = ()) -> KnownValues:
        """The student's senses and values as the judge takes them, apart from some."""
        left_out = set(without)
        known = {
            name: KnownValue(self.given.sign(name) * entry.value, entry.radius)
            for name, entry in self.entries.items()
            if name not in left_out
        }
        return KnownValues(self.given.senses, known)


def read_work(desk: Judge, work: object) -> Work:
    """The homework in `work`, a mapping as the contract of `review` describes it."""
    refused: list[LeftOut] = []
    if not isinstance(work, Mapping):
        message = "The work is not a table of reactions, forces, lines, senses and order."
        return Work(refused=(LeftOut("work", _shown(work), message),))
    refused += [LeftOut(_shown(key), "", NO_PART) for key in work if key not in PARTS]
    given = KnownValues(_senses(desk.problem, work.get("senses"), refused), {})
    lines = tuple(_lines(desk.problem, work.get("lines"), refused))
    letters = _letters(desk, work.get("letters"), lines, refused)
    desk = desk.knowing(letters)
    entries: dict[str, Entry] = {}
    for part in ("reactions", "forces"):
        for name, value in _pairs(part, work.get(part), refused):
            _take(desk, given, name, value, entries, refused)
    order = tuple(_order(desk.problem, work.get("order"), refused))
    return Work(entries, lines, given, order, tuple(refused), letters)


def _letters(
    desk: Judge, table: object, lines: Iterable[WorkLine], refused: list[LeftOut]
) -> dict[str, float]:
    """The letters given, and those that the lines give a size."""
    found: dict[str, float] = {}
    for name, size in _pairs("letters", table, refused):
        if is_bounded(size):
            found[as_text(name)] = float(size)
        else:
            refused.append(LeftOut(_shown(name), _shown(size), "A letter stands for a number."))
    for line in lines:
        found |= read_letters(line.text, desk.names, found)
    return found


def _pairs(part: str, table: object, refused: list[LeftOut]) -> Iterable[tuple[Any, Any]]:
    if table is None:
        return ()
    if not isinstance(table, Mapping):
        refused.append(LeftOut(part, _shown(table), f"The {part} are not a table of names."))
        return ()
    return table.items()


def _senses(problem: Problem, table: object, refused: list[LeftOut]) -> dict[str, str]:
    drawn: dict[str, str] = {}
    for name, sense in _pairs("senses", table, refused):
        try:
            unknown = _called(problem, name)
        except UnknownNameError as error:
            refused.append(LeftOut(_shown(name), _shown(sense), _sentence(error)))
            continue
        if sense not in senses_for(problem, unknown):
            ways = " or ".join(senses_for(problem, unknown))
            refused.append(LeftOut(unknown, _shown(sense), f"A sense of {unknown} is {ways}."))
        else:
            drawn[unknown] = str(sense)
    return drawn


def _called(problem: Problem, name: object) -> str:
    return unknown_called(problem, as_text(name).strip())


def _sentence(error: UnknownNameError) -> str:
    said = str(error)
    return f"{raised(said)}{'' if said.endswith('?') else '.'}"


def _take(
    desk: Judge,
    given: KnownValues,
    name: object,
    value: object,
    entries: dict[str, Entry],
    refused: list[LeftOut],
) -> None:
    """Put one value among the `entries`, or say why not; a blank one is not done."""
    if value is None or (isinstance(value, str) and value.strip().lower() in BLANK):
        return
    try:
        unknown = _called(desk.problem, name)
    except UnknownNameError as error:
        refused.append(LeftOut(_shown(name), _shown(value), _sentence(error)))
        return
    if unknown in entries:
        message = f"{unknown} stands in the homework twice; the first value is taken."
        refused.append(LeftOut(unknown, _shown(value), message))
    else:
        read = read_entry(desk, unknown, value, given)
        if isinstance(read, Entry):
            entries[unknown] = read
        else:
            refused.append(read)


def read_entry(desk: Judge, unknown: str, value: object, given: KnownValues) -> Entry | LeftOut:
    """The value of `unknown` in the positive sense; a plain number is read in the sense drawn."""
    if isinstance(value, bool) or not isinstance(value, (Real, Decimal, str)):
        return LeftOut(
            unknown, _shown(value), "This is no value; write a number like 7.5 or 7.5 C."
        )
    sign = given.sign(unknown)
    if not isinstance(value, str):
        try:
            number = float(value)
        except (OverflowError, ValueError):
            number = math.inf
        if not math.isfinite(number) or abs(number) > 1e12:
            return LeftOut(unknown, _shown(value), "This is no number that a force can have.")
        return Entry(unknown, sign * number + 0.0, half_step(number, LEAST_FIGURES), _shown(value))
    reading = value_of(desk.read(value.strip()), reaction="_" in unknown)
    if isinstance(reading, Unreadable):
        return LeftOut(unknown, _shown(value), reading.message, reading)
    if reading.name is not None and reading.name != unknown:
        return LeftOut(unknown, _shown(value), f"This is a value of {reading.name}.")
    if (reading.letter and unknown not in desk.problem.member) or (
        reading.sense and reading.sense not in senses_for(desk.problem, unknown)
    ):
        example = "T or C" if unknown in desk.problem.member else "a sign or a direction"
        return LeftOut(unknown, _shown(value), f"{unknown} is written with {example}.")
    if reading.letter == "T" and reading.value < 0:
        message = "A minus and a T contradict each other; write the size with T or C."
        return LeftOut(unknown, _shown(value), message)
    own = signed(desk.problem, unknown, reading.value, reading.letter, reading.sense, sign)
    radius = max(reading.radius, half_step(own, LEAST_FIGURES))
    return Entry(unknown, own + 0.0, radius, _shown(value))


def half_step(number: float, figures: int) -> float:
    """Half a step of the last of so many figures of a number; 0 for zero."""
    if number == 0.0:
        return 0.0
    return 0.5 * 10.0 ** (math.floor(math.log10(abs(number))) - figures + 1)


def _lines(problem: Problem, lines: object, refused: list[LeftOut]) -> Iterable[WorkLine]:
    if lines is None:
        return
    if isinstance(lines, (str, bytes, Mapping)) or not isinstance(lines, Iterable):
        refused.append(LeftOut("lines", _shown(lines), "The lines are not a list of pairs."))
        return
    for index, pair in enumerate(islice(lines, MOST_LINES)):
        try:
            about, text = pair
        except (TypeError, ValueError):
            about, text = None, None
        if not isinstance(text, str) or not is_asked(about):
            message = "A line is a pair of an equation such as Fx(joint='C') and its text."
            refused.append(LeftOut(f"line {index + 1}", _shown(pair), message))
            continue
        try:
            yield WorkLine(index, about_called(problem, about), text)
        except UnknownNameError as error:
            refused.append(LeftOut(f"line {index + 1}", _shown(pair), _sentence(error)))


def _order(problem: Problem, order: object, refused: list[LeftOut]) -> Iterable[str]:
    if order is None:
        return
    if isinstance(order, (bytes, Mapping)) or not isinstance(order, Iterable):
        refused.append(LeftOut("order", _shown(order), "The order is not a list of joints."))
        return
    seen: set[str] = set()
    for name in islice(order, MOST_LINES):
        try:
            joint = name if name == "whole" else joint_called(problem, name)
        except UnknownNameError as error:
            refused.append(LeftOut("order", _shown(name), _sentence(error)))
            continue
        if joint not in seen:
            seen.add(joint)
            yield joint


def _shown(value: object) -> str:
    """What was written, on one line and short, without control characters."""
    text = marked(as_text(value)[:200], " ")
    return text if len(text) <= 60 else text[:59] + "…"
