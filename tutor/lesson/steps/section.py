"""Where no joint can be solved alone: which part of the truss is cut off, and what does it give?

The student names the members that are cut and a joint of the part that is kept. Three sums of that
part can be written; a sum of moments about the point where two cut lines meet leaves both out.
"""

from __future__ import annotations

from dataclasses import replace

from tutor.judge import Equation, Fx, Fy, Judge, M, in_words
from tutor.judge.about import sum_in_words
from tutor.judge.headings import equation_named
from tutor.judge.independent import adds_something
from tutor.lesson.event import Event
from tutor.lesson.hints import Levels
from tutor.lesson.place import Question
from tutor.lesson.reply import Ask, Reply, Say, option_of
from tutor.lesson.solvable import open_in, solvable_now
from tutor.lesson.state import State
from tutor.lesson.steps.headings import equation_called
from tutor.lesson.steps.hinting import line_hints, value_hints, value_in_trouble, wrong_place
from tutor.lesson.steps.unchosen import equation_meant
from tutor.lesson.steps.writing import take_text
from tutor.model import Problem
from tutor.model.naming import member_meant
from tutor.notation import Line, Unreadable
from tutor.statics import Section, cut_around, meetings, round_one_joint, section_through, sections
from tutor.text import listed

EQUATIONS = 3
LEFT = "The section is left; the whole truss and its joints are before you again."
HOW_TO_CUT = (
    "A section cuts the truss in two, and one part is kept as a free body. Name the members that are cut "
    "and a joint of the part you keep, like {example}."
)
GO_BACK = "To go back to the joints, type leave section."
NO_JOINT = "Name a joint of the part that you keep: {joints}."
IN_ONE = (
    "With {cut} cut the truss is still in one piece. A section goes right through it, from outside to "
    "outside."
)
NEEDLESS = "{names} would be cut with both ends in the same part. Cut only members from one part to the other."
IN_PIECES = "With {cut} cut the truss is in {count} pieces. A section leaves two parts."


def cut_members(state: State) -> tuple[str, ...]:
    """The members between the part kept and the rest."""
    return cut_around(state.problem, state.part)


def still_open(state: State) -> tuple[str, ...]:
    """The unknowns that act on the part kept and have no value yet: members, then reactions."""
    names = [*cut_members(state)]
    names += [r.name for r in state.problem.reactions if r.joint in state.part]
    return tuple(name for name in names if name not in state.result)


def how_to_cut(problem: Problem) -> str:
    """What is said where the members or the part are not named."""
    return HOW_TO_CUT.format(example=example(problem)[0])


def example(problem: Problem) -> tuple[str, str]:
    """How a section of this truss is typed, and the joint it would cut off alone: a useful one is the
    student's to find."""
    members, joint = round_one_joint(problem)
    return f"section {' '.join(members)} keep {joint}", joint


def take_section(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """The student cuts: data `members`, a list of names, and `keep`, a joint; none to leave."""
    named = event.data.get("members")
    if named in (None, [], ()):
        if not state.part:
            return state, Reply((Say("note", how_to_cut(state.problem)),))
        return replace(state, part=(), about=None), Reply((Say("note", LEFT),), True)
    members = [
        member_meant(state.problem, name) if isinstance(name, str) else None
        for name in (named if isinstance(named, list | tuple) else [])
    ]
    if not members or None in members:
        there = listed([m.name for m in state.problem.members], most=30)
        return state, Reply((Say("note", f"Name members of this truss: {there}."),))
    found = section_through(state.problem, [name for name in members if name is not None])
    if not found.divides:
        return state, Reply((Say("note", no_section(found)),))
    keep = event.text("keep")
    if keep not in state.problem.joint:
        joints = listed([j.name for j in state.problem.joints], most=30)
        return state, Reply((Say("note", NO_JOINT.format(joints=joints)),))
    step = state.step if state.step in ("joints", "close") else "joints"
    state = replace(state, step=step, joint=None, about=None, part=found.part_with(keep))
    return state, Reply(tuple(arrived(state)), True)


def no_section(found: Section) -> str:
    """What is said of cuts that leave no two parts."""
    cut = listed(found.cut)
    if len(found.parts) == 1:
        return IN_ONE.format(cut=cut)
    if len(found.parts) > 2:
        return IN_PIECES.format(cut=cut, count=len(found.parts))
    return NEEDLESS.format(names=listed(found.needless))


def arrived(state: State) -> list[Say]:
    """What is said where a part has been cut off."""
    unknown = still_open(state)
    where = part_in_words(state)
    if not unknown:
        return [Say("note", f"{where}: everything that acts on it is known; its sums are checks.")]
    said = [Say("note", f"{where}: {listed(unknown)} {_are(unknown)} unknown on it.")]
    if len(unknown) > EQUATIONS:
        said.append(
            Say(
                "remark",
                f"A body gives three equations, and here {len(unknown)} forces are unknown. One of "
                "them may still be found alone, where all the others meet in one point or are "
                "parallel.",
            )
        )
    return said


def part_in_words(state: State) -> str:
    """What the part kept is called."""
    return f"The part with {listed(state.part)}"


def _are(names: tuple[str, ...]) -> str:
    return "is" if len(names) == 1 else "are"


def sums_offered(state: State) -> tuple[Equation, ...]:
    """The sums of the part that can be chosen: ΣFx, ΣFy, ΣM about each joint, and about each other
    point where two cut lines meet."""
    part = state.part
    at_joints = {joint.at for joint in state.problem.joints}
    points = [p for p in meetings(state.problem, cut_members(state)) if p not in at_joints]
    return (
        Fx(part=part),
        Fy(part=part),
        *(M(joint.name, part=part) for joint in state.problem.joints),
        *(M(point, part=part) for point in points),
    )


def ask(state: State) -> Ask:
    """Choose a sum of the part and write it, then its values."""
    options = tuple(
        option_of(about, sum_in_short(state, about), state.about) for about in sums_offered(state)
    )
    return Ask("joints", "line", "Section", _question(state), options, None, state.about)


def sum_in_short(state: State, about: Equation) -> str:
    """ "ΣFx", "ΣM about A", "ΣM about (18.67, 0) from A" where A is at the origin."""
    if isinstance(about, M) and not isinstance(about.at, str):
        x, y = about.at
        origin = next((f" from {j.name}" for j in state.problem.joints if j.at == (0.0, 0.0)), "")
        return f"ΣM about ({x:.4g}, {y:.4g}){origin}"
    return sum_in_words(about)


def _question(state: State) -> str:
    unknown = still_open(state)
    if not unknown:
        return f"{part_in_words(state)}: nothing is unknown on it. Its sums check your values. {GO_BACK}"
    question = f"{part_in_words(state)}: {listed(unknown)} {_are(unknown)} unknown."
    if solvable_now(state, unknown) is not None:
        return (
            f"{question} Type a value that your lines give, or another sum of this part. {GO_BACK}"
        )
    return f"{question} Choose a sum of this part and type it. {GO_BACK}"


def choose(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """The student chose a sum: data `about`, as `as_text` writes it; of the part kept."""
    about = equation_called(state.problem, event.text("about"))
    about = None if about is None else of_part(state, about)
    if about is None:
        said = "There is no such sum of this part; choose ΣFx, ΣFy or ΣM about a point."
        return state, Reply((Say("note", said),))
    return replace(state, about=about), Reply((Say("note", f"Write {in_words(about)}."),), True)


def of_part(state: State, about: Equation) -> Equation | None:
    """A sum without a body is of the part kept; one of another body is none of it."""
    if about.joint is not None or (about.part and set(about.part) != set(state.part)):
        return None
    return replace(about, part=state.part)


def typed(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """The student typed a line of the part, or a value: data `text`, and `about` where not chosen."""
    if "about" in event.data:
        state, reply = choose(state, event, desk)
        if not reply.accepted:
            return state, reply
    text = event.text("text")
    line = desk.read(text)
    own = _headed(state, line)
    about, how = equation_meant(state, text, desk, sums_offered(state))
    if own is not None:
        whole = not isinstance(line, Unreadable) and line.label is not None and line.label.whole
        about, how = None if whole else of_part(state, own), ()
        if about is None:
            of = "the whole truss" if whole else "a joint"
            said = (
                f"This heading is of {of}; now the part with {listed(state.part)} is asked for. "
                "Leave the section first."
            )
            return state, Reply((Say("note", said),))
    if how and about is None:
        return state, Reply(how)
    before = state
    unchosen = state.proposed or about != state.about
    state = replace(state, about=about, proposed=unchosen)
    state, reply = take_text(state, event, desk, about)
    if len(state.lines) > len(before.lines):
        state = replace(state, about=None)
    return _left_when_found(before, state), replace(reply, said=(*how, *reply.said))


def _headed(state: State, line: Line | Unreadable) -> Equation | None:
    """The sum that a heading names, of whatever body."""
    if isinstance(line, Unreadable) or line.label is None:
        return None
    return equation_named(state.problem, line.label, None)


def _left_when_found(before: State, after: State) -> State:
    """A part is left when the last unknown on it is found."""
    if still_open(before) and not still_open(after):
        return replace(after, part=(), about=None)
    return after


def hints(state: State, desk: Judge) -> Levels:
    """For what was just wrong; for a value that can be had; else for the sum, or the choice."""
    if unknown := value_in_trouble(state):
        return value_hints(state, desk, unknown)
    if state.about is not None and wrong_place(state) == state.about:
        return line_hints(state, desk, state.about)
    if unknown := solvable_now(state, still_open(state)):
        return value_hints(state, desk, unknown)
    if state.about is not None:
        return line_hints(state, desk, state.about)
    best = best_sum(state)
    line = "Every sum of this part that adds something is written."
    if best is not None:
        line = f"Take {in_words(best)}."
    return Levels(
        Question("section"),
        "Look for a sum that holds only one of the cut members.",
        "A cut member has no moment about a point on its line, and no part in a direction "
        "perpendicular to it.",
        "Follow the lines of the cut members until two of them meet; or see whether two are parallel.",
        line,
    )


def best_sum(state: State) -> Equation | None:
    """The sum of the part with the fewest unknowns, of those that add something."""
    worth = [
        (len(names), index, about)
        for index, about in enumerate(sums_offered(state))
        if (names := open_in(state, about)) and adds_something(state.problem, about, state.standing)
    ]
    return min(worth, key=lambda each: each[:2])[2] if worth else None


def best_section(state: State) -> tuple[Section, str] | None:
    """A section with a sum that finds a force alone, and a joint of its smaller part; or None."""
    known = {m.name for m in state.problem.members if m.name in state.result}
    for found in sections(state.problem, known):
        part = min(found.parts, key=lambda each: (_unknown_reactions(state, each), len(each)))
        tried = replace(state, part=part, about=None)
        about = best_sum(tried)
        if about is not None and len(open_in(tried, about)) == 1:
            return found, part[0]
    return None


def _unknown_reactions(state: State, part: tuple[str, ...]) -> int:
    return sum(r.joint in part and r.name not in state.result for r in state.problem.reactions)
