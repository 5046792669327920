"""Why this equation, this joint, this value? Sentences that are true of the truss at hand."""

from __future__ import annotations

from collections.abc import Sequence

from tutor.judge import Equation, Judge, M
from tutor.judge.about import body_of, equation_of
from tutor.lesson.move import Guess, Reason
from tutor.lesson.reply import Option
from tutor.lesson.solvable import in_words_together, lines_giving, open_in
from tutor.lesson.state import State
from tutor.statics import given_by
from tutor.text import listed

COUNTED = ("no", "one", "two", "three", "four", "five", "six")
KNOWN = "Everything in it is known by now, so it finds nothing: it has to come out as zero."


def of_equation(state: State, about: Equation) -> Reason:
    """Why this equation: which unknown forces it leaves out, and what is left in it."""
    left = open_in(state, about)
    unknowns = body_of(state.problem, about).unknowns
    absent = tuple(n for n in unknowns if n not in left and n not in state.result)
    if not left:
        return Reason(KNOWN, absent, left)
    pull, push = _known_members(state, about)
    acting = _acting(about.joint or "", pull, push)
    return Reason(f"{_left_out(about, absent)}{acting}{_remaining(left)}", absent, left, pull, push)


def _known_members(state: State, about: Equation) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The members with a value in the sum of a joint, those in tension and those in compression."""
    if about.joint is None:
        return (), ()
    linear = equation_of(state.problem, about).linear
    known = [n for n in linear if n is not None and n in state.problem.member and n in state.result]
    return (
        tuple(name for name in known if state.signed(name) > 0),
        tuple(name for name in known if state.signed(name) < 0),
    )


def _acting(joint: str, pull: Sequence[str], push: Sequence[str]) -> str:
    """ "AB pulls on A, AC pushes on A. ", by which the signs of known values follow."""
    said = [
        f"{listed(names)} {one if len(names) == 1 else several} on {joint}"
        for names, one, several in ((pull, "pulls", "pull"), (push, "pushes", "push"))
        if names
    ]
    return f"{', '.join(said)}. " if said else ""


def _left_out(about: Equation, absent: Sequence[str]) -> str:
    if not absent:
        return ""
    names, one = listed(absent), len(absent) == 1
    if isinstance(about, M):
        point = about.at if isinstance(about.at, str) else "({:g}, {:g})".format(*about.at)
        lines = "line of action" if one else "lines of action"
        return (
            f"The {lines} of {names} {'passes' if one else 'pass'} through {point}, so "
            f"{'it has' if one else 'they have'} no moment about it. "
        )
    return f"{names} {'is' if one else 'are'} perpendicular to this direction and left out. "


def _remaining(left: Sequence[str]) -> str:
    if len(left) == 1:
        return f"{left[0]} is the only unknown in it."
    return (
        f"{listed(left)} are unknown in it: it does not find them alone, but together with as many "
        "further equations."
    )


def of_joint(state: State, joint: str) -> Reason:
    """Why this joint: how many of its forces are unknown, and which of them it gives."""
    unknown = state.unknown_at(joint)
    gives = given_by(state.problem, joint, state.result)
    if not gives:
        text = (
            "At no joint are two forces or fewer unknown, so the sums of several joints are needed "
            f"together. At {joint} {_how_many(unknown)}."
        )
    elif len(gives) < len(unknown):
        text = (
            f"At {joint} {_how_many(unknown)}, but {_in_one_line(unknown, gives)}: the sum "
            f"perpendicular to that line holds {listed(gives)} alone."
        )
    elif len(unknown) == 1:
        text = f"At {joint} only {unknown[0]} is still unknown."
    else:
        text = f"At {joint} {_how_many(unknown)}, and a joint gives two equations."
    return Reason(text, open=unknown)


def not_this_joint(state: State, joint: str) -> str:
    """Why a joint gives nothing by itself yet."""
    unknown = state.unknown_at(joint)
    if len(unknown) > 2:
        return f"At {joint} {_how_many(unknown)}, and a joint gives only two equations."
    return f"At {joint} {_in_one_line(unknown)}: its sums do not tell them apart."


def _in_one_line(unknown: Sequence[str], apart: Sequence[str] = ()) -> str:
    return f"{listed([name for name in unknown if name not in apart])} lie in one line"


def _how_many(unknown: Sequence[str]) -> str:
    count = COUNTED[len(unknown)] if len(unknown) < len(COUNTED) else str(len(unknown))
    return f"{count} forces are unknown, {listed(unknown)}"


def of_value(state: State, desk: Judge, unknown: str) -> Reason:
    """From which lines the value follows, and what its sign says."""
    lines = lines_giving(state, unknown)
    follows = f"It follows from {in_words_together(lines)}. "
    return Reason(follows + _sign(state, desk, unknown), open=(unknown,))


def _sign(state: State, desk: Judge, unknown: str) -> str:
    true = desk.values()[unknown]
    along = true * state.own.sign(unknown)
    how = "positive" if along > 0 else "negative"
    if unknown not in state.problem.member:
        if true == 0:
            return "It comes out as zero: under this load nothing acts there."
        what = "it acts as its arrow is drawn" if along > 0 else "it acts against its arrow"
        return f"It comes out {how}: {what}."
    if true == 0:
        return "It comes out as zero: under this load the member carries nothing."
    drawn = "pulls on" if state.own.sign(unknown) > 0 else "pushes on"
    what = "pulls, tension" if true > 0 else "pushes, compression"
    return f"It comes out {how} with an arrow that {drawn} the joint: the member {what}."


def value_guess(state: State, desk: Judge, unknown: str) -> Guess:
    """What may be guessed of a value before it is worked out: its sense."""
    true = desk.values()[unknown]
    if unknown in state.problem.member:
        key = "T" if true > 0 else "C" if true < 0 else "0"
        options = (Option("T", "tension"), Option("C", "compression"), Option("0", "no force"))
        return Guess("value", f"What will {unknown} be?", options, frozenset({key}), unknown)
    along = true * state.own.sign(unknown)
    key = "along" if along > 0 else "against" if along < 0 else "0"
    options = (
        Option("along", "as its arrow is drawn"),
        Option("against", "against its arrow"),
        Option("0", "not at all"),
    )
    return Guess("value", f"Which way will {unknown} act?", options, frozenset({key}), unknown)
