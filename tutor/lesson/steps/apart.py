"""Which statements written in one line are each a line of their own?

ΣFy: 0.8 AD = 12, ΣFx: AB + 0.6 AD = 0 are two lines beside each other; 0.8 AD = 12, AD = 15 is one
line with its value.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Sequence
from dataclasses import replace
from itertools import pairwise

from tutor.judge import Judge
from tutor.judge.chain import all_numbers
from tutor.judge.worked import value_ended, value_given
from tutor.lesson.event import Event
from tutor.lesson.reply import Reply, Say
from tutor.lesson.state import State
from tutor.lesson.step import Handler
from tutor.lesson.steps.headings import Typed, value_named
from tutor.notation import Label, Line, Step, Unreadable, without_marks
from tutor.notation.elements.lexicon import says

BETWEEN = re.compile(
    r"(?:\\(?:[,;:! \\]|q?quad\b)|[\s,;&∴⇒→]|(?<!\d)\.|[-=]>|(?P<word>(?<!\w)[^\W\d]+))$"
)


def statements_apart(line: Typed, known: Collection[str] = ()) -> tuple[str, ...]:
    """The texts of the lines that stand beside each other in one; none for a single line.

    `known` are the unknowns with a value. Two values are parted where only a blank stands between
    them, if neither is known yet: AB = 5 BC = 3 could else be a chain.
    """
    if isinstance(line, Unreadable):
        return ()
    parts = _parts(line, known)
    if len(parts) > 1 and all(0 < len(part) < len(line.text) for part in parts):
        return parts
    for other in line.alternatives:
        names = [value_given(step) for step in other.steps]
        fresh = len(set(names)) == len(names) > 1 and not {None, *known} & set(names)
        if fresh and len(other.steps) > len(line.steps):
            return _parts(other, known)
    return ()


def take_apart(
    typed: Handler, state: State, event: Event, desk: Judge
) -> tuple[State, Reply] | None:
    """Lines beside each other, each typed and answered in turn; None for a single line.

    The line is accepted where anything of it is kept, so that undo takes that back and no more.
    """
    text = event.text("text")
    parts = statements_apart(desk.read(text), state.result)
    if any(isinstance(desk.read(part), Unreadable) for part in parts):
        parts = statements_apart(desk.read(without_marks(text)), state.result) or parts
    return answer_each(typed, parts, state, event, desk) if parts else None


def answer_each(
    typed: Handler, parts: Sequence[str], state: State, event: Event, desk: Judge
) -> tuple[State, Reply]:
    """Each of several lines typed and answered in turn, with the name of one that is not accepted."""
    said: list[Say] = []
    accepted, failed = False, None
    data = dict(event.data)
    for text in parts:
        state, reply = typed(state, replace(event, data={**data, "text": text}), desk)
        data.pop("about", None)
        if not reply.accepted:
            failed = failed or reply.verdict
            of = value_named(desk.read(text), state.result) or f"“{text}”"
            said.append(Say("note", f"Of {of}:"))
        said += reply.said
        accepted = accepted or reply.accepted
    return state, Reply(tuple(said), accepted, failed)


def _parts(line: Line, known: Collection[str]) -> tuple[str, ...]:
    """The texts of the groups of statements that belong together."""
    groups: list[list[Step]] = []
    for step in _in_the_open(line, line.steps):
        if groups and (
            all(map(_works_out, groups[-1])) or not _is_own(line, groups[-1], step, known)
        ):
            groups[-1].append(step)
        else:
            groups.append([step])
    return _texts(line, [0, *(_start(group[0]) for group in groups[1:])])


def _works_out(step: Step) -> bool:
    """Whether a statement only works out a number that a line goes on with: 60 - 30 = 30 so ..."""
    return len(step.sides) > 1 and all_numbers(step)


def statements_behind(line: Line, step: Step) -> tuple[str, ...]:
    """The texts of the statements behind one of a line, each by itself."""
    behind = _in_the_open(line, line.steps[line.steps.index(step) + 1 :])
    return _texts(line, [_start(each) for each in behind])


def _in_the_open(line: Line, steps: Sequence[Step]) -> list[Step]:
    """Those of the statements of a line that stand in the fewest brackets, as they stand in it; it is cut only
    between these. What a bracket works out is read before the statement that it stands in."""
    enclosed = _enclosed(line.text)

    def depth(step: Step) -> int:
        return sum(_start(step) in inside for inside in enclosed)

    fewest = min(map(depth, line.steps))
    return sorted((each for each in steps if depth(each) <= fewest), key=_start)


def _enclosed(text: str) -> list[range]:
    """The insides of the brackets of a text that close again, whatever closes them."""
    opened: list[int] = []
    insides = []
    for at, char in enumerate(text):
        if char in "([{":
            opened.append(at)
        elif char in ")]}" and opened:
            insides.append(range(opened.pop() + 1, at + 1))
    return insides


def _texts(line: Line, starts: Sequence[int]) -> tuple[str, ...]:
    """What a line says from each of these columns to the next."""
    texts = [line.text[start:end] for start, end in pairwise([*starts, len(line.text)])]
    return tuple(map(_without_joint, texts))


def _without_joint(text: str) -> str:
    """A statement without the sign or word that joins it to the next one: a comma, "and", "so".

    The sign for a formula goes where it is cut off from its other.
    """
    text = text.replace("$", "") if text.count("$") % 2 else text
    while (found := BETWEEN.search(text)) is not None:
        if found["word"] is not None and not says(found["word"], "and", "so"):
            break
        text = text[: found.start()]
    return text.strip()


def _is_own(line: Line, group: list[Step], step: Step, known: Collection[str]) -> bool:
    """Whether a statement begins a line of its own behind those of `group`."""
    if len(step.sides) < 2 or (step.follows and not _of_another(group, step)):
        return False
    if (label := _sum_of(step.label)) is not None:
        return label != _sum_of(
            group[0].label or (line.label if group[0] is line.steps[0] else None)
        )
    here = {name for each in group for name in _names(each)}
    ended = value_ended(step, known)
    if ended is None:
        fresh = _names(step) - here
        return bool(fresh)
    others = {value_ended(each, known) for each in group} - {None, ended}
    return bool(others) or ended not in here


def _of_another(group: list[Step], step: Step) -> bool:
    """Whether what is said to follow is of other forces: an equation of none of those before it, or another value."""
    if not _names(step) & {name for each in group for name in _names(each)}:
        return True
    name = value_given(step)
    given = {value_given(each) for each in group}
    return name is not None and None not in given and name not in given


def _sum_of(label: Label | None) -> tuple[object, ...] | None:
    """What sum a heading names, or None."""
    if label is None or label.kind is None:
        return None
    return label.kind, label.point, label.degrees, label.between


def _names(step: Step) -> set[str]:
    return {term.name for side in step.sides for term in side.terms if term.name is not None}


def _start(step: Step) -> int:
    """Where a statement starts, with its heading."""
    return step.span.start if step.label is None else min(step.span.start, step.label.span.start)
