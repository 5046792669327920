"""Is the truss one that statics can solve: is every joint held, and by no more than it takes?

Asked only where the problem wants it said. The counts tell what cannot be; whether a joint can move
although they fit is seen from the picture.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from tutor.judge import Judge
from tutor.lesson.event import Event
from tutor.lesson.hints import Levels
from tutor.lesson.place import Question
from tutor.lesson.reply import YES, Ask, Option, Reply, Say
from tutor.lesson.state import State
from tutor.lesson.trying import right, wrong
from tutor.model.problem import Soundness
from tutor.statics import determinacy, loose_joints, soundness, stability
from tutor.text import listed

WORDS: Mapping[Soundness, str] = {
    "determinate": "every joint is held, and statics alone finds all forces",
    "unstable": "something can move although no member changes its length",
    "indeterminate": "every joint is held, but statics alone does not find all forces",
}
FEWER = "There are fewer unknowns than equations. Can every joint still be held then?"
MORE = "There are more unknowns than equations. Can equations alone find them all then?"
FIT_AND_LOOSE = (
    "The counts fit, but that is not enough: the members and supports may stand in the wrong places. "
    "Try in thought to move one joint after the other."
)
FIT_AND_HELD = (
    "The counts fit. Try in thought to move one joint after the other: is there one that can?"
)
MORE_AND_LOOSE = (
    "More unknowns than equations do not keep all joints in their places: where one part has too "
    "many members, another may have too few."
)
MORE_AND_HELD = (
    "Try in thought to move one joint after the other: does every one need a member longer?"
)
NO_FORCES = (
    "Statics alone does not find the forces of this truss: there is nothing more to do here."
)
ENDS: Mapping[Soundness, str] = {
    "determinate": "Now its forces are asked for.",
    "unstable": "Before it carries anything, it needs another member or support in the right place.",
    "indeterminate": "To solve it takes how members stretch as well, or a member or a support less.",
}


FIRST = "First say what this truss is: whether it is held, and whether statics can solve it."


def asked_for(state: State) -> bool:
    """Whether the question is still to be answered."""
    return state.problem.truss is not None and not (state.sound_done and _moving_said(state))


def what_it_is(state: State) -> str:
    """What has been said of a truss whose forces are not found, and how it moves where it can."""
    if not state.sound_done:
        return "Whether this truss is held is still to be said."
    found = soundness(state.problem)
    said = f"This truss: {WORDS[found]}."
    if found == "unstable" and state.moving_done:
        said += f" {stability(state.problem).how}"
    return said


def _moving_said(state: State) -> bool:
    return state.moving_done or soundness(state.problem) != "unstable"


def ask(state: State) -> Ask:
    """What the truss is; then, where it can move, which joints do."""
    if not state.sound_done:
        return Ask(
            "idealise",
            "soundness",
            "Is it held?",
            "What follows for this truss, from the counts and from how it is put together?",
            tuple(Option(key, words) for key, words in WORDS.items()),
        )
    return Ask(
        "idealise",
        "loose",
        "What moves?",
        "Which joints can move, the supports in place and no member changing its length? Choose all "
        "that can.",
        tuple(Option(joint.name, f"joint {joint.name}") for joint in state.problem.joints),
    )


def say_soundness(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """The student says what the truss is: data `is`, a key of `WORDS`."""
    said, true = event.text("is"), soundness(state.problem)
    if said not in WORDS:
        return state, Reply((Say("note", f"Say one of these: {', '.join(WORDS)}."),))
    if said != true:
        state = wrong(state, event, Question("soundness"), ("soundness",), said)
        return state, Reply((Say("wrong", _look(state, said)),))
    state = right(replace(state, sound_done=True), event, Question("soundness"), WORDS[true])
    text = determinacy(state.problem).said
    if determinacy(state.problem).count == "fits":
        text = f"the counts fit, and {WORDS[true]}."
    end = () if true == "unstable" else (Say("note", ENDS[true]),)
    return state, Reply((Say.opened("right", YES, text), *end), True)


def _look(state: State, said: str) -> str:
    """What to look at after a wrong answer: it names no other answer."""
    count, loose = determinacy(state.problem).count, not stability(state.problem).stable
    if count == "too-few":
        return FEWER
    if count == "fits":
        return FIT_AND_LOOSE if loose else FIT_AND_HELD
    if said == "determinate":
        return MORE
    return MORE_AND_LOOSE if loose else MORE_AND_HELD


def say_loose(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """The student says which joints can move: data `joints`, a list of names."""
    chosen = event.strings("joints") & state.problem.joint.keys()
    if not chosen:
        return state, Reply(
            (Say("note", "Choose the joints that can move; there is at least one."),)
        )
    true = set(loose_joints(state.problem))
    if chosen == true:
        state = right(replace(state, moving_done=True), event, Question("loose"))
        how = stability(state.problem).how
        said = (Say.opened("right", "Yes. ", how), Say("note", ENDS["unstable"]))
        return state, Reply(said, True)
    held, missed = chosen - true, true - chosen
    look = "One that you chose is held: find the triangles or supports that keep it in its place."
    if not held:
        look = "Those can move, but something moves along with them: a member cannot change its length."
    elif missed:
        look = "Not just these: see which joints hang together in triangles, and which of these are held."
    state = wrong(state, event, Question("loose"), ("extra" if held else "missing",))
    return state, Reply((Say("wrong", look),))


def hints(state: State, desk: Judge) -> Levels:
    """The hints of whichever part is open."""
    count = determinacy(state.problem)
    if not state.sound_done:
        return Levels(
            Question("soundness"),
            "Compare m + r with 2j first; then look how the truss is put together.",
            "Fewer unknowns than equations cannot hold every joint; more cannot be found by equations "
            "alone; and with as many, a badly placed member or support may still leave a joint loose.",
            "Go from triangle to triangle: what hangs together rigidly, and what holds that to the "
            "supports, or to the next triangle?",
            f"m + r = {count.unknowns} and 2j = {count.equations}; {WORDS[soundness(state.problem)]}.",
        )
    return Levels(
        Question("loose"),
        "Start from a support, and mark every joint that cannot move.",
        "A joint is held by two members, not in one line, to joints that are held; a pin holds it "
        "alone, a roller together with one member across its way.",
        "Joints of one rigid part move together: find the parts, then how each can turn or slide.",
        f"What can move is {listed(loose_joints(state.problem), most=20)}.",
    )


HANDLES = {"soundness": say_soundness, "loose": say_loose}
