"""Which other forces have the very number that a slip is named for?

Where two forces have one number, a line cannot tell which of them was meant: the hint then names
both, instead of one with a confidence it has not got.
"""

from __future__ import annotations

import math
from collections.abc import Collection, Iterator
from dataclasses import dataclass

from tutor.judge.edits import named_at
from tutor.judge.explanation import Slip
from tutor.judge.kind import Case
from tutor.judge.mistakes import KINDS
from tutor.judge.same import SAME
from tutor.judge.saying import Saying
from tutor.judge.true_equation import TrueEquation, TrueTerm
from tutor.statics.body import Force, load_forces, reaction_forces

TOO_MANY = frozenset(code for code, kind in KINDS.items() if kind.counts == "too many")
LEFT_OUT = frozenset(code for code, kind in KINDS.items() if kind.counts == "left out")
MOST_ALIKE = 3


@dataclass(frozen=True)
class Sized:
    """A slip that a number may show, and the sizes that this number would have."""

    slip: Slip
    sizes: tuple[float, ...]


def alike(
    true: TrueEquation,
    slip: Slip,
    names: Collection[str],
    others: Collection[Slip],
    typed: float | None,
) -> tuple[Slip, ...]:
    """The slips that explain the number of `slip`, itself among them; only itself where it is plain.

    `names` are the unknowns typed by name, `others` the other slips of the line, `typed` the number
    itself where it is known.
    """
    if slip.force is None or slip.force in names:
        return (slip,)
    taken = {other.force for other in others if other is not slip}
    numbers = [s for s in true.numbers(frozenset(names)) if s.name not in taken]
    if slip.code in TOO_MANY:
        return _too_many(true, slip, numbers, taken | set(names), typed)
    if slip.spot is None or not slip.spot.numeric:
        return (slip,)
    found = [s for s in numbers if s.name != slip.force and _same(s.true, slip.spot.true)]
    return _each_once([slip, *(s for spot in found for s in _same_slip(slip, spot, numbers))])


def _same_slip(slip: Slip, spot: TrueTerm, numbers: list[TrueTerm]) -> Iterator[Slip]:
    """The same slip at another force, where it can be made there and comes to the same."""
    code = slip.code
    if code in LEFT_OUT:
        yield Slip(named_at("missing", spot, numbers), spot.name, spot)
        return
    variants = KINDS[code].variants
    assert slip.spot is not None
    if variants is None:
        here, there = spot.force.kind, slip.spot.force.kind
        same_size = code == "not-equilibrium" and _same(abs(spot.scale), abs(slip.spot.scale))
        if code == "magnitude" or (code == "carried" and here == there) or same_size:
            yield Slip(code, spot.name, spot, slip.span)
        return
    made = [v * slip.spot.scale for v in variants(slip.spot)]
    if any(_same(v * spot.scale, own) for v in variants(spot) for own in made):
        yield Slip(code, spot.name, spot, slip.span)


def _too_many(
    true: TrueEquation,
    slip: Slip,
    numbers: list[TrueTerm],
    taken: set[str | None],
    typed: float | None,
) -> tuple[Slip, ...]:
    """Everything that has no place in the line and whose number stands there too much.

    A load that acts farther away than at the next joints comes first, where it is the best account.
    """
    every = [each for each in _candidates(true, numbers) if each.slip.force not in taken]
    own = next((e for e in every if _is(e.slip, slip)), None)
    multiplied = own is not None and typed is not None and not _has(own, typed)
    if typed is not None and not multiplied and any(_has(each, typed) for each in every):
        found = [each.slip for each in every if _has(each, typed)]
    elif own is not None:
        found = [e.slip for e in every if any(_has(e, size) for size in own.sizes)]
    else:
        found = []
    far = own is None and slip.code == "stray-load"
    first = [slip] if far else [s for s in found if _is(s, slip)]
    rest = [s for s in found if not _is(s, slip)]
    return _each_once([*first, *rest]) or (slip,)


def _candidates(true: TrueEquation, numbers: list[TrueTerm]) -> Iterator[Sized]:
    """What can be too much in a line: on the body first, then what acts at the next joints."""
    extra = KINDS["extra"].variants
    assert extra is not None
    for spot in numbers:
        if spot.true != 0.0:
            yield Sized(Slip("double", spot.name, spot), (spot.true,))
        else:
            sizes = tuple(v * spot.scale for v in extra(spot))
            yield Sized(Slip("extra", spot.name, spot), sizes)
    own = true.about.joint
    if own is None:
        return
    for joint in (member.other(own) for member in true.problem.meeting[own]):
        for force in load_forces(true.problem, joint):
            yield Sized(
                Slip("stray-load", force.name, None), _sizes(true, force, force.size or 0.0)
            )
        for force in reaction_forces(true.problem, joint):
            if force.name in true.own.known:
                size = true.own.known[force.name].value
                yield Sized(Slip("stray-reaction", force.name, None), _sizes(true, force, size))


def _sizes(true: TrueEquation, force: Force, size: float) -> tuple[float, ...]:
    """The whole of a force and its part in the sum."""
    return size, size * true.equation.sum.of(force)


def _has(each: Sized, number: float) -> bool:
    return number != 0.0 and any(_same(abs(size), abs(number)) for size in each.sizes)


def _is(one: Slip, other: Slip) -> bool:
    return (one.code, one.force) == (other.code, other.force)


def _same(one: float, other: float) -> bool:
    return math.isclose(one, other, rel_tol=SAME, abs_tol=1e-12)


def _each_once(slips: list[Slip]) -> tuple[Slip, ...]:
    """The first slip of each force."""
    firsts: dict[str | None, Slip] = {}
    for slip in slips:
        firsts.setdefault(slip.force, slip)
    return tuple(firsts.values())


def place_hint(case: Case, slips: tuple[Slip, ...]) -> Saying:
    """The third hint on slips of which any may be the one that was made.

    `case` is that of the first, with the names of all.
    """
    kind = KINDS[slips[0].code]
    if len(slips) == 1:
        return kind.place(case)
    if not {s.code for s in slips} <= TOO_MANY:
        return KINDS["missing" if slips[0].code in LEFT_OUT else kind.code].place(case)
    if len(slips) > MOST_ALIKE:
        return KINDS["extra"].place(Case(case.problem, case.about, work=case.work))
    told = [_why_too_many(case, slip) for slip in slips]
    choice = f"{', '.join(told[:-1])}, or {told[-1]}"
    return Saying(f"There is one number too many in {case.this_line}; it is {choice}")


def _why_too_many(case: Case, slip: Slip) -> str:
    thing = Case(case.problem, case.about, slip.force).thing
    if slip.code == "double":
        return f"that of {thing}, a second time"
    if slip.code == "extra":
        return f"that of {thing}, which does not count here"
    return f"that of {thing}, which acts at another joint"
