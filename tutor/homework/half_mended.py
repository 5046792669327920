"""How did a page look before the first places of it were mended, and what of it is still as it was?

What is left of a page with one belief was worked out from values that no longer stand on it. Where the
last check remembers them they are put back; where none does, they are what the belief makes of the
joints at which somebody may have begun and at which everything is right now.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass, replace

from tutor.homework.fill import of_equations
from tutor.homework.lenses import Sight
from tutor.homework.rounding import Correctness
from tutor.homework.sheet import Bodies, renumbered, with_numbers
from tutor.homework.work import Entry
from tutor.model import Problem

MOST_MENDED = 3


@dataclass(frozen=True)
class Was:
    """A page before the values `mended` were put right, with all that was wrong then.

    `remembered` is whether these values were seen, not only supposed.
    """

    bodies: Bodies
    entries: Mapping[str, Entry]
    wrong: tuple[str, ...]
    mended: tuple[str, ...]
    remembered: bool = False


def mended_since(
    correctness: Correctness, entries: Mapping[str, Entry], before: Mapping[str, Entry]
) -> dict[str, Entry]:
    """The entries of the last check that were changed since and may stand by now, as they were then."""
    return {
        name: old
        for name, old in before.items()
        if name in correctness.right | correctness.coarse and entries[name].value != old.value
    }


def remembered(
    bodies: Bodies,
    entries: Mapping[str, Entry],
    before: Mapping[str, Entry],
    correctness: Correctness,
) -> Was | None:
    """The page with the wrong values of the last check that are right by now; None where none are."""
    old = mended_since(correctness, entries, before)
    if not old:
        return None
    return replace(_was(bodies, entries, old, correctness.wrong), remembered=True)


def _was(
    bodies: Bodies,
    entries: Mapping[str, Entry],
    old: Mapping[str, Entry],
    wrong: Collection[str],
) -> Was:
    then = {**entries, **old}
    amiss = tuple(name for name in then if name in wrong or name in old)
    return Was(renumbered(bodies, then), then, amiss, tuple(old))


Chain = tuple[tuple[str, tuple[str, ...]], ...]
"""Joints that are all right now, in the order in which they may have been worked, with what each gives."""


def begun(
    problem: Problem, bodies: Bodies, entries: Mapping[str, Entry], wrong: Collection[str]
) -> list[Chain]:
    """The joints that somebody may have mended: from each at which one may begin, as far as all is right."""
    found: list[Chain] = []
    for joint in problem.joints:
        chain: list[tuple[str, tuple[str, ...]]] = []
        known = set(problem.reaction)
        waiting = [joint.name]
        while waiting and len(chain) < MOST_MENDED:
            fresh = {name: _fresh(bodies, name, known, entries, wrong) for name in waiting}
            ready = next((name for name in waiting if fresh[name]), None)
            if ready is None:
                break
            chain.append((ready, fresh[ready]))
            known.update(fresh[ready])
            waiting = list(
                dict.fromkeys(b for _, names in chain for n in names for b in bodies.at[n])
            )
        if chain:
            found.append(tuple(chain))
    return found


def supposed(
    seen: Sight, chain: Chain, bodies: Bodies, entries: Mapping[str, Entry], wrong: Collection[str]
) -> Iterator[Was]:
    """The page with the values that a belief gives at one joint after another of a chain."""
    old: dict[str, Entry] = {}
    for joint, fresh in chain:
        found = _found(seen, joint, fresh, {**entries, **old})
        if found is None:
            return
        old |= found
        changed = {name: entry for name, entry in old.items() if _differs(entry, entries[name])}
        if changed:
            yield _was(bodies, entries, changed, wrong)


def _found(
    seen: Sight, joint: str, fresh: tuple[str, ...], entries: Mapping[str, Entry]
) -> dict[str, Entry] | None:
    """What the two sums of a joint give through the lens."""
    others = {name: entry for name, entry in entries.items() if name not in fresh}
    sheet = with_numbers(seen.body(joint), others)
    return of_equations(sheet, fresh, sheet.axes)


def _fresh(
    bodies: Bodies,
    joint: str,
    known: Collection[str],
    entries: Mapping[str, Entry],
    wrong: Collection[str],
) -> tuple[str, ...]:
    """What a joint gives from what is known, where two sums do for it and all of it is right now."""
    fresh = tuple(name for name in bodies[joint].part if name not in known)
    right = all(name in entries and name not in wrong for name in bodies[joint].part)
    return fresh if right and len(fresh) == bodies[joint].size == 2 else ()


def _differs(old: Entry, new: Entry) -> bool:
    return abs(old.value - new.value) > old.radius + new.radius
