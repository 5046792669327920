"""What do the student's own lines show?"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Set
from dataclasses import dataclass, replace

from tutor.homework.account import Account
from tutor.homework.sheet import WHOLE, Sheet
from tutor.homework.slips import acting
from tutor.homework.work import Work, WorkLine
from tutor.judge import Equation, Judge, Value, Verdict
from tutor.judge.known_values import KnownValue
from tutor.judge.same import NEAR, SAME
from tutor.notation import Unreadable
from tutor.notation.elements.tree import Number, within

LITTLE = "These numbers alone do not show which forces they stand for."
PUT_IN = frozenset({"magnitude", "not-equilibrium", "arithmetic", "rounding"})
"""What a line shows in which a wrong value stands as a number, judged without that value."""
TRUE_ALL_THE_SAME = frozenset({"other-point", "other-equation", "dependent"})


@dataclass(frozen=True)
class LineVerdict:
    """One line with its verdict; `place` is the body it belongs to, None for a value."""

    line: WorkLine
    place: str | None
    verdict: Verdict

    @property
    def misleads(self) -> bool:
        """Whether it is wrong in a way that gives wrong values."""
        return _misleads(self.verdict)


def _misleads(verdict: Verdict) -> bool:
    return verdict.kind == "wrong" and all(
        mistake.code not in TRUE_ALL_THE_SAME for mistake in verdict.mistakes
    )


def judged_lines(
    desk: Judge, work: Work, bodies: Mapping[str, Sheet], wrong: Set[str]
) -> list[LineVerdict]:
    """Every line judged under the student's senses, with the student's own values; `wrong` are such entries."""
    found = []
    again: dict[tuple[Equation | Value, str], LineVerdict] = {}
    later = _found_later(desk, work, wrong)
    for line in work.lines:
        key = (line.about, line.text)
        if key not in again:
            again[key] = _judged(desk, work, line, bodies, later, wrong)
        found.append(replace(again[key], line=line))
    return found


def _found_later(desk: Judge, work: Work, wrong: Set[str]) -> dict[str, set[str]]:
    """The wrong entries that were not found before a body: those sought there or, by the lines, later.

    An entry is sought where a letter for it first stands in a line.
    """
    if not wrong:
        return {}
    sought: dict[str, set[str]] = {}
    seen: set[str] = set()
    for line in work.lines:
        if not isinstance(line.about, Value):
            new = typed_in(desk, line) - seen
            sought.setdefault(line.about.joint or WHOLE, set()).update(new)
            seen |= new
    steps = list(sought)
    return {
        place: set(wrong) & set().union(*(sought[step] for step in steps[k:]))
        for k, place in enumerate(steps)
    }


def _judged(
    desk: Judge,
    work: Work,
    line: WorkLine,
    bodies: Mapping[str, Sheet],
    later: Mapping[str, set[str]],
    wrong: Set[str],
) -> LineVerdict:
    if isinstance(line.about, Value):
        own = work.own(without=(line.about.unknown,))
        return LineVerdict(line, None, desk.judge(line.about, line.text, own))
    place = line.about.joint or WHOLE
    verdict = _verdict(desk, work, line, bodies[place], later.get(place, set()), wrong)
    if verdict.kind == "right" and _stands_for_little(desk, line.about, line.text):
        verdict = Verdict("undecided", LITTLE, about=line.about)
    return LineVerdict(line, place, verdict)


def _stands_for_little(desk: Judge, about: Equation, text: str) -> bool:
    """Whether a line of numbers alone, which can be read, has fewer of them than forces act in its equation."""
    reading = desk.read(text)
    assert not isinstance(reading, Unreadable)
    sides = [side for step in reading.steps for side in step.sides]
    if not all(side.numeric for side in sides):
        return False
    numbers = sum(isinstance(node, Number) for side in sides for node in within(side.node))
    return numbers < acting(desk.problem, about)


def _verdict(
    desk: Judge, work: Work, line: WorkLine, body: Sheet, later: Set[str], wrong: Set[str]
) -> Verdict:
    """The verdict under the student's values; a line is not held true by what it gave itself.

    Wrong values found at a body satisfy the very lines they came from. So a line that is not right is
    judged again without the wrong values found only there or `later`; and where it would be "true of
    something else", without those of its body, then without all.
    """
    verdict = desk.judge(line.about, line.text, work.own())
    if verdict.kind == "right":
        return _without_its_value(desk, work, line, wrong) or verdict
    if wrong and _misleads(verdict) and (follows := _with_the_rest(desk, work, line)) is not None:
        return follows
    if verdict.kind != "wrong":
        return verdict
    ways = (later,) if _misleads(verdict) else (later, wrong & set(body.part), wrong)
    for left_out in ways:
        again = desk.judge(line.about, line.text, work.own(left_out)) if left_out else verdict
        if again.kind == "right" and not _misleads(verdict):
            return again
        by_numbers = any(mistake.code in PUT_IN for mistake in again.mistakes)
        if _misleads(again) and not by_numbers:
            return again
    return verdict


def _with_the_rest(desk: Judge, work: Work, line: WorkLine) -> Verdict | None:
    """That a line holds with a wrong value of the page, and with numbers for forces that are not on it."""
    own = work.own()
    absent = {
        name: KnownValue(own.sign(name) * value, SAME * abs(value))
        for name, value in desk.values().items()
        if name not in own.known
    }
    if not absent:
        return None
    asked = typed_in(desk, line)
    known = {name: value for name, value in absent.items() if name not in asked}
    verdict = desk.judge(line.about, line.text, replace(own, known={**own.known, **known}))
    return verdict if verdict.kind == "right" else None


def wrong_entries(desk: Judge, work: Work) -> Set[str]:
    """The entries that are not what they should be."""
    true = desk.values()
    return {
        name
        for name, entry in work.entries.items()
        if abs(entry.value - true[name]) > entry.radius + NEAR * abs(true[name])
    }


def _without_its_value(desk: Judge, work: Work, line: WorkLine, wrong: Set[str]) -> Verdict | None:
    """The verdict on a line that ends in a wrong value, judged without it and what came after; else None."""
    typed = typed_in(desk, line)
    for name in sorted(typed & wrong) if line.text.count("=") > 1 else ():
        verdict = desk.judge(line.about, line.text, work.own(wrong - typed | {name}))
        if _of_value(verdict, name):
            return verdict
    return None


def typed_in(desk: Judge, line: WorkLine) -> set[str]:
    """The unknowns that stand in a line."""
    read = desk.read(line.text)
    if isinstance(read, Unreadable):
        return set()
    sides = (side for step in read.steps for side in step.sides)
    return {term.name for side in sides for term in side.terms if term.name is not None}


def _of_value(verdict: Verdict, name: str) -> bool:
    """Whether the equation stands and only the value of this unknown behind it is wrong."""
    return bool(verdict.stands) and any(mistake.force == name for mistake in verdict.mistakes)


def values_behind(
    desk: Judge,
    work: Work,
    judged: Iterable[LineVerdict],
    body: Sheet,
    values: Iterable[str],
    wrong: Set[str],
) -> list[Account]:
    """What explains wrong values found at a place which do not follow from a right line there."""
    right = [j.line for j in judged if j.place == body.name and j.verdict.kind == "right"]
    found = {}
    for line in right:
        typed = typed_in(desk, line)
        for name in values:
            if name in wrong & typed and name not in found:
                text = f"{line.text}; {name} = {work.entries[name].text}"
                verdict = desk.judge(line.about, text, work.own(wrong - typed | {name}))
                if _of_value(verdict, name):
                    found[name] = Account(body.name, verdict.mistakes[0], Value(name), 0.0)
    return list(found.values())


def order_of(judged: list[LineVerdict]) -> tuple[str, ...]:
    """The bodies in the order in which their lines come."""
    return tuple(dict.fromkeys(j.place for j in judged if j.place is not None))
