"""What are the hints for a line or a value, and which of them does the student need now?"""

from __future__ import annotations

from dataclasses import replace

from tutor.judge import Equation, Judge, M, Value, right_line
from tutor.judge.kind import force_in_words
from tutor.judge.true_equation import TrueEquation
from tutor.lesson.hints import Levels
from tutor.lesson.place import Place
from tutor.lesson.solvable import in_words_together, lines_giving
from tutor.lesson.state import Result, State
from tutor.lesson.steps.result_words import result_as_typed
from tutor.text import listed, raised


def wrong_place(state: State) -> Place | None:
    """Where the last try went wrong, if nothing right came after it; else None."""
    last = state.tries[-1] if state.tries else None
    return last.at if last is not None and last.verdict == "wrong" else None


def value_in_trouble(state: State) -> str | None:
    """The unknown whose value was just typed wrong, or None."""
    place = wrong_place(state)
    if not isinstance(place, Value) or place.unknown not in state.problem.unknowns:
        return None
    return place.unknown


def line_hints(state: State, desk: Judge, about: Equation) -> Levels:
    """The hints for writing one equation; the place level names the forces that take part."""
    true = TrueEquation(state.problem, about, state.own)
    acting = [s.name for s in (*true.unknowns.values(), *true.loads) if s.true != 0.0]
    things = [force_in_words(state.problem, name) for name in acting]
    where = "No force has a part in this one."
    if things:
        where = f"{listed(things, most=20)} {'has' if len(things) == 1 else 'have'} a part here."
        where = raised(where)
    line = f"For instance: {right_line(state.problem, about, state.own)}."
    return Levels(about, *_ways_to_look(about), where, line, typed=True)


def _ways_to_look(about: Equation) -> tuple[str, str]:
    """The look and the reason of an equation that is still to be written."""
    if isinstance(about, M):
        point = about.at if isinstance(about.at, str) else "this point"
        return (
            f"Go round the free body and ask of each force: does it turn the body about {point}?",
            "Each force counts with its perpendicular distance from the point; one whose line of "
            "action passes through the point has no moment about it.",
        )
    if about.part:
        return (
            "Draw this part alone, with every member that is cut, and ask of each force: does it "
            "have a part in this direction?",
            "A cut member acts on the part along its own line, pulling unless you drew it pushing; "
            "members that are not cut are inside and do not enter.",
        )
    if about.joint is None:
        return (
            "Go round the free body and ask of each force: does it have a part in this direction?",
            "What points along the positive direction enters with plus, the rest with minus; the "
            "members are inside the free body and do not enter.",
        )
    return (
        f"Draw joint {about.joint} alone and ask of each arrow: does it have a part in this "
        "direction?",
        "A member acts along its own line, pulling away from the joint unless you drew it pushing; "
        "only its component in this direction counts.",
    )


def value_hints(state: State, desk: Judge, unknown: str) -> Levels:
    """The hints for solving for one unknown from lines that stand."""
    told = value_as_typed(state, desk, unknown)
    lines = lines_giving(state, unknown)
    if not lines:
        return Levels(
            Value(unknown),
            "No line that stands gives this value yet.",
            "A value follows from a line in which every other force is known.",
            f"Write a sum in which {unknown} is the only unknown, and solve it.",
            f"{told}.",
            typed=True,
        )
    if len(lines) == 1:
        look = "One of your lines has only one unknown left."
        reason = "Bring everything known to one side, then divide by the factor of the unknown."
    else:
        look = "Some of your lines share as many unknowns as there are lines."
        reason = "Take one unknown out by adding a multiple of one line to another."
    where = f"{unknown} follows from {in_words_together(lines)}."
    return Levels(Value(unknown), look, reason, where, f"{told}.", typed=True)


def value_as_typed(state: State, desk: Judge, unknown: str) -> str:
    """The true value as it may be typed: "AB = 7.5 kN T", "B_y = 4 kN up", "R_C = -3 kN"."""
    found = Result(unknown, "", state.own.sign(unknown) * desk.values()[unknown], 0.0)
    rest = tuple(r for r in state.results if r.unknown != unknown)
    state = replace(state, results=(*rest, found))
    return result_as_typed(state, unknown)
