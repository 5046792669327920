"""Is a whole line right: each statement of it, each link of a chain, and the one that was asked for?

A line on paper may say several things: `3/5 F_AE = 9 ∴ F_AE = 15 kN (T)`. Each is judged in its order
with what stands before it; the one that fails is named.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from tutor.judge.about import Equation, Value
from tutor.judge.chain import broken_link, readings_of
from tutor.judge.desk import Desk
from tutor.judge.line import Line, judge_line
from tutor.judge.other_equation import holds_at_solution
from tutor.judge.typed import TypedEquation, typed_equation
from tutor.judge.value_line import as_value, judge_value_line
from tutor.judge.verdict import Remark, Verdict
from tutor.notation import Line as Typewritten
from tutor.notation.lexicon import known_word
from tutor.notation.tree import Name, Node, children
from tutor.notation.unreadable import Broken

PASSED = "Passed over without being read: {words}."
RATIO = "Right: the components of {name} lie in this ratio. It is a slope, and no equation yet."


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
        verdict = judge_value_line(desk, about, line)
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
            own = typed_equation(reading)
            if (ratio := _ratio_of_components(own)) is not None:
                main = main or replace(ratio, about=about)
                continue
            verdict = judge_line(
                Line(
                    *(desk.problem, about, own, desk.names, desk.own),
                    *(desk.standing, lines, desk.values),
                )
            )
            if verdict.right:
                main = _better(main, verdict)
                lines.append(own)
            elif main is not None and (value := as_value(desk, line, step, lines)) is not None:
                if not value.right:
                    return replace(value, about=about)
            elif _is_true(desk, verdict, own, lines):
                beside = beside or verdict
            else:
                return verdict
        if (broken := broken_link(desk, step)) is not None:
            return replace(broken, about=about)
    if main is not None:
        return main
    return beside or _no_equation(about, line)


def _ratio_of_components(line: TypedEquation) -> Verdict | None:
    """The verdict on AE_x = 4/3 AE_y: true of the slope, and no equation; None for anything else."""
    if not line.says_nothing:
        return None
    reading = line.reading
    names = {node.name for side in (reading.left, reading.right) for node in _components_in(side)}
    if not names or line.cancelled != names:
        return None
    said = RATIO.format(name=" and ".join(sorted(names)))
    return Verdict("right", said, remarks=(Remark("component", said),), reading=reading)


def _components_in(node: Node) -> Iterator[Name]:
    """The unknowns in a tree that were typed as a component."""
    if isinstance(node, Name):
        if node.share is not None:
            yield node
        return
    for child in children(node):
        yield from _components_in(child)


def _better(main: Verdict | None, verdict: Verdict) -> Verdict:
    """Of two right statements the one that shows the equation, the first where both do."""
    if main is None:
        return verdict
    result = any(remark.code in ("result", "dependent") for remark in main.remarks)
    return verdict if result and not verdict.remarks else main


def _is_true(
    desk: Desk, verdict: Verdict, line: TypedEquation, lines: Sequence[TypedEquation]
) -> bool:
    """Whether a statement that is not the equation asked for is true all the same."""
    if verdict.kind == "undecided" or verdict.true_of is not None:
        return True
    if any(mistake.code in ("other-equation", "other-point") for mistake in verdict.mistakes):
        return True
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
