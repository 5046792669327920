"""Step 4: joint by joint, which member forces follow?"""

from __future__ import annotations

from dataclasses import replace

from tutor.judge import Along, Fx, Fy, Judge, in_words
from tutor.judge.about import Equation, equation_of
from tutor.judge.headings import slants
from tutor.judge.independent import adds_something
from tutor.lesson.event import Event
from tutor.lesson.hints import Levels
from tutor.lesson.place import Question
from tutor.lesson.reply import Ask, Option, Reply, Say, option_of
from tutor.lesson.solvable import solvable_now
from tutor.lesson.state import State
from tutor.lesson.step import LessonStep
from tutor.lesson.steps import section
from tutor.lesson.steps.apart import take_apart
from tutor.lesson.steps.easier import teach
from tutor.lesson.steps.free_body import undrawn
from tutor.lesson.steps.headings import label_of, offered_along
from tutor.lesson.steps.hinting import line_hints, value_hints, value_in_trouble, wrong_place
from tutor.lesson.steps.none_alone import ARRIVED, arrival, none_alone, section_hints
from tutor.lesson.steps.part_headed import take_headed, take_shown
from tutor.lesson.steps.proportion import take_proportion
from tutor.lesson.steps.reactions import choose
from tutor.lesson.steps.symmetry import take_symmetry
from tutor.lesson.steps.unchosen import equation_meant
from tutor.lesson.steps.writing import take_text
from tutor.lesson.steps.zero import RULES as RULES
from tutor.lesson.steps.zero import zero_hints
from tutor.model.naming import member_meant
from tutor.notation.sides.zero_words import says_inspection
from tutor.text import listed

GIVEN_BY_NOW = "Your lines by now give a value that is not found yet: type it, with T or C."
"""Said where the lines that stand, of whatever joints, give it."""


def ask(state: State) -> Ask:
    """Choose a joint; at a joint, choose a direction, write the line, then its values."""
    if state.part:
        return section.ask(state)
    if state.joint is None:
        options = tuple(
            Option(j.name, f"joint {j.name}: {len(unknown)} unknown{'s' * (len(unknown) > 1)}")
            for j in state.problem.joints
            if (unknown := state.unknown_at(j.name))
        )
        question = "Which joint do you take next?"
        if solvable_now(state) is not None:
            question = f"{GIVEN_BY_NOW} Or which joint do you take next?"
        elif options and not _ready(state):
            question = f"{question} {none_alone(state.problem)}"
        if not options:
            question = "Every force is found. See whether the truss closes, or go back to a joint."
        return Ask("joints", "joint", "Joints", question, options)
    joint = state.joint
    sums: dict[Equation, str] = {Fx(joint): "ΣFx", Fy(joint): "ΣFy"}
    for degrees in slants(state.problem, joint):
        along = Along(degrees, joint)
        sums[along] = offered_along(state.problem, along)
    options = tuple(option_of(about, words, state.about) for about, words in sums.items())
    title = f"Joint {joint}"
    return Ask("joints", "joint-line", title, _question(state), options, joint, state.about)


def _question(state: State) -> str:
    assert state.joint is not None
    unknown = state.unknown_at(state.joint)
    question = f"At joint {state.joint}, {_unknown_words(unknown)}."
    if solvable_now(state, unknown) is not None:
        return f"{question} Type a value with T or C, or another line: ΣFx, ΣFy or along a member."
    if solvable_now(state) is not None:
        return f"{question} {GIVEN_BY_NOW} Or type another line."
    if unknown and _next_direction(state, state.joint) is None:
        return (
            f"{question} Both equations of this joint stand; what is still unknown needs those of "
            "another joint as well."
        )
    return f"{question} Type ΣFx, ΣFy or a sum along a member."


def _unknown_words(unknown: tuple[str, ...]) -> str:
    if not unknown:
        return "everything is known"
    return f"{listed(unknown)} {'is' if len(unknown) == 1 else 'are'} unknown"


def pick(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """The student goes to a joint: data `joint`, or none to leave it."""
    if event.data.get("joint") in (None, ""):
        left = replace(state, step="joints", joint=None, about=None, part=())
        return left, Reply((Say("note", "Back to the choice of joints."),), True)
    joint = event.text("joint")
    if joint not in state.problem.joint:
        names = ", ".join(j.name for j in state.problem.joints)
        return state, Reply((Say("note", f"There is no such joint; the joints are {names}."),))
    unknown = state.unknown_at(joint)
    said = [Say("note", f"Joint {joint}: {_unknown_words(unknown)}.")]
    if len(unknown) > 2:
        said.append(
            Say(
                "remark",
                f"A joint gives two equations, and here {len(unknown)} forces are unknown. You may "
                "write its lines now, but not all of its forces follow from them alone.",
            )
        )
    elif not unknown:
        said.append(Say("remark", "Nothing is left to find here; its sums can serve as a check."))
    return _at(state, joint), Reply(tuple(said), True)


def _at(state: State, joint: str) -> State:
    """The state at a joint, with the axis proposed there that still adds something."""
    about = _next_direction(state, joint)
    return replace(state, step="joints", joint=joint, about=about, proposed=True, part=())


def _where_headed(state: State, text: str, desk: Judge) -> State:
    """The state at the joint that the heading of a line names, or off the joints for the whole truss.

    What is named stays for the lines that follow, whatever comes of this one.
    """
    label = label_of(text, desk.names)
    if label is None:
        return state
    if label.whole or label.kind == "moment":
        return replace(state, joint=None, about=None) if state.joint else state
    joint = label.point
    if not isinstance(joint, str) or joint == state.joint or joint not in state.problem.joint:
        return state
    return _at(state, joint)


def assume(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """The student draws a member pulling ("T") or pushing ("C"): data `member`, `sense`."""
    name, drawn = member_meant(state.problem, event.text("member")), event.text("sense")
    if name is None or drawn not in ("T", "C"):
        return state, Reply((Say("note", "Name a member of this truss, and T or C."),))
    if name in state.result:
        return state, Reply((Say("note", f"{name} is already found."),))
    if any(name in equation_of(state.problem, line.about).linear for line in state.lines):
        said = f"Lines with {name} already stand; take them back before you turn its arrow."
        return state, Reply((Say("note", said),))
    state = replace(state, senses={**state.senses, name: drawn})
    words = "pulling on the joint" if drawn == "T" else "pushing on the joint"
    return state, Reply((Say("note", f"{name} is drawn {words}."),), True)


def chosen(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """The student chose an equation of the joint, or of the part kept: data `about`."""
    return (section.choose if state.part else choose)(state, event, desk)


def typed(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """The student typed a line or a value: data `text`, and `about` where not chosen before."""
    each = take_symmetry(typed, state, event, desk) or take_headed(state, event, desk)
    each = each or take_proportion(typed, state, event, desk)
    if (each := each or take_apart(typed, state, event, desk)) is not None:
        return each
    if state.part:
        return section.typed(state, event, desk)
    if "about" in event.data:
        state, reply = choose(state, event, desk)
        if not reply.accepted:
            return state, reply
    state = _where_headed(state, event.text("text"), desk)
    about, how = equation_meant(state, event.text("text"), desk, _offers(state))
    if not how and about is not None:
        about, how = _of_some_joint(state, event.text("text"), desk, about)
    if about is None and (other := _of_no_joint(state, event, desk, how)) is not None:
        return other
    if about is not None and how:
        state = replace(state, joint=about.joint)
    before = state
    state, reply = take_text(replace(state, about=about), event, desk, about)
    if about is not None and len(state.lines) > len(before.lines):
        if not says_inspection(event.text("text")):
            state, reply = teach(before, about, state, reply)
        if state.joint is not None:
            following = _next_direction(state, state.joint)
            state = replace(state, about=following or state.about, proposed=True)
    if reply.verdict is None and not reply.accepted:
        return state, reply
    return state, replace(reply, said=(*how, *reply.said))


def _of_no_joint(
    state: State, event: Event, desk: Judge, how: tuple[Say, ...]
) -> tuple[State, Reply] | None:
    """What was said where no joint was found for a line, or the line at the part that it is of."""
    return (state, Reply(how)) if how else take_shown(state, event, desk)


def _of_some_joint(
    state: State, text: str, desk: Judge, about: Equation
) -> tuple[Equation, tuple[Say, ...]]:
    """The sum at a joint that a line is true of, where its heading names a sum and no body.

    Between two joints a heading such as ΣFx leaves open whose sum it is.
    """
    label = label_of(text, desk.names)
    named = label is None or label.whole or label.point is not None
    if named or state.joint or about.joint or about == state.about:
        return about, ()
    elsewhere = desk.judge(about, text, state.own).true_of
    if elsewhere is None or elsewhere.joint is None or type(elsewhere) is not type(about):
        return about, ()
    return elsewhere, (Say("note", f"Taken as {in_words(elsewhere)}."),)


def _offers(state: State) -> list[Equation]:
    """The sums along the axes at the joint, or at every joint where something is unknown."""
    joints = [state.joint] if state.joint else [j.name for j in state.problem.joints]
    return [
        about(joint)
        for joint in joints
        if state.joint or state.unknown_at(joint)
        for about in (Fx, Fy)
    ]


def _next_direction(state: State, joint: str) -> Equation | None:
    """The axis that still adds something at a joint, or None."""
    standing = state.equations_of(joint)
    axes: tuple[Equation, ...] = (Fx(joint), Fy(joint))
    return next((about for about in axes if adds_something(state.problem, about, standing)), None)


def hints(state: State, desk: Judge) -> Levels:
    """For what was just wrong; for a value that can be had; else for the line or the joint."""
    if stated := zero_hints(state):
        return stated
    if state.part:
        return section.hints(state, desk)
    if unknown := value_in_trouble(state):
        return value_hints(state, desk, unknown)
    if state.about is not None and wrong_place(state) == state.about:
        return line_hints(state, desk, state.about)
    here = state.joint and state.unknown_at(state.joint)
    if unknown := solvable_now(state, here or None):
        return value_hints(state, desk, unknown)
    if state.joint is None:
        return _joint_hints(state)
    if here and state.about is not None and not _adds(state, state.about):
        return _stuck_hints(state, state.joint)
    return line_hints(state, desk, state.about or Fx(state.joint))


def _adds(state: State, about: Equation) -> bool:
    return adds_something(state.problem, about, state.equations_of(about.joint))


def _ready(state: State) -> list[str]:
    """The joints with an unknown force or two."""
    return [j.name for j in state.problem.joints if 1 <= len(state.unknown_at(j.name)) <= 2]


def _joint_hints(state: State) -> Levels:
    ready = _ready(state)
    if not ready:
        return section_hints(state)
    return Levels(
        Question("joint"),
        "Ask of each joint: can it be solved by itself, with what is known now?",
        "A joint gives two equations, so it can be solved when at most two of its forces are unknown.",
        "Count at each joint the forces that have no value yet; the ends of the truss are worth a "
        "look.",
        f"Joint {ready[0]} can be solved now.",
    )


def _stuck_hints(state: State, joint: str) -> Levels:
    """The hints where both equations of a joint stand and more than two of its forces are open."""
    far = [m.other(joint) for m in state.problem.meeting[joint] if m.name not in state.result]
    fewest = min(far, key=lambda name: len(state.unknown_at(name)), default=joint)
    return Levels(
        Question(f"stuck {joint}"),
        "This joint has nothing more to give by itself.",
        "Two equations give two unknowns; each further unknown needs an equation of another joint.",
        f"Follow the unknown members from {joint} to their far ends, and count the unknowns there.",
        f"Go to joint {fewest}.",
    )


STEP = LessonStep(
    name="joints",
    order=4,
    where="at the joints",
    arrived=ARRIVED,
    arrival=arrival,
    not_here="This belongs to another step; now the joints are asked for.",
    ask=ask,
    hints=hints,
    handles={"type": typed, "choose": chosen},
    done=lambda state: state.reactions_done and state.members_done,
    barred=undrawn,
)
