"""Which slip does the working of a wrong value show, as the sum that it was taken from?

`DE = 10.62 sin 30 = 5.31` is ΣFx at E, solved for DE, with the other component.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from tutor.judge.about import Equation, M, Value
from tutor.judge.chain import with_way
from tutor.judge.desk import Desk
from tutor.judge.equal_forces import LEFT_OUT
from tutor.judge.known_values import KnownValue, KnownValues
from tutor.judge.line import judge_line
from tutor.judge.line_judged import LineJudged
from tutor.judge.nearest import clearly_nearest
from tutor.judge.same import SAME, are_same, one_way
from tutor.judge.sum_before import sums_of
from tutor.judge.true_equation import TrueEquation
from tutor.judge.typed import TypedEquation, typed_equation
from tutor.judge.verdict import UNNAMED, Mistake
from tutor.judge.worked import side_of, with_the_way_of
from tutor.notation import Reading, Side, Step
from tutor.notation.elements.tree import Binary, Name, Negative, Node, Unit
from tutor.notation.elements.unreadable import Broken
from tutor.notation.formulas.evaluate import parts
from tutor.notation.lines.reading import link
from tutor.text import lowered

NOT_WRITTEN = "the sum for this value"
"""What a lone value was taken from, of which nothing was written down."""
COPIED = ("carried", "magnitude")
_AT = re.compile(r"\bat (?:joint |node |pin )?(\w+)")


def slip_in_working(
    desk: Desk, about: Value, step: Step, lines: Sequence[TypedEquation], unexplained: bool = False
) -> Mistake | None:
    """The one slip of the sum that the working of a value is nearest to, where it is clear which; else None.

    Where the value is `unexplained`, values that were never recorded may have been put into its working.
    """
    work = "" if shows_working(step) else NOT_WRITTEN
    slip = _slip_of_any(desk, about, step, lines, work)
    if slip is None and unexplained and not work:
        found = replace(desk, own=_with_all_found(desk, about.unknown))
        slip = _slip_of_any(found, about, step, lines, work)
    return slip if slip is None or not work else _of_value(about, slip)


def _of_value(about: Value, slip: Mistake) -> Mistake:
    """A slip of a sum that was not written down, with the value that it is for."""
    return replace(slip, place=f"For {about.unknown}: {lowered(slip.place)}")


def left_out_of_zero(
    desk: Desk, about: Value, step: Step, lines: Sequence[TypedEquation]
) -> tuple[Mistake, ...]:
    """What a force that is said to be zero leaves out of a sum; nothing where that shows something else.

    The sum is one at the joint that the words name, else the one where the fewest forces are left out.
    """
    force = Name(about.unknown, step.span)
    side = next((side for side in step.sides if side.numeric), None)
    reading = side and _as_equation(force, side.node, side, step)
    if not reading:
        return ()
    here = set(_AT.findall(step.text))
    sums = [each for each in sums_of(desk.problem, about.unknown) if not isinstance(each, M)]
    told = [_mistakes_in(desk, each, typed_equation(reading), lines, NOT_WRITTEN) for each in sums]
    found = [
        (each.joint not in here, len(mistakes), mistakes)
        for each, mistakes in zip(sums, told, strict=True)
        if mistakes and all(mistake.code in LEFT_OUT for mistake in mistakes)
    ]
    left_out = min(found, key=lambda one: one[:2])[2] if found else ()
    return tuple(_of_value(about, mistake) for mistake in left_out)


def _slip_of_any(
    desk: Desk, about: Value, step: Step, lines: Sequence[TypedEquation], work: str
) -> Mistake | None:
    side = _working(desk, about.unknown, step)
    if side is None:
        return None
    force = Name(about.unknown, step.span)
    for one, other in ((force, side.node), _cleared(force, side.node)):
        reading = _as_equation(one, other, side, step)
        if reading is None:
            continue
        if slip := _slip_in(desk, about.unknown, typed_equation(reading), lines, work):
            return slip
    return None


def slip_in_sum(
    desk: Desk, about: Equation, unknown: str, step: Step, lines: Sequence[TypedEquation]
) -> Mistake | None:
    """The one slip that the working of a force found from a sum shows as that sum; None where it shows none."""
    side = _working(desk, unknown, step) if shows_working(step) else None
    if side is None or unknown not in TrueEquation(desk.problem, about, desk.own).acting:
        return None
    force = Name(unknown, step.span)
    for one, other in ((force, side.node), _cleared(force, side.node)):
        reading = _as_equation(one, other, side, step)
        typed = reading and typed_equation(reading)
        slip = typed and _only_slip(desk, about, typed, lines)
        if typed and slip:
            return None if _only_reckoned(slip, unknown, typed, lines) else slip
    return None


def _only_reckoned(
    slip: Mistake, unknown: str, typed: TypedEquation, lines: Sequence[TypedEquation]
) -> bool:
    """Whether a number said to be copied wrongly is what a product of the sum before was worked out to."""
    return slip.code in COPIED and any(
        line.names == {unknown} and _has_product_of(line, typed, unknown) for line in lines
    )


def _has_product_of(line: TypedEquation, typed: TypedEquation, unknown: str) -> bool:
    """Whether one number alone stands in a working where the sum has a product; all others are the same."""
    theirs, ours = _by_size(line, unknown), _by_size(typed, unknown)
    for size, is_one in tuple(theirs):
        same = next((own for own in ours if are_same(size, own[0])), None)
        if same is not None:
            theirs.remove((size, is_one))
            ours.remove(same)
    match theirs, ours:
        case [(product, is_one)], [(number, is_alone)]:
            return is_alone and not is_one and one_way(product, number)
    return False


def _by_size(line: TypedEquation, unknown: str) -> list[tuple[float, bool]]:
    """What each number of a line comes to for a force, and whether it is one number as typed."""
    beside = line.unknowns[unknown].value
    pairs = zip(line.constants, line.factors, strict=True)
    return [(term.value / beside, factors.is_one_number) for term, factors in pairs]


def _with_all_found(desk: Desk, unknown: str) -> KnownValues:
    """What the student has, and the right value of all else but the force that is worked out."""
    own = desk.own
    right = {
        name: KnownValue(value * own.sign(name), SAME * abs(value))
        for name, value in desk.values().items()
        if name != unknown
    }
    return replace(own, known={**right, **own.known})


def _slip_in(
    desk: Desk, unknown: str, typed: TypedEquation, lines: Sequence[TypedEquation], work: str
) -> Mistake | None:
    """The one slip that an equation shows as the sum that it is clearly nearest to; else None."""
    among = [
        each
        for each in sums_of(desk.problem, unknown)
        if unknown in TrueEquation(desk.problem, each, desk.own).acting
    ]
    given = (typed, desk.problem, desk.own, desk.values())
    meant = clearly_nearest(*given, among, solved=True)
    return None if meant is None else _only_slip(desk, meant, typed, lines, work)


def _only_slip(
    desk: Desk,
    meant: Equation,
    typed: TypedEquation,
    lines: Sequence[TypedEquation],
    work: str = "",
) -> Mistake | None:
    """The slip of a line that has one alone and named, as the sum that is meant; else None."""
    mistakes = _mistakes_in(desk, meant, typed, lines, work)
    if len(mistakes) != 1 or mistakes[0].code in (UNNAMED, "arithmetic"):
        return None
    return mistakes[0]


def _mistakes_in(
    desk: Desk, meant: Equation, typed: TypedEquation, lines: Sequence[TypedEquation], work: str
) -> tuple[Mistake, ...]:
    """The mistakes of an equation as the sum that is meant, wherever they stand."""
    line = LineJudged(
        desk.problem, meant, typed, desk.names, desk.own, desk.standing, lines, desk.values, work
    )
    return tuple(replace(mistake, span=None) for mistake in judge_line(line).mistakes)


def shows_working(step: Step) -> bool:
    """Whether a number of a statement is worked out from others."""
    return any(side.numeric and _works_out(side) for side in step.sides)


def _working(desk: Desk, unknown: str, step: Step) -> Side | None:
    """The first side of a statement that works something out, else its number, with its way as a sign."""
    numeric = [side for side in step.sides if side.numeric]
    if not numeric:
        return None
    side = next(filter(_works_out, numeric), numeric[-1])
    return with_way(desk, with_the_way_of(side, step.sides[-1]), side_of(unknown, step.span))


def _works_out(side: Side) -> bool:
    node = side.node.inner if isinstance(side.node, Negative) else side.node
    return isinstance(node, Binary) and not isinstance(node.right, Unit)


def _as_equation(force: Node, working: Node, side: Side, step: Step) -> Reading | None:
    """A force set equal to what it is worked out from; None where a number is too large."""
    try:
        left, right = (
            replace(side, node=node, terms=tuple(parts(node, step.frame)))
            for node in (force, working)
        )
    except Broken:
        return None
    return link(step.text, left, right, None, step.frame)


def _cleared(force: Node, node: Node) -> tuple[Node, Node]:
    """A force and its working, both multiplied by the divisor of the latter, or divided by its factor."""
    match node:
        case Negative(inner):
            force, cleared = _cleared(force, inner)
            return force, Negative(cleared, node.span)
        case Binary("/", above, below):
            return Binary("*", below, force, node.span), above
        case Binary("*", Binary("+" | "-") as total, by) | Binary(
            "*", by, Binary("+" | "-") as total
        ) if not isinstance(by, Unit):
            return Binary("/", force, by, node.span), total
        case _:
            return force, node
