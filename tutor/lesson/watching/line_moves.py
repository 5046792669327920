"""Which line or value does a lecturer write next, and at which joint?"""

from __future__ import annotations

import math
from dataclasses import replace

from tutor.judge import Equation, Fx, Fy, Judge, in_words, right_line
from tutor.judge.about import as_text
from tutor.judge.headings import sum_along
from tutor.judge.independent import adds_something
from tutor.lesson.move import Guess, Move, Reason
from tutor.lesson.reply import Ask, Option, option_of
from tutor.lesson.solvable import open_in, solvable_now
from tutor.lesson.state import State
from tutor.lesson.steps.hinting import value_as_typed
from tutor.lesson.steps.reactions import worth_writing
from tutor.lesson.steps.section import best_section, best_sum, still_open, sums_offered
from tutor.lesson.steps.zero import CALLED
from tutor.lesson.watching.because import (
    of_equation,
    of_joint,
    of_value,
    value_guess,
)
from tutor.statics import Section, ZeroForce, given_by, joint_body, joint_order, zero_force
from tutor.statics.order import JointTurn
from tutor.text import listed


def from_the_whole(state: State, ask: Ask, desk: Judge) -> Move | None:
    """A reaction that the lines give, else the equation of the whole truss with the fewest unknowns."""
    reactions = tuple(r.name for r in state.problem.reactions if r.name not in state.result)
    if state.part:
        return _of_the_part(state, ask, desk)
    if unknown := solvable_now(state, reactions):
        return _value(state, desk, unknown)
    found = sorted(worth_writing(state), key=lambda each: (each[0], as_text(each[1])))
    if not found:
        return to_a_joint(state, ask, desk)
    fewest = found[0][0]
    good = [about for count, about in found if count == fewest]
    guess = Guess(
        "equation",
        "Which equation of the whole truss would you write next?",
        _unchosen(ask),
        frozenset(as_text(about) for about in good),
    )
    return _line(state, desk, good[0], guess)


def to_a_joint(state: State, ask: Ask, desk: Judge) -> Move | None:
    """What can be seen to be zero, else a joint that can be solved, else the one with the fewest.

    None where every force is known.
    """
    if not any(state.unknown_at(joint.name) for joint in state.problem.joints):
        return None
    seen = _zero(state)
    if seen is not None:
        return seen
    turn = next_turn(state)
    if turn is None and (found := best_section(state)):
        return _section(state, *found)
    joint = turn.joint if turn else _fewest(state)
    options = [
        Option(each.name, f"joint {each.name}")
        for each in state.problem.joints
        if state.unknown_at(each.name)
    ]
    giving = (o.key for o in options if given_by(state.problem, o.key, state.result))
    question = "Which joint would you take next?"
    guess = Guess("joint", question, tuple(options), frozenset({joint, *giving}))
    reason = of_joint(state, joint)
    return Move("joint", {"joint": joint}, f"Joint {joint}.", reason, guess)


def from_the_joint(state: State, ask: Ask, desk: Judge) -> Move | None:
    """A value that the lines give, else the sum with the fewest unknowns, else to another joint."""
    joint = str(ask.subject)
    if unknown := solvable_now(state, state.unknown_at(joint)):
        return _value(state, desk, unknown)
    sums = _sums(state, joint)
    if not sums:
        return to_a_joint(state, ask, desk)
    options = (option_of(Fx(joint), "ΣFx"), option_of(Fy(joint), "ΣFy"))
    fewest = min(len(open_in(state, about)) for about in sums)
    good = [about for about in sums if len(open_in(state, about)) == fewest]
    guess = None
    if len(good) < len(sums):
        right = frozenset(as_text(about) for about in good)
        question = f"Which sum at joint {joint} has the fewest unknowns?"
        guess = Guess("equation", question, options, right)
    return _line(state, desk, good[0], guess)


def _section(state: State, found: Section, keep: str) -> Move:
    """A cut through the truss that gives a force which no joint gives alone."""
    part = found.part_with(keep)
    unknown = still_open(replace(state, part=part))
    written = f"Cut {listed(found.cut)}; keep the part with {listed(part)}."
    because = (
        "No joint can be solved by itself. The part on one side of a cut is a free body with three "
        f"equations; on it {listed(unknown)} {'is' if len(unknown) == 1 else 'are'} "
        "unknown."
    )
    data = {"members": list(found.cut), "keep": keep}
    return Move("section", data, written, Reason(because, open=unknown))


def _of_the_part(state: State, ask: Ask, desk: Judge) -> Move:
    """A value that the lines of the part give, else its sum with the fewest unknowns; else away."""
    if unknown := solvable_now(state, still_open(state)):
        return _value(state, desk, unknown)
    about = best_sum(state)
    if about is None or len(open_in(state, about)) > 1:
        left = Reason("What a sum of this part gives alone is found.")
        return Move("section", {"members": []}, "Back to the whole truss.", left)
    few = {
        as_text(each)
        for each in sums_offered(state)
        if len(open_in(state, each)) == 1 and adds_something(state.problem, each, state.standing)
    }
    guess = Guess(
        "equation", "Which sum of this part would you write?", _unchosen(ask), frozenset(few)
    )
    return _line(state, desk, about, guess)


def closing(state: State, ask: Ask, desk: Judge) -> Move:
    """One equation that was not needed, with all its values."""
    about = next(option.about for option in ask.options if option.about is not None)
    return _line(state, desk, about, None)


def _unchosen(ask: Ask) -> tuple[Option, ...]:
    """What is offered, with nothing of it chosen."""
    return tuple(replace(option, chosen=False) for option in ask.options)


def _line(state: State, desk: Judge, about: Equation, guess: Guess | None) -> Move:
    text = right_line(state.problem, about, state.own)
    data = {"about": as_text(about), "text": text}
    return Move("type", data, f"{in_words(about)}: {text}", of_equation(state, about), guess)


def _value(state: State, desk: Judge, unknown: str) -> Move:
    text = value_as_typed(state, desk, unknown)
    reason = of_value(state, desk, unknown)
    return Move("type", {"text": text}, text, reason, value_guess(state, desk, unknown))


def _zero(state: State) -> Move | None:
    """The first member without a value that can be seen to be zero."""
    found = seen_zero(state)
    if not found:
        return None
    seen = found[0]
    options = [Option(m.name, m.name) for m in state.problem.members if m.name not in state.result]
    guess = Guess(
        "zero",
        "One member here can be seen to carry no force. Which?",
        tuple(options),
        frozenset(z.member for z in found),
    )
    data = {"member": seen.member, "rule": CALLED.get(seen.rule, seen.rule)}
    return Move("zero", data, f"{seen.member} = 0", Reason(seen.said), guess)


def seen_zero(state: State) -> list[ZeroForce]:
    """The members without a value that can be seen to be zero, in the order in which they can be."""
    known = {r.unknown for r in state.results if r.value == 0.0}
    return [z for z in zero_force(state.problem, known) if z.member not in state.result]


def next_turn(state: State) -> JointTurn | None:
    """The next joint in an order of joints, from what is known."""
    steps = joint_order(state.problem, tuple(state.result)).steps
    return next((step for step in steps if step.finds), None)


def _fewest(state: State) -> str:
    """Where no joint can be solved alone: the one with the fewest unknowns whose lines still add."""
    names = [j.name for j in state.problem.joints if state.unknown_at(j.name)]
    fresh = [name for name in names if _sums(state, name)] or names
    return min(fresh, key=lambda name: len(state.unknown_at(name)))


def _sums(state: State, joint: str) -> list[Equation]:
    """The sums at a joint that add something and hold an unknown; across a line where that is the
    way on."""
    standing = state.equations_of(joint)
    turn = next_turn(state)
    abouts: tuple[Equation, ...] = (Fx(joint), Fy(joint))
    if turn is not None and turn.across and turn.joint == joint:
        abouts = (_across(state, joint, turn.finds[0]),)
    return [
        about
        for about in abouts
        if adds_something(state.problem, about, standing) and open_in(state, about)
    ]


def _across(state: State, joint: str, finds: str) -> Equation:
    """The sum perpendicular to the line in which all unknown forces of the joint but one lie."""
    line = next(
        force
        for force in joint_body(state.problem, joint).forces
        if force.size is None and force.name != finds and force.name not in state.result
    )
    return sum_along(state.problem, math.degrees(math.atan2(line.x, -line.y)) % 180.0, joint)
