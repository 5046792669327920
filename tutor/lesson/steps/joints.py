"""Step 4: joint by joint, which member forces follow?"""

from __future__ import annotations

import math
from dataclasses import replace

from tutor.judge import Along, Fx, Fy, Judge, in_words
from tutor.judge.about import LineAbout, as_text, equation_of
from tutor.judge.independent import how_many
from tutor.lesson.event import Event
from tutor.lesson.hints import Levels
from tutor.lesson.reply import Ask, Option, Reply, Say
from tutor.lesson.state import Result, State
from tutor.lesson.steps import reactions
from tutor.lesson.steps.writing import (
    headed,
    line_hints,
    solvable_now,
    take_text,
    value_hints,
)
from tutor.lesson.trying import right, wrong
from tutor.statics import shown_zero, zero_force

RULES = {
    "two": "two members that are not in one line, and nothing else, meet here: both are zero",
    "three": "two of three members are in one line, and nothing else acts here: the third is zero",
    "along": "all else that acts here lies in one line, and this member does not: it is zero",
}

SHOWN_BY = {"one": "along", "two-along": "along", "three-along": "along"}


def ask(state: State) -> Ask:
    """Choose a joint; at a joint, choose a direction, write the line, then its values."""
    problem = state.problem
    if state.joint is None:
        options = tuple(
            Option(j.name, _joint_in_words(state, j.name))
            for j in problem.joints
            if state.unknown_at(j.name)
        )
        return Ask("joints", "joint", "Joints", "Which joint do you take next?", options)
    joint = state.joint
    chosen = None if state.about is None else as_text(state.about)
    options = tuple(
        Option(as_text(about), in_words(about).split(" at joint")[0], as_text(about) == chosen)
        for about in (Fx(joint), Fy(joint), *_member_directions(state, joint))
    )
    unknown = list(state.unknown_at(joint))
    question = f"At joint {joint}, {_unknown_words(unknown)}. Type ΣFx, ΣFy or a sum along a member"
    question += "." if solvable_now(state) is None else ", or a value with T or C."
    return Ask("joints", "joint-line", f"Joint {joint}", question, options, joint, chosen)


def _unknown_words(unknown: list[str]) -> str:
    if not unknown:
        return "everything is known"
    verb = "is" if len(unknown) == 1 else "are"
    return f"{', '.join(unknown)} {verb} unknown"


def _joint_in_words(state: State, joint: str) -> str:
    count = len(state.unknown_at(joint))
    return f"joint {joint}: {count} unknown"


def _member_directions(state: State, joint: str) -> list[LineAbout]:
    problem, here = state.problem, state.problem.joint[joint].at
    found: dict[float, LineAbout] = {}
    for member in problem.meeting[joint]:
        there = problem.joint[member.other(joint)].at
        degrees = math.degrees(math.atan2(there[1] - here[1], there[0] - here[0])) % 180.0
        for turn in (degrees, (degrees + 90.0) % 180.0):
            key = round(turn, 4)
            if key % 90.0 > 1e-6:
                found.setdefault(key, Along(key, joint))
    return list(found.values())


def pick(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """The student goes to a joint: data `joint`, or none to leave it."""
    joint = event.data.get("joint")
    if joint in (None, ""):
        return replace(state, joint=None, about=None), Reply(
            (Say("note", "Back to the choice of joints."),), True
        )
    if joint not in state.problem.joint:
        names = ", ".join(j.name for j in state.problem.joints)
        return state, Reply((Say("note", f"There is no joint {joint}; the joints are {names}."),))
    unknown = state.unknown_at(str(joint))
    said = [Say("note", f"Joint {joint}: {_unknown_words(list(unknown))}.")]
    if len(unknown) > 2:
        said.append(
            Say(
                "remark",
                f"Two equations of one joint give two unknowns; here there are {len(unknown)}. You "
                "may write the lines, but they cannot be solved yet without another joint.",
            )
        )
    return replace(state, step="joints", joint=str(joint), about=Fx(str(joint))), Reply(
        tuple(said), True
    )


def assume(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """The student draws a member pulling ("T") or pushing ("C"): data `member`, `sense`."""
    name, drawn = str(event.data.get("member")), event.data.get("sense")
    if name not in state.problem.member or drawn not in ("T", "C"):
        return state, Reply((Say("note", "Name a member of this truss, and T or C."),))
    if name in state.result:
        return state, Reply((Say("note", f"{name} is already found."),))
    if any(name in equation_of(state.problem, line.about).linear for line in state.lines):
        return state, Reply(
            (Say("note", f"Lines with {name} already stand; undo them before you turn its arrow."),)
        )
    state = replace(state, senses={**state.senses, name: str(drawn)})
    words = "pulling on the joint" if drawn == "T" else "pushing on the joint"
    return state, Reply((Say("note", f"{name} is drawn {words}."),), True)


def zero(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """The student states a zero-force member: data `member`, `rule` (a key of `RULES`)."""
    name, rule = str(event.data.get("member")), str(event.data.get("rule", ""))
    if name not in state.problem.member:
        return state, Reply((Say("note", f"There is no member {name}."),))
    place = f"zero {name}"
    known = {r.unknown for r in state.results if r.value == 0.0}
    chain = [z.member for z in zero_force(state.problem, known)]
    before = chain[: chain.index(name)] if name in chain else []
    seen = shown_zero(state.problem, name, known.union(before))
    fitting = [z for z in seen if SHOWN_BY.get(z.rule, z.rule) == rule]
    if fitting:
        result = Result(name, "0", 0.0, 0.0, "zero-force")
        rest = tuple(r for r in state.results if r.unknown != name)
        state = right(replace(state, results=(*rest, result)), event, place, rule)
        return state, Reply(
            (Say("right", f"Yes: {name} = 0, seen at joint {fitting[0].joint}."),), True
        )
    state = wrong(state, event, place, ("not-equilibrium",), rule)
    if seen:
        text = f"{name} can be seen to be zero, but not by that rule. What else acts at its joints?"
    else:
        text = (
            f"No rule shows that {name} is zero: look at each of its two ends for a load, a "
            "reaction or a further member that could need it."
        )
    return state, Reply((Say("wrong", text),))


def typed(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """The student typed a line or a value: data `text`, and `about` where not chosen before."""
    if "about" in event.data:
        state, reply = reactions.choose(state, event, desk)
        if not reply.accepted:
            return state, reply
    about = headed(desk, str(event.data.get("text", "")), state.joint) or state.about
    state, reply = take_text(state, event, desk, about)
    if reply.accepted and isinstance(reply.verdict and reply.verdict.about, Fx | Fy | Along):
        state = replace(state, about=_next_direction(state))
    return state, reply


def _next_direction(state: State) -> LineAbout | None:
    """The direction that stands chosen after a line: the other axis, if it still adds something."""
    if state.joint is None:
        return None
    standing = [line.about for line in state.lines_of(state.joint)]
    for about in (Fx(state.joint), Fy(state.joint)):
        more = how_many(state.problem, [*standing, about], state.joint)
        if more > how_many(state.problem, standing, state.joint):
            return about
    return state.about


def hints(state: State, desk: Judge) -> Levels:
    """For the choice of a joint; at a joint for a value that can be had, else for the line."""
    unknown = solvable_now(state)
    if unknown is not None:
        return value_hints(state, desk, unknown)
    if state.joint is None:
        return _joint_hints(state)
    about = state.about if state.about is not None else Fx(state.joint)
    return line_hints(
        state,
        desk,
        about,
        f"Draw joint {state.joint} alone and ask of each arrow: does it have a part in this direction?",
        "A member pulls along its own line, away from the joint; its part in a direction is the "
        "side of its slope triangle in that direction over its length.",
    )


def _joint_hints(state: State) -> Levels:
    ready = [j.name for j in state.problem.joints if 1 <= len(state.unknown_at(j.name)) <= 2]
    line = (
        f"Joint {ready[0]} can be solved now."
        if ready
        else (
            "No joint has two unknowns or fewer: write the lines of neighbouring joints together."
        )
    )
    return Levels(
        "joint",
        "Not every joint can be solved at once; some can.",
        "A joint gives two equations, so it can be solved when at most two of its forces are unknown.",
        "Count at each joint the forces that have no value yet; the ends of the truss are worth a look.",
        line,
    )


HANDLES = {
    "type": typed,
    "choose": reactions.choose,
    "assume": assume,
    "zero": zero,
}
