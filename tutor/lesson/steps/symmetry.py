"""Which value does a line take from the other side of the truss: "by symmetry DE = AB = -30 kN"?

The truss, its loads and its reactions have to be symmetrical for that. A value found on one side is then that
of its mirror image; two reactions take half of the loads each.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from tutor.judge import Judge, Mistake, Value, Verdict
from tutor.judge.by_symmetry import NO_IMAGES, NOT_ALIKE, SYMMETRY, WHOLE
from tutor.judge.kind import Case
from tutor.judge.known_values import KnownValue, positive_sense
from tutor.judge.mirror import Mirror, mirrored
from tutor.judge.mistakes import KINDS
from tutor.judge.same import NEAR, SAME, are_same
from tutor.judge.worked import side_value
from tutor.lesson.event import Event
from tutor.lesson.reply import Reply, Say
from tutor.lesson.state import State
from tutor.lesson.step import Handler
from tutor.lesson.steps.apart import answer_each
from tutor.lesson.steps.value_kept import keep_value
from tutor.lesson.trying import wrong
from tutor.notation import Side, Step, Unreadable
from tutor.text import listed

AMID = re.compile(
    r"^(?P<before>.*=.*?)[,;]?\s+(?:and\s+)?(?P<said>(?:by|from|due to|because of)\s+(?:the\s+)?symmetry\b[^=]*=.*?)"
    r"(?:[,;]\s*(?:(?:so|hence|thus|therefore)\b|∴|⇒)\s*(?P<rest>\S.*))?$",
    re.IGNORECASE,
)
EACH = re.compile(
    r"\beach +(?:of +the +(?:two +)?)?(?:supports?|reactions?|ends?)\b[^=0-9]*?"
    r"(?:carries|takes|bears|gets|is|has|provides|supports|=) *(?:half[^=0-9]*= *)?(?P<value>[0-9][^=,;]*?)[ .]*$",
    re.IGNORECASE,
)
RESTS_ON = "This rests on symmetry: joints, members, loads and reactions are alike on both sides."
NO_VALUE = "{names} have no value yet: find one of them first; the other follows by symmetry."
NOT_HALF = "By symmetry each of the two supports takes half of the loads; add them up again."
OTHER_VALUE = "By symmetry they are alike, but {name} is {value:.4g}, not {typed}."


@dataclass(frozen=True)
class Alike:
    """Unknowns that a line says to be the same, and the number that it gives them, or None."""

    names: tuple[str, ...]
    number: Side | None
    text: str


def take_symmetry(
    typed: Handler, state: State, event: Event, desk: Judge
) -> tuple[State, Reply] | None:
    """What is taken of a line that says that forces are alike by symmetry; None for any other line.

    A line that says so in the midst of others is parted there.
    """
    text = event.text("text")
    if SYMMETRY.search(text) is None:
        return None
    if (amid := AMID.match(text)) is not None:
        parts = [part for part in amid.group("before", "said", "rest") if part]
        return answer_each(typed, parts, state, event, desk)
    alike = _alike(state, text, desk)
    if not alike:
        return None
    mirror = mirrored(state.problem, desk.values())
    said: list[Say] = []
    accepted, verdict = False, None
    for each in alike:
        state, reply = _take(state, event, desk, mirror, each)
        said += reply.said
        accepted, verdict = accepted or reply.accepted, verdict or reply.verdict
    if accepted:
        said.append(Say("note", RESTS_ON))
    return state, Reply(tuple(said), accepted, verdict)


def _alike(state: State, text: str, desk: Judge) -> list[Alike]:
    """What a line says to be alike, statement by statement; none where one of them says anything else."""
    if (each := EACH.search(text)) is not None:
        names = [r.name for r in state.problem.reactions if abs(r.direction.y) == 1.0]
        text = f"{' = '.join(names)} = {each['value']}" if len(names) == 2 else text
    line = desk.read(text)
    if isinstance(line, Unreadable) or (line.label and line.label.kind):
        return []
    found = [_said_alike(state, step, line.text) for step in line.steps]
    return [each for each in found if each is not None] if None not in found else []


def _said_alike(state: State, step: Step, text: str) -> Alike | None:
    names = tuple(dict.fromkeys(side.name for side in step.sides if not side.numeric))
    numbers = [side for side in step.sides if side.numeric]
    sizes = [abs(side_value(side)) for side in numbers]
    if len(names) < 2 or None in names or not all(are_same(sizes[0], size) for size in sizes):
        return None
    known = [name for name in names if name in state.result]
    if not numbers and not known:
        return None
    own = tuple(name for name in names if name is not None)
    return Alike(
        own, numbers[-1] if numbers else None, text[step.span.start : step.span.end].strip()
    )


def _take(
    state: State, event: Event, desk: Judge, mirror: Mirror, alike: Alike
) -> tuple[State, Reply]:
    first, *others = alike.names
    if not mirror.images:
        return _not_shown(state, event, desk, alike, NOT_ALIKE.format(why=mirror.why))
    if any(mirror.images.get(first) != other for other in others):
        text = NO_IMAGES.format(names=listed(list(alike.names)))
        return _not_shown(state, event, desk, alike, text)
    name = next((name for name in alike.names if name in state.result), None)
    if name is None and first not in state.problem.reaction:
        return state, Reply((Say("note", NO_VALUE.format(names=listed(list(alike.names)))),))
    name, value = (first, None) if name is None else (name, state.own.known[name])
    typed = None if alike.number is None else _typed(state, name, alike.number)
    if value is None:
        assert typed is not None
        true = state.own.sign(name) * desk.values()[name]
        if not _same(typed, KnownValue(true, 0.0)):
            text = WHOLE if are_same(abs(typed.value), 2 * abs(true)) else NOT_HALF
            return _refused(state, event, name, text, "arithmetic")
        value = typed
    elif typed is not None and not _same(typed, value):
        said = alike.text.rpartition("=")[2].strip()
        text = OTHER_VALUE.format(name=name, value=value.value, typed=said)
        return _refused(state, event, first, text, "arithmetic")
    return _kept(state, event, alike.names, name, value)


def _kept(
    state: State, event: Event, names: Sequence[str], name: str, value: KnownValue
) -> tuple[State, Reply]:
    """The values of all that are alike kept, those that have none yet."""
    said: list[Say] = []
    true = state.own.sign(name) * value.value
    verdict = Verdict("right", "Right.", about=Value(name))
    for each in names:
        if each in state.result:
            continue
        own = state.own.sign(each) * true
        verdict = Verdict("right", "Right.", about=Value(each), value=own, radius=value.radius)
        state, reply = keep_value(state, event, each, verdict, Reply(()))
        said += reply.said
    said = said or [Say("right", "Right.")]
    return state, Reply(tuple(said), True, verdict)


def _typed(state: State, name: str, side: Side) -> KnownValue:
    """The number typed for an unknown, under the student's own sense of it."""
    number, sign = side_value(side), state.own.sign(name)
    radius = sum(term.radius for term in side.terms)
    if side.letter is not None and name in state.problem.member:
        number = abs(number) * (sign if side.letter == "T" else -sign)
    elif side.sense is not None and name in state.problem.reaction:
        number = abs(number) * sign * positive_sense(state.problem, name, side.sense, sign)
    return KnownValue(number, radius)


def _same(typed: KnownValue, value: KnownValue) -> bool:
    rounded = min(typed.radius, NEAR * abs(value.value)) + value.radius
    return abs(typed.value - value.value) <= max(SAME * abs(value.value), rounded) + 1e-9


def _not_shown(
    state: State, event: Event, desk: Judge, alike: Alike, text: str
) -> tuple[State, Reply]:
    """That symmetry does not show it: wrong only where it is not so either."""
    values = [desk.values()[name] for name in alike.names]
    if all(are_same(values[0], value) for value in values):
        return state, Reply((Say("note", text),))
    return _refused(state, event, alike.names[0], text, "symmetry")


def _refused(state: State, event: Event, name: str, text: str, code: str) -> tuple[State, Reply]:
    about, kind = Value(name), KINDS[code]
    case = Case(state.problem, about, name)
    mistake = Mistake(code, name, text, kind.reason(case), kind.place(case).text)
    state = wrong(state, event, about, (code,), event.text("text"), (mistake,))
    verdict = Verdict("wrong", text, (mistake,), about=about)
    return state, Reply((Say("wrong", text),), False, verdict)
