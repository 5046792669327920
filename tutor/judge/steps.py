"""Is a whole line right: each statement of it, each link of a chain, and the one that was asked for?

A line on paper may say several things: `3/5 F_AE = 9 ∴ F_AE = 15 kN (T)`. Each is judged in its order
with what stands before it; the one that fails is named.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from tutor.judge.about import Equation, Value
from tutor.judge.blocks import rounded_by
from tutor.judge.kind import Case
from tutor.judge.known_values import KnownValues, is_link, positive_sense
from tutor.judge.line import Line, judge_line
from tutor.judge.mistakes import KINDS
from tutor.judge.other_equation import holds_at_solution
from tutor.judge.same import NEAR, SAME
from tutor.judge.typed import TypedEquation, typed_equation
from tutor.judge.values import judge_value
from tutor.judge.verdict import Mistake, Remark, Verdict
from tutor.model import Problem
from tutor.notation import Line as Typewritten
from tutor.notation import Names, Reading, Side, Step, ValueReading
from tutor.notation.lexicon import known_word
from tutor.notation.reading import link
from tutor.notation.tree import Name, Negative, Node, children
from tutor.notation.unreadable import Broken
from tutor.notation.value import value_in

PASSED = "Passed over without being read: {words}."
NOT_EQUAL = "The first part is right, but {other} is not {one}."
COMPONENT = "Right: this is a component of {name}; the force itself is still to come."
RATIO = "Right: the components of {name} lie in this ratio. It is a slope, and no equation yet."
DOES_NOT_HOLD = "“{text}” does not hold, so nothing can follow from it."


@dataclass(frozen=True)
class Desk:
    """What a line is judged by: the problem, the student's own, what stands, and the solved truss."""

    problem: Problem
    names: Names
    own: KnownValues
    standing: Sequence[Equation]
    lines: Sequence[TypedEquation]
    values: Callable[[], Mapping[str, float]]
    radians: Callable[[], Sequence[TypedEquation]]


def judge_typewritten(desk: Desk, about: Equation | Value, line: Typewritten) -> Verdict:
    """The verdict on a line: of several readings as good as each other, the first that is right."""
    verdict = _judged(desk, about, line)
    for other in () if verdict.right else line.alternatives:
        again = _judged(desk, about, other)
        if again.right:
            return again
    return verdict


def _judged(desk: Desk, about: Equation | Value, line: Typewritten) -> Verdict:
    if isinstance(about, Value):
        verdict = _value(desk, about, line)
    else:
        verdict = _equation(desk, about, line)
    words = [line.text[span.start : span.end] for span in line.passed]
    unread = [word for word in words if not all(map(known_word, word.split()))]
    if verdict.right and unread:
        said = Remark("passed", PASSED.format(words=", ".join(f"“{word}”" for word in unread)))
        return replace(verdict, remarks=(*verdict.remarks, said))
    return verdict


def _equation(desk: Desk, about: Equation, line: Typewritten) -> Verdict:
    """The verdict on a line where an equation is asked for: one statement has to be it, all true."""
    lines = list(desk.lines)
    main: Verdict | None = None
    beside: Verdict | None = None
    for step in line.steps:
        for reading in readings_of(desk, line, step):
            if (ratio := _ratio_of_components(reading)) is not None:
                main = main or replace(ratio, about=about)
                continue
            verdict = judge_line(
                Line(
                    *(desk.problem, about, reading, desk.names, desk.own),
                    *(desk.standing, lines, desk.values),
                )
            )
            if verdict.right:
                main = _better(main, verdict)
                lines.append(typed_equation(reading))
            elif main is not None and (value := _as_value(desk, line, step, lines)) is not None:
                if not value.right:
                    return replace(value, about=about)
            elif _is_true(desk, verdict, reading, lines):
                beside = beside or verdict
            else:
                return verdict
        if (broken := _broken_link(desk, step)) is not None:
            return replace(broken, about=about)
    if main is not None:
        return main
    return beside or _no_equation(about, line)


def _ratio_of_components(reading: Reading) -> Verdict | None:
    """The verdict on AE_x = 4/3 AE_y: true of the slope, and no equation; None for anything else."""
    line = typed_equation(reading)
    names = {node.name for side in (reading.left, reading.right) for node in components_in(side)}
    if not line.says_nothing or not names or line.cancelled != names:
        return None
    said = RATIO.format(name=" and ".join(sorted(names)))
    return Verdict("right", said, remarks=(Remark("component", said),), reading=reading)


def _as_value(
    desk: Desk, line: Typewritten, step: Step, lines: Sequence[TypedEquation]
) -> Verdict | None:
    """The verdict on a statement behind the equation that is the value of one force; else None."""
    names = {side.name for side in step.sides if not side.numeric}
    name = names.pop() if len(names) == 1 else None
    if name is None or not any(side.numeric for side in step.sides):
        return None
    try:
        return _judge_value(desk, Value(name), value_in(line.text, step), lines)
    except Broken:
        return None


def _better(main: Verdict | None, verdict: Verdict) -> Verdict:
    """Of two right statements the one that shows the equation, the first where both do."""
    if main is None:
        return verdict
    result = any(remark.code in ("result", "dependent") for remark in main.remarks)
    return verdict if result and not verdict.remarks else main


def _is_true(
    desk: Desk, verdict: Verdict, reading: Reading, lines: Sequence[TypedEquation]
) -> bool:
    """Whether a statement that is not the equation asked for is true all the same."""
    if verdict.kind == "undecided" or verdict.true_of is not None:
        return True
    if any(mistake.code in ("other-equation", "other-point") for mistake in verdict.mistakes):
        return True
    line = typed_equation(reading)
    alone = len(line.names) == 1 and len(line.constants) <= 1
    return (
        alone
        and bool(lines)
        and holds_at_solution(line, desk.problem, desk.own, desk.values(), desk.problem.tolerance)
    )


def _no_equation(about: Equation, line: Typewritten) -> Verdict:
    """A line without any equation: a number alone, say."""
    end = len(line.text.rstrip())
    unreadable = Broken("no-equals", end, end).about(line.text)
    return Verdict("unreadable", unreadable.message, about=about, unreadable=unreadable)


def readings_of(desk: Desk, line: Typewritten, step: Step) -> Iterator[Reading]:
    """The links of a chain that hold an unknown, each as an equation; letters and arrows as signs.

    Where none does, the first two sides are one, with all values put in.
    """
    label = step.label or line.label
    for index, (one, other) in enumerate(pairwise(step.sides)):
        if not (one.numeric and other.numeric) or (index == 0 and _all_numbers(step)):
            first, second = _with_way(desk, one, other), _with_way(desk, other, one)
            yield link(line.text, first, second, label, step.frame)


def _all_numbers(step: Step) -> bool:
    return all(side.numeric for side in step.sides)


def _with_way(desk: Desk, side: Side, other: Side) -> Side:
    """A number with its T, C or arrow as a sign under the student's own sense of the force beside it."""
    name = other.name
    if name is None or not side.numeric or (side.letter is None and side.sense is None):
        return side
    value = sum(term.value for term in side.terms)
    sign = desk.own.sign(name)
    if side.letter is not None:
        if name not in desk.problem.member and not is_link(desk.problem, name):
            return side
        way = sign if side.letter == "T" else -sign
    elif name in desk.problem.reaction and side.sense is not None:
        way = sign * positive_sense(desk.problem, name, side.sense, sign)
    else:
        return side
    if (value < 0) == (way < 0):
        return side
    terms = tuple(term._replace(value=-term.value) for term in side.terms)
    return replace(side, node=Negative(side.node, side.span), terms=terms)


def _broken_link(desk: Desk, step: Step) -> Verdict | None:
    """The verdict on the first two numbers of a chain that are not equal; None where all are."""
    numeric = [(one, other) for one, other in pairwise(step.sides) if one.numeric and other.numeric]
    if _all_numbers(step):
        numeric = numeric[1:]
    for one, other in numeric:
        if not _equal(one, other):
            text = NOT_EQUAL.format(one=_shown(step.text, one), other=_shown(step.text, other))
            kind = KINDS["arithmetic"]
            case = Case(desk.problem, Value(""))
            mistake = Mistake(kind.code, None, text, kind.reason(case), "", other.span)
            return Verdict("wrong", text, (mistake,))
    return None


def components_in(node: Node) -> Iterator[Name]:
    """The unknowns in a tree that were typed as a component."""
    if isinstance(node, Name):
        if node.share is not None:
            yield node
        return
    for child in children(node):
        yield from components_in(child)


def _shown(text: str, side: Side) -> str:
    return text[side.span.start : side.span.end]


def _equal(one: Side, other: Side) -> bool:
    """Whether the second number is the first, exactly or rounded; a letter or an arrow is a sign."""
    first, second = (_number(side) for side in (one, other))
    if one.letter or other.letter or one.sense or other.sense:
        backward = other.letter == "C" and one.letter is None
        opposed = backward and first > 0 and second > 0 and len(one.terms) == 1
        first, second = abs(first), abs(second)
        if opposed and one.figures is None:
            return abs(first - second) <= NEAR * first
    radius = sum(rounded_by(term.value, term.radius) for term in other.terms)
    off, size = abs(first - second), abs(first)
    own = sum(term.radius for term in one.terms)
    return off <= max(SAME * size, min(radius, NEAR * size)) + own + 1e-9


def _number(side: Side) -> float:
    return sum(term.value for term in side.terms)


def _value(desk: Desk, about: Value, line: Typewritten) -> Verdict:
    """The verdict on a line where a value is asked for: the last that names it is the result."""
    result = _result(about, line)
    lines = list(desk.lines)
    for step in line.steps:
        if (broken := _broken_link(desk, step)) is not None:
            return replace(broken, about=about)
        if step is result:
            continue
        for reading in readings_of(desk, line, step):
            each = typed_equation(reading)
            if not holds_at_solution(
                each, desk.problem, desk.own, desk.values(), desk.problem.tolerance
            ):
                return _not_so(desk, about, line, step)
            lines.append(each)
    if (component := _component(desk, about, result, line, lines)) is not None:
        return component
    try:
        value = value_in(line.text, result)
    except Broken as broken:
        reaction = "_" in about.unknown
        broken.words.setdefault("example", "12 or 12 left" if reaction else "12 or 12 C")
        unreadable = broken.about(line.text)
        return Verdict("unreadable", unreadable.message, about=about, unreadable=unreadable)
    return _judge_value(desk, about, value, lines)


def _judge_value(
    desk: Desk, about: Value, reading: ValueReading, lines: Sequence[TypedEquation]
) -> Verdict:
    true = desk.values()[about.unknown]
    return judge_value(desk.problem, about, reading, desk.own, true, lines, desk.radians)


def _result(about: Value, line: Typewritten) -> Step:
    """The statement that gives the value asked for: the last that names it, else the last."""
    naming = [
        step
        for step in line.steps
        if any(side.name == about.unknown for side in step.sides)
        and any(side.numeric for side in step.sides)
    ]
    return naming[-1] if naming else line.result


def _not_so(desk: Desk, about: Value, line: Typewritten, step: Step) -> Verdict:
    """That a statement before the result does not hold."""
    text = DOES_NOT_HOLD.format(text=line.text[step.span.start : step.span.end])
    kind = KINDS["not-equilibrium"]
    case = Case(desk.problem, about, about.unknown)
    mistake = Mistake("arithmetic", about.unknown, text, "", kind.place(case), step.span)
    return Verdict("wrong", text, (mistake,), about=about)


def _component(
    desk: Desk, about: Value, result: Step, line: Typewritten, lines: Sequence[TypedEquation]
) -> Verdict | None:
    """The verdict on a result for a component of the force, such as AE_y = 9; None for any other."""
    named = [side.node for side in result.sides if isinstance(side.node, Name) and side.node.share]
    numbers = [side for side in result.sides if side.numeric]
    if not named or not numbers or named[0].name != about.unknown:
        return None
    share, number = named[0].share, numbers[-1]
    assert share is not None
    if not share.factor:
        return None
    radius = sum(term.radius for term in number.terms) / abs(share.factor)
    whole = ValueReading(
        line.text, _number(number) / share.factor, radius, number.letter, number.sense,
        about.unknown, number.unit, number.span, None,
    )  # fmt: skip
    verdict = _judge_value(desk, about, whole, lines)
    if not verdict.right:
        return verdict
    said = COMPONENT.format(name=about.unknown)
    remark = Remark("component", said)
    return replace(verdict, text=said, value=None, remarks=(remark, *verdict.remarks))
