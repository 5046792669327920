"""Step 1: why do these members carry axial force only, and do the counts fit?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from tutor.judge import Judge
from tutor.lesson.event import Event
from tutor.lesson.hints import Levels
from tutor.lesson.place import Question
from tutor.lesson.reply import YES, Ask, Option, Reply, Say
from tutor.lesson.state import State
from tutor.lesson.step import LessonStep
from tutor.lesson.steps import sound, spread
from tutor.lesson.steps.reasons import BENDING, TRUE_REASONS, WORDS, statements
from tutor.lesson.trying import right, wrong
from tutor.model import Problem
from tutor.text import listed, lowered

COUNTED = {
    "m": "the members",
    "r": "the reactions",
    "2j": "the equations of the joints",
}
BECAUSE = (
    "Pins, loads at the joints only, no weight between. Each member is then pulled or pushed "
    "at its two ends only, along the line between them."
)


def ask(state: State) -> Ask:
    """What lies on members first, then the reasons, then the counts."""
    if spread.asked_for(state):
        return spread.ask(state)
    if not state.reasons_done:
        return Ask(
            "idealise",
            "reasons",
            "Idealise",
            "Each member is taken as a two-force member: its force lies along its axis. Which of "
            "these make that so? Choose all that do.",
            statements(state.problem),
        )
    if state.count_done and sound.asked_for(state):
        return sound.ask(state)
    return Ask(
        "idealise",
        "count",
        "Count",
        "Count the members m, the reactions r and the equations 2j that the joints give, j being their "
        "number.",
        (Option("m", "members m"), Option("r", "reactions r"), Option("2j", "equations 2j")),
    )


def reasons(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """The student chose reasons: data `chosen`, a list of keys."""
    chosen = event.strings("chosen") & WORDS.keys()
    true = set(TRUE_REASONS)
    if not chosen:
        return state, Reply((Say("note", "Choose those that hold; there is more than one."),))
    if chosen == true:
        state = right(replace(state, reasons_done=True), event, Question("reasons"))
        return state, Reply((Say.opened("right", YES, lowered(BECAUSE)),), True)
    if chosen & BENDING.keys():
        look = "One of these would let a member bend, the opposite of what is wanted."
    elif chosen - true:
        look = "Something here is often so in a truss, but does not make the force axial."
    elif len(chosen) == 1:
        look = "This one is needed, but alone it does not make the force axial."
    else:
        look = "These are needed, but one more thing is that makes the force axial."
    state = wrong(state, event, Question("reasons"), ("extra" if chosen - true else "missing",))
    return state, Reply((Say("wrong", look),))


def true_counts(problem: Problem) -> dict[str, int]:
    """Members, reactions, and equations at the joints."""
    return {"m": len(problem.members), "r": len(problem.reactions), "2j": 2 * len(problem.joints)}


def miscounted(problem: Problem, counted: Mapping[str, object]) -> tuple[str, ...]:
    """Which of `m`, `r` and `2j` are to be counted again, as the verdict names them."""
    return tuple(key for key, value in true_counts(problem).items() if counted.get(key) != value)


def count(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """The student counted: data `m`, `r`, `2j`, whole numbers."""
    true = true_counts(state.problem)
    counted = {key: event.data.get(key) for key in true}
    if not all(isinstance(n, int) and not isinstance(n, bool) for n in counted.values()):
        return state, Reply((Say("note", "Give three whole numbers: m, r and 2j."),))
    off = miscounted(state.problem, counted)
    if not off:
        state = right(replace(state, count_done=True), event, Question("count"))
        if state.problem.truss is not None:
            said = (
                f"m + r = {true['m']} + {true['r']} = {true['m'] + true['r']}, 2j = {true['2j']}."
            )
            return state, Reply((Say.opened("right", YES, said),), True)
        text = (
            f"m + r = {true['m']} + {true['r']} = {true['2j']} = 2j. As many unknowns as equations."
        )
        return state, Reply((Say.opened("right", YES, text),), True)
    state = wrong(state, event, Question("count"), ("arithmetic",))
    again = listed([COUNTED[key] for key in off])
    return state, Reply((Say("wrong", f"Count {again} again."),))


def hints(state: State, desk: Judge) -> Levels:
    """The hints of whichever part is open."""
    problem = state.problem
    if spread.asked_for(state):
        return spread.hints(state, desk)
    if not state.reasons_done:
        return Levels(
            Question("reasons"),
            "Ask of each statement: if it were not so, could a member be bent?",
            "A member with forces at its two ends only, and no moments there, is in equilibrium only "
            "if the two forces are equal, opposite and along its axis.",
            "The reasons are about how members are joined, where loads act, and what lies between "
            "the joints; not about the shape of the whole or of the bars.",
            "Choose: "
            + "; ".join(o.words for o in statements(problem) if o.key in TRUE_REASONS)
            + ".",
        )
    if state.count_done and sound.asked_for(state):
        return sound.hints(state, desk)
    return Levels(
        Question("count"),
        "One of these counts is about members, one about supports, one about joints.",
        "A pin holds in two directions and so gives two reactions; a roller or a link gives one. "
        "Each joint gives two equations.",
        "Go round the truss joint by joint and tick off: every member once, every support, every "
        "joint twice.",
        f"m = {len(problem.members)}, r = {len(problem.reactions)}, 2j = {2 * len(problem.joints)}.",
    )


def unsaid(state: State) -> str | None:
    """Why no later step can be entered yet, or None."""
    if spread.asked_for(state):
        return spread.FIRST
    return sound.FIRST if sound.asked_for(state) else None


def _done(state: State) -> bool:
    return state.reasons_done and state.count_done and unsaid(state) is None


def _pass_over(state: State) -> tuple[State, str]:
    state = replace(spread.all_brought(state), reasons_done=True, count_done=True)
    if not state.problem.spreads:
        return state, ""
    return (
        state,
        f"What lay on the members acts at the joints: {spread.loads_in_words(state.problem)}.",
    )


STEP = LessonStep(
    name="idealise",
    order=1,
    where="at the idealisation",
    arrived=Say("note", "Back to the idealisation."),
    not_here="Say first why the members carry axial force only, and count. Lines are written "
    "from the reactions on.",
    ask=ask,
    hints=hints,
    handles={"reasons": reasons, "count": count, **sound.HANDLES, **spread.HANDLES},
    done=_done,
    chosen=True,
    without_forces=True,
    skill="step idealise",
    pass_over=_pass_over,
)
