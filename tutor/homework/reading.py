"""What may the student have worked with where something is left blank?

A blank reaction was worked with all the same. Either it was right, or it is what the joint at its
support needs to close, unless the walk ended there: then it came from the equations of the whole
truss. Each of these is a reading of the homework. Only used to go on past a blank; nothing of it is
ever shown.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations

from tutor.homework.chain import follow
from tutor.homework.fill import filled, of_equations
from tutor.homework.one_line import usual_lines
from tutor.homework.sheet import WHOLE, Bodies, Sheet, renumbered, with_numbers
from tutor.homework.vectors import Vector
from tutor.homework.work import Entry
from tutor.model import Problem

MOMENTS_ABOUT = 3


@dataclass(frozen=True)
class FilledIn:
    """The bodies and values with every blank filled, and the values that are then wrong."""

    bodies: Bodies
    entries: Mapping[str, Entry]
    wrong: tuple[str, ...]


def plain_reading(
    problem: Problem,
    handed_in: Bodies,
    entries: Mapping[str, Entry],
    true: Mapping[str, float],
    right: Collection[str],
) -> FilledIn:
    """Whatever is blank was right, as far as the rest allows."""
    return _read(problem, *filled(handed_in, entries, true), true, right)


def readings_by_supports(
    problem: Problem,
    handed_in: Bodies,
    entries: Mapping[str, Entry],
    true: Mapping[str, float],
    right: Collection[str],
) -> Iterator[FilledIn]:
    """Blank reactions as the supports' joints have them, where the whole truss then does not close.

    One reading for a walk that used every support, and some for one that ended at each of them. A
    joint with a blank member tells nothing of its support.
    """
    blank = [r for r in problem.reactions if r.name not in entries]
    seen: set[tuple[str, ...]] = set()
    supports = list(dict.fromkeys(r.joint for r in blank))
    dark = {joint for joint in supports if blank_members(problem, handed_in[joint])}
    for end in (None, *(joint for joint in supports if joint not in dark)):
        without = {WHOLE, *dark} | ({end} if end is not None else set())
        bodies, found = filled(handed_in, entries, true, without)
        left = [r.name for r in blank if r.name not in found]
        for more in _closed(problem, bodies[WHOLE], left) if left else [{}]:
            both = {**found, **more}
            filled_in = renumbered(bodies, both) if more else bodies
            numbers = tuple(f"{both[r.name].value:.6g}" for r in blank if r.name in both)
            if numbers not in seen and filled_in[WHOLE].fails:
                seen.add(numbers)
                yield _read(problem, filled_in, both, true, right)


def readings_of_blank_joint(
    problem: Problem,
    handed_in: Bodies,
    entries: Mapping[str, Entry],
    true: Mapping[str, float],
    right: Collection[str],
    joint: str,
) -> Iterator[FilledIn]:
    """What is blank at a joint as the other bodies have it, if the mistake was made at this one.

    Or one of them comes from a line of the joint, be it ΣFx or ΣFy, the other having the mistake in
    it. Nothing where too much is blank for that.
    """
    beside, found = filled(handed_in, entries, true, {joint})
    for more in _choices(problem, handed_in, found, joint):
        bodies, both = filled(renumbered(beside, more), more, true)
        if bodies[joint].fails:
            yield _read(problem, bodies, both, true, right)


def _choices(
    problem: Problem, handed_in: Bodies, found: Mapping[str, Entry], joint: str
) -> Iterator[Mapping[str, Entry]]:
    """The values with those blank at a joint: all from elsewhere, or one from a line of it."""
    blank = blank_members(problem, handed_in[joint])
    open_names = [name for name in blank if name not in found]
    if len(open_names) > 1:
        return
    if not open_names:
        yield found
    for name in open_names or blank:
        others = {other: entry for other, entry in found.items() if other != name}
        sheet = with_numbers(handed_in[joint], others)
        for more in _closed(problem, sheet, [name]):
            yield {**others, **more}


def blank_members(problem: Problem, sheet: Sheet) -> tuple[str, ...]:
    """The members without number at a body."""
    return tuple(name for name in sheet.missing if name in problem.member)


def _closed(problem: Problem, sheet: Sheet, names: Sequence[str]) -> Iterator[Mapping[str, Entry]]:
    """These values from as many lines of a body, for each usual choice of lines."""
    if set(sheet.missing) - set(names) or len(names) >= sheet.size:
        return
    for lines in combinations(_usual(problem, sheet), len(names)):
        found = of_equations(sheet, names, lines)
        if found is not None:
            yield found


def _usual(problem: Problem, sheet: Sheet) -> list[Vector]:
    """ΣFx and ΣFy, and for the whole truss the moments about the supports."""
    return [line.n for line in usual_lines(problem, sheet)][: 2 + MOMENTS_ABOUT]


def _read(
    problem: Problem,
    bodies: Bodies,
    entries: Mapping[str, Entry],
    true: Mapping[str, float],
    right: Collection[str],
) -> FilledIn:
    """With the values that are wrong: what is written and not `right`, and what was put into a blank.

    A blank is wrong where it is neither near the truth nor reached by sound steps alone.
    """
    blank = {name for name, entry in entries.items() if not entry.text}
    sound = follow(bodies, entries, set(), (), blank)
    share = problem.tolerance.remark
    least = 1e-6 * max(map(abs, true.values()), default=0.0)
    through = _through_blanks(problem, true, blank)
    wrong = tuple(
        name
        for name, entry in entries.items()
        if name not in right
        and (
            entry.text
            or (
                name not in sound
                and abs(entry.value - true[name])
                > entry.radius + max(share * abs(true[name]), through) + least
            )
        )
    )
    return FilledIn(bodies, entries, wrong)


def _through_blanks(problem: Problem, true: Mapping[str, float], blank: Collection[str]) -> float:
    """How far rounding may have moved a value on its way through blank members.

    None of those steps can be followed. It is measured against the forces that were added up, since
    what is left of them may be small.
    """
    if not any(name in problem.member for name in blank):
        return 0.0
    return problem.tolerance.silent * max(map(abs, true.values()), default=0.0)
