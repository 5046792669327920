"""Step 3: which equations of the whole truss give the reactions?"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from tutor.judge import Along, Fx, Fy, Judge, M, in_words
from tutor.judge.about import Equation, as_text
from tutor.judge.independent import adds_something, how_many
from tutor.lesson.event import Event
from tutor.lesson.hints import Levels
from tutor.lesson.place import Question
from tutor.lesson.reply import Ask, Reply, Say, option_of
from tutor.lesson.solvable import open_in, solvable_now
from tutor.lesson.state import State
from tutor.lesson.step import LessonStep
from tutor.lesson.steps.apart import take_apart
from tutor.lesson.steps.easier import teach
from tutor.lesson.steps.free_body import undrawn
from tutor.lesson.steps.headings import equation_called, offered_along
from tutor.lesson.steps.hinting import line_hints, value_hints, value_in_trouble
from tutor.lesson.steps.symmetry import take_symmetry
from tutor.lesson.steps.unchosen import equation_meant
from tutor.lesson.steps.writing import take_text
from tutor.lesson.steps.zero import zero_hints
from tutor.text import listed

INDEPENDENT = 3
BETTER_POINT = (
    "More of the unknown forces pass through another point; about that one the line is shorter."
)


def ask(state: State) -> Ask:
    """Choose an equation of the whole truss, write it, then its values."""
    sums: dict[Equation, str] = {Fx(): "ΣFx", Fy(): "ΣFy"}
    sums |= {M(joint.name): f"ΣM about {joint.name}" for joint in state.problem.joints}
    options = tuple(option_of(about, words, state.about) for about, words in sums.items())
    return Ask("reactions", "line", "Reactions", _question(state), options, None, state.about)


def _question(state: State) -> str:
    names = listed([r.name for r in state.problem.reactions if r.name not in state.result])
    if not names:
        return "All reactions are found. Another equation of the whole truss checks them."
    if solvable_now(state) is not None:
        return (
            f"Find {names}. Type a value that your lines give, or choose another equation of the "
            "whole truss and type it."
        )
    if _used_up(state):
        return (
            f"Three equations of the whole truss stand, and they do not give {names}: the joints "
            "have to help. Go to a joint; its equations count together with these."
        )
    return f"Find {names}. Choose an equation of the whole truss and type it."


def _used_up(state: State) -> bool:
    """Whether the whole truss has no further equation to give."""
    return how_many(state.problem, _standing(state), None) == INDEPENDENT


def _standing(state: State) -> list[Equation]:
    return [line.about for line in state.lines_of(None) if line.adds]


def choose(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """The student chose an equation: data `about`, as `as_text` writes it."""
    about = equation_called(state.problem, event.text("about"))
    if about is None:
        said = "There is no such equation; choose ΣFx, ΣFy or ΣM about a joint."
        return state, Reply((Say("note", said),))
    if about.joint is not None and about.joint != state.joint:
        return state, Reply((Say("note", f"Go to joint {about.joint} first."),))
    chosen = in_words(about)
    if isinstance(about, Along) and about.joint is not None:
        chosen = f"{offered_along(state.problem, about)}, at joint {about.joint}"
    said_too = [Say("note", f"Write {chosen}.")]
    if isinstance(about, M) and _is_better_elsewhere(state, about):
        said_too.append(Say("remark", BETTER_POINT, teaches=True))
    return replace(state, about=about, proposed=False), Reply(tuple(said_too), True)


def _is_better_elsewhere(state: State, about: M) -> bool:
    """Whether moments about another joint would leave fewer unknowns in the line."""
    here = len(open_in(state, about))
    return any(count < here for count, other in worth_writing(state) if isinstance(other, M))


def worth_writing(state: State) -> Iterator[tuple[int, Equation]]:
    """The equations of the whole truss that add something, with the number of their unknowns."""
    problem, standing = state.problem, _standing(state)
    for about in _offers(state):
        count = len(open_in(state, about))
        if count and adds_something(problem, about, standing):
            yield count, about


def _offers(state: State) -> list[Equation]:
    """The equations of the whole truss that can be chosen."""
    return [*(M(joint.name) for joint in state.problem.joints), Fx(), Fy()]


def typed(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """The student typed a line or a value: data `text`, and `about` where not chosen before."""
    each = take_symmetry(typed, state, event, desk) or take_apart(typed, state, event, desk)
    if each is not None:
        return each
    if "about" in event.data:
        state, reply = choose(state, event, desk)
        if not reply.accepted:
            return state, reply
    about, how = equation_meant(state, event.text("text"), desk, _offers(state))
    if how and about is None:
        return state, Reply(how)
    before = state
    unchosen = state.proposed or about != state.about
    state = replace(state, about=about, proposed=unchosen)
    state, reply = take_text(state, event, desk, about)
    if about is not None and len(state.lines) > len(before.lines):
        state, reply = teach(before, about, replace(state, about=None), reply)
    return state, replace(reply, said=(*how, *reply.said))


def hints(state: State, desk: Judge) -> Levels:
    """For what was just wrong; for the line chosen; else for a value; else for the choice."""
    if stated := zero_hints(state):
        return stated
    if unknown := value_in_trouble(state):
        return value_hints(state, desk, unknown)
    if state.about is not None:
        return line_hints(state, desk, state.about)
    if unknown := solvable_now(state):
        return value_hints(state, desk, unknown)
    best = min(worth_writing(state), key=lambda found: (found[0], as_text(found[1])), default=None)
    if best is None:
        return _spent(state)
    return Levels(
        Question("reactions"),
        "Look for an equation in which only one reaction is left.",
        "A sum of moments about a point leaves out every force whose line of action passes through "
        "that point.",
        "Follow the lines of action of the reactions: where do two of them meet?",
        f"Take {in_words(best[1])}.",
    )


def _spent(state: State) -> Levels:
    """The hints where the whole truss has no equation left that adds something."""
    fewest = min(state.problem.joints, key=lambda joint: len(state.unknown_at(joint.name)))
    return Levels(
        Question("reactions spent"),
        "Another equation of the whole truss would only repeat those that stand.",
        "A plane body gives three independent equations; further ones come from its parts.",
        "A joint is a part too: it adds two equations, and its members as unknowns.",
        f"Go on at joint {fewest.name}.",
    )


STEP = LessonStep(
    name="reactions",
    order=3,
    where="at the reactions",
    arrived=Say.opened("note", "Next: ", "the reactions, from the equilibrium of the whole truss."),
    not_here="This belongs to another step; now the reactions are asked for.",
    ask=ask,
    hints=hints,
    handles={"type": typed, "choose": choose},
    done=lambda state: state.reactions_done,
    barred=undrawn,
)
