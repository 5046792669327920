"""What is the problem with these numbers put in?"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from tutor.model import Joint, Load, Problem, Spread, Support
from tutor.model.amounts import Wrong, amount
from tutor.model.read_vary import with_words
from tutor.model.vary import VariedPart, Vary, exact
from tutor.notation import Exact
from tutor.variants.mirror import mirrored

Numbers = tuple[tuple[VariedPart, Exact], ...]


def how_many(vary: Vary) -> int:
    """How many different choices of numbers there are, mirrored ones too."""
    return math.prod(len(choice.values) for choice in vary.choices) * (2 if vary.mirror else 1)


def picks_at(vary: Vary, index: int) -> tuple[tuple[int, ...], bool]:
    """Choice number `index` of all there are: the place of each number in its list, and whether the truss
    is mirrored."""
    turned = False
    if vary.mirror:
        index, side = divmod(index, 2)
        turned = side == 1
    picks: list[int] = []
    for choice in vary.choices:
        index, place = divmod(index, len(choice.values))
        picks.append(place)
    return tuple(picks), turned


def numbers_at(vary: Vary, index: int) -> tuple[Numbers, bool]:
    """Choice number `index` of all there are: its numbers, and whether it is mirrored."""
    picks, turned = picks_at(vary, index)
    numbers = ((c, c.values[place]) for c, place in zip(vary.choices, picks, strict=True))
    return tuple(numbers), turned


def made(problem: Problem, numbers: Sequence[tuple[VariedPart, Exact]], turned: bool) -> Problem:
    """The problem with numbers put in, turned round where it is `turned`, its words filled in.

    What comes out varies no more.
    """
    pushes = {
        (joint, choice.part): value
        for choice, value in numbers
        if choice.of == "loads"
        for joint in choice.joints
    }
    places = {
        (joint, choice.part): value
        for choice, value in numbers
        if choice.of == "joints"
        for joint in choice.joints
    }
    sizes = {
        (member, choice.part): value
        for choice, value in numbers
        if choice.of == "spread"
        for member in choice.joints
    }
    factors = {choice.part: value for choice, value in numbers if choice.of == "scale"}
    changed = replace(
        problem,
        loads=tuple(load_with(load, pushes) for load in problem.loads),
        joints=tuple(joint_at(joint, places, factors) for joint in problem.joints),
        spreads=tuple(_spread(spread, sizes) for spread in problem.spreads),
        supports=tuple(support_at(support, factors) for support in problem.supports),
    )
    if turned:
        changed = mirrored(changed)
    return replace(with_words(changed, mirrored=turned), vary=None)


def load_with(load: Load, pushes: Mapping[tuple[str, str], Exact]) -> Load:
    """The load with the sizes of `pushes`, by joint and part."""
    if not any(joint == load.joint for joint, _ in pushes):
        return load
    return replace(
        load,
        pushes=tuple((way, pushes.get((load.joint, way), size)) for way, size in load.pushes),
        size=load.size and pushes.get((load.joint, "size"), load.size),
        angle=load.angle and pushes.get((load.joint, "angle"), load.angle),
    )


def _spread(spread: Spread, sizes: Mapping[tuple[str, str], Exact]) -> Spread:
    """The load with the size that is chosen on the first of its members that one is chosen on."""

    def chosen(part: str, size: Exact) -> Exact:
        return next((sizes[name, part] for name in spread.on if (name, part) in sizes), size)

    return replace(
        spread,
        pushes=tuple(
            (way, chosen("total" if spread.total else way, size)) for way, size in spread.pushes
        ),
    )


def joint_at(
    joint: Joint, places: Mapping[tuple[str, str], Exact], factors: Mapping[str, Exact]
) -> Joint:
    """The joint where `places`, by joint and part, put it, and `factors`, by part, then move it."""
    x, y = places.get((joint.name, "x"), joint.x), places.get((joint.name, "y"), joint.y)
    return replace(joint, x=times(x, factors.get("x")), y=times(y, factors.get("y")))


def support_at(support: Support, factors: Mapping[str, Exact]) -> Support:
    """The support with its fixed point where the factors move it."""
    if support.anchor is None or not factors:
        return support
    x, y = support.anchor
    return replace(support, anchor=(times(x, factors.get("x")), times(y, factors.get("y"))))


def times(number: Exact, factor: Exact | None) -> Exact:
    """The product, exact, and written so that a file can hold it."""
    if factor is None:
        return number
    if number.fraction is not None and factor.fraction is not None:
        return exact(Fraction(number.fraction * factor.fraction))
    product = amount(f"({number.text})*({factor.text})")
    return number if isinstance(product, Wrong) else product
