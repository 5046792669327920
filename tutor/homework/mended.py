"""Which entries still rest on a value that has been mended since the last check?

After the first wrong place is put right, everything worked out from the old value is still there.
It follows from the old value by sound steps, so it is no mistake of its own: the work goes on at the
first place where the old value was put in.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from tutor.homework.account import Account
from tutor.homework.chain import Found, follow
from tutor.homework.findings import Finding
from tutor.homework.half_mended import mended_since
from tutor.homework.outcome import ReviewOutcome
from tutor.homework.rounding import Correctness
from tutor.homework.sheet import Bodies, Sheet, place_in_words, renumbered
from tutor.homework.slips import mistake_of
from tutor.homework.vectors import PARALLEL, Vector
from tutor.homework.work import Entry
from tutor.judge import Value
from tutor.model import Problem
from tutor.text import listed

CODE = "carried"
LOOK = "These values still rest on one that you have mended since."
LOOK_AT_ONE = "This value still rests on one that you have mended since."
REASON = "When a value is put right, everything that was worked out with the old one changes too."
PLACE = "Put your new {name} into the lines of {place}, and work on from there."
COST = 0.5
MOST_PLACES = 2


@dataclass(frozen=True)
class Resting:
    """The entries that rest on old values, where the work goes on, and which new value belongs there.

    `besides` are those of them that no sound step gives from the old values.
    """

    names: tuple[str, ...]
    changed: tuple[str, ...]
    places: tuple[str, ...]
    at: Mapping[str, str]
    besides: tuple[str, ...] = ()

    @property
    def said(self) -> str:
        old = listed(self.changed)
        verb = "rests" if len(self.names) == 1 else "rest"
        where = place_in_words(self.places[0])
        return f"{listed(self.names)} still {verb} on your old {old}: go on at {where}."


def resting(
    bodies: Bodies,
    entries: Mapping[str, Entry],
    before: Mapping[str, Entry],
    correctness: Correctness,
) -> Resting | None:
    """What rests on the values of the last check, where that explains every wrong entry; else None.

    What else was wrong then at the joint where an old value was put in was worked out with it as well.
    """
    old = mended_since(correctness, entries, before)
    changed = list(old)
    if not changed:
        return None
    wrong = [name for name in entries if name in correctness.wrong]
    was = renumbered(bodies, {**entries, **old})
    found = follow(was, wrong, set(entries) - set(wrong), partly=True)
    places = _places(was, found, changed)[:MOST_PLACES]
    besides = [name for name in wrong if name not in found]
    if not places or not all(n in before and n in was[places[0]].part for n in besides):
        return None
    at = {name: body for name, (body, _) in found.items()} | dict.fromkeys(besides, places[0])
    new = [n for n in changed if n in was[places[0]].part]
    return Resting(tuple(wrong), tuple(new), places, at, tuple(besides))


def _places(was: Mapping[str, Sheet], found: Found, changed: Sequence[str]) -> tuple[str, ...]:
    """Where a value was found from an old one, and where else that value may have been found so.

    First comes the place of the value that was mended last, of those at which nothing else is old.
    """
    first: list[str] = []
    also: list[str] = []
    for name, (body, equation) in found.items():
        if _uses(was[body], changed, name, equation):
            first.append(body)
            for other, sheet in was.items():
                if other == body or name not in sheet.part:
                    continue
                unknown = [each for each in sheet.part if each in found]
                equations = sheet.equations(name, unknown)
                if any(sheet.holds(n) and _uses(sheet, changed, name, n) for n in equations):
                    also.append(other)
    ready = [
        body
        for body in first
        if not any(name in found and found[name][0] != body for name in was[body].part)
    ]
    latest = max(ready or first[:1], key=lambda body: _latest(was[body], changed), default=None)
    here = () if latest is None else (latest,)
    return tuple(dict.fromkeys((*here, *also, *first)))


def _latest(sheet: Sheet, changed: Sequence[str]) -> int:
    """How late the last value on a body was mended."""
    return max(k for k, name in enumerate(changed) if name in sheet.part)


def _uses(sheet: Sheet, changed: Sequence[str], name: str, equation: Vector) -> bool:
    """Whether the equation that gave a value holds one of the values changed since."""
    return any(
        other in sheet.part and other != name and abs(sheet.part[other].share(equation)) > PARALLEL
        for other in changed
    )


def of_resting(problem: Problem, rests: Resting) -> ReviewOutcome:
    """The outcome of a sheet that was mended up to somewhere."""
    place, name = rests.places[0], rests.changed[0]
    mistake = replace(
        mistake_of(problem, Value(name), CODE, name),
        text=LOOK if len(rests.names) > 1 else LOOK_AT_ONE,
        reason=REASON,
        place=PLACE.format(name=name, place=place_in_words(place)),
    )
    findings = {
        each: Finding(each, "wrong", mistake, "likely")
        if rests.at[each] == place
        else Finding(each, "follows", None, "likely")
        for each in rests.names
    }
    account = Account(place, mistake, None, COST)
    return ReviewOutcome(rests.places, (account,), findings, note=rests.said, rests=rests.names)
