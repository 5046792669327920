"""What happens on the walk when a text is entered: an answer, a line to judge, or the word of a deed?

What it means is read in `tutor.deeds`, for the screen and the plain lesson alike; here it is done.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from typing import TYPE_CHECKING

from tutor.deeds import deed_of
from tutor.deeds.deed import (
    Await,
    Begin,
    Do,
    Go,
    Guided,
    Lost,
    RemarksOn,
    Save,
    Show,
    Tell,
    Unfinished,
)
from tutor.deeds.named_once import named_once
from tutor.deeds.words import BY_WORD
from tutor.figure import moment_figure
from tutor.judge import M
from tutor.lesson import Say, State
from tutor.lesson.reply import LINES
from tutor.screens import answers, walk_deeds, walk_pictures
from tutor.screens.brief import brief
from tutor.screens.dialogs.told import Told
from tutor.screens.lost import key_typed, lost
from tutor.screens.pictures import TURNS, free_joint
from tutor.screens.widgets.choices import Choices
from tutor.screens.widgets.reply_pane import said_row
from tutor.session import Session

if TYPE_CHECKING:
    from tutor.screens.walk import WalkScreen

HOW_TO_CHOOSE = "Type the number of the equation, or its heading, like Fx or M A."
AXES = ("x", "y")
SHORTEST = 3
"""Shorter words behind a line may be what was typed to mend it."""


def greeting(session: Session) -> Iterator[Say]:
    """What there is to say when a walk comes onto the screen."""
    for notice in session.news():
        yield Say("note", notice)
    if session.skipped:
        yield Say("note", f"{session.skipped} kept entries no longer fit and were left out.")
    if session.lesson.state.tries:
        yield Say("note", "Here is where you left.")


def take(walk: WalkScreen, text: str) -> None:
    """Do what an entered text means; the line keeps it where it has to be mended.

    A word typed behind a wrong line that still stood there is a deed, and the line stays.
    """
    word = behind_the_line(walk, text)
    if not word:
        _take(walk, text)
        return
    line = walk.unmended
    _take(walk, word)
    if walk.unmended == line and walk.app.screen is walk and walk.line.value in ("", line):
        walk.line.begin(line)
        walk.line.refused()


def _take(walk: WalkScreen, text: str) -> None:
    text = named_once(text, walk.session.lesson.problem.names)
    deed = deed_of(walk.session.lesson, text)
    match deed:
        case Do(kind="type"):
            typed(walk, text, str(deed.data["text"]))
        case Do(kind="shares"):
            shared(walk, deed, text)
        case Do(kind="choose") if key := key_for_a_word(text, walk):
            walk.line.leave()
            walk.tell(key)
        case Do():
            done(walk, deed)
        case Tell(lines=lines):
            walk.line.leave()
            walk.tell(*lines)
        case Lost(meant=meant):
            walk.line.leave()
            walk.tell(lost(walk.ask, text, walk.deeds(), meant))
        case Await(unknown=unknown):
            walk.line.begin(f"{unknown} = ")
        case Show():
            walk.line.taken()
            SHOWN.get(deed.what, _question)(walk, deed.of)
        case Unfinished():
            walk.line.taken()
            UNFINISHED[deed.deed](walk, deed.given)
        case Save(name=name):
            walk.line.taken()
            walk_deeds.save(walk, name)
        case RemarksOn() | Guided() | Begin() | Go():
            walk.line.taken()
            elsewhere(walk, deed)


def key_for_a_word(text: str, walk: WalkScreen) -> str:
    """How a deed is done whose letter was entered where it may begin a word that chooses, as in "horizontal";
    an axis is its whole name."""
    return "" if text.strip() in AXES else key_typed(text, walk.deeds())


def elsewhere(walk: WalkScreen, deed: RemarksOn | Guided | Begin | Go) -> None:
    """What is no answer and shows nothing: a choice for good, how the walk begins, and away from it."""
    match deed:
        case RemarksOn(on=on):
            walk.post_message(walk.Wanted("remarks", on))
        case Guided(on=on):
            walk.post_message(walk.Wanted("guide", on))
        case Begin(stage=stage):
            walk_deeds.begin(walk, stage)
        case Go(where=where):
            leave_for(walk, where)


def behind_the_line(walk: WalkScreen, text: str) -> str:
    """The word of a deed typed behind the wrong line still to be mended, or in its place, or nothing."""
    line = walk.unmended
    if line and walk.line.replaced == line:
        word = text.strip()
    else:
        word = text[len(line) :].strip() if line and text.startswith(line) else ""
    return word if len(word) >= SHORTEST and word.split(" ")[0].lower() in BY_WORD else ""


def typed(walk: WalkScreen, text: str, line: str) -> None:
    """Judge the line. A right one makes room for the next; any other stays for mending."""
    reply = walk.do("type", text=line)
    if answers.is_taken(reply):
        walk.line.taken()
        walk.unmended = ""
        return
    walk.unmended = text
    walk.line.begin(text)
    walk.line.refused()
    if reply.verdict is None and walk.ask.about is None and walk.ask.kind in LINES:
        walk.add(Say("note", HOW_TO_CHOOSE))
    else:
        walk.point_out(reply)


def shared(walk: WalkScreen, deed: Do, text: str) -> None:
    """What joints take of a load on members; it stays for mending where none of it stands."""
    if walk.do(deed.kind, **deed.data).accepted:
        walk.line.taken()
    else:
        walk.line.begin(text)
        walk.line.refused()


def done(walk: WalkScreen, deed: Do) -> None:
    """An event that is no line; where a hint points at the wrong line, this stands there again. Boxes
    show what was typed for them."""
    walk.line.taken()
    ticked = answers.ticked(deed.kind, deed.data)
    if ticked is not None:
        walk.query_one(Choices).marked = ticked
    reply = walk.do(deed.kind, **deed.data)
    if deed.kind == "hint" and walk.unmended:
        span = answers.marked(walk.session.lesson.state, reply, walk.unmended)
        if span is not None:
            walk.line.begin(walk.unmended)
            walk.line.mark(span)
    if deed.kind in ("show", "guess"):
        walk_deeds.after_showing(walk)
    elif walk.app.screen is walk:
        walk.to_answer()


def leave_for(walk: WalkScreen, where: str) -> None:
    """Away from the walk: to practice, a homework on this truss, or the problems."""
    if where == "practice":
        walk_deeds.practice(walk)
    else:
        walk.dismiss(where if where in ("homework", "next") else "leave")


def _question(walk: WalkScreen, of: str) -> None:
    walk.tell(walk.ask.question)


def _figure(walk: WalkScreen, joint: str) -> None:
    if joint:
        walk_pictures.show_other(
            walk, f"Joint {joint}, cut free", free_joint(walk.session.lesson.state, joint)
        )
    else:
        walk_pictures.show_next(walk)


def _arm(walk: WalkScreen, force: str) -> None:
    state = walk.session.lesson.state
    if not force or not isinstance(state.about, M):
        walk.tell("The picture shows where the arm runs.")
        return
    turning = None if state.turning is None else TURNS.get(state.turning)
    senses = {n: s for n, s in state.senses.items() if n in state.problem.reaction}
    figure = moment_figure(state.problem, force, state.about.at, senses=senses, turning=turning)
    walk_pictures.show_other(walk, f"Where the arm of {force} runs", figure)


def _joints(walk: WalkScreen, of: str) -> None:
    walk.tell(*unknown_lines(walk.session.lesson.state))


def unknown_lines(state: State) -> tuple[str, ...]:
    """What is unknown at each joint, in one sentence for those with unknowns and one for the rest."""
    left = {joint.name: state.unknown_at(joint.name) for joint in state.problem.joints}
    open_ones = [f"{joint}: {', '.join(names)}" for joint, names in left.items() if names]
    known = [joint for joint, names in left.items() if not names]
    return (
        *((f"Unknown at {'; at '.join(open_ones)}.",) if open_ones else ()),
        *((f"Everything is known at {', '.join(known)}.",) if known else ()),
    )


def hear_again(walk: WalkScreen) -> None:
    """The last verdict with the hints since; over the screen where they were many."""
    if not walk.heard:
        walk.tell("Nothing was answered yet.")
    elif brief(walk.heard) != walk.heard:
        rows = [said_row(say, walk.looks.ascii_only).plain for say in walk.heard]
        walk.app.push_screen(
            Told("Written at the board", "\n".join(rows)), lambda _: walk.to_answer()
        )
    else:
        walk.show(walk.heard)


SHOWN: Mapping[str, Callable[[WalkScreen, str], None]] = {
    "question": _question,
    "where": _question,
    "last": lambda walk, of: hear_again(walk),
    "figure": _figure,
    "large": lambda walk, of: walk_pictures.show_large(walk),
    "truss": lambda walk, of: walk_deeds.show_story(walk),
    "arm": _arm,
    "lines": lambda walk, of: walk_pictures.show_lines(walk),
    "results": lambda walk, of: walk_pictures.show_lines(walk),
    "joints": _joints,
    "table": lambda walk, of: walk_deeds.show_table(walk),
    "help": lambda walk, of: walk_deeds.show_help(walk),
}
UNFINISHED: Mapping[str, Callable[[WalkScreen, str], None]] = {
    "zero": lambda walk, given: walk_deeds.zero(walk, given),
    "assume": lambda walk, given: walk_deeds.assume(walk, given),
    "step": lambda walk, given: walk_deeds.step(walk),
    "equation": lambda walk, given: walk_deeds.equation(walk),
    "save": lambda walk, given: walk_deeds.save(walk, given),
    "answer": lambda walk, given: walk_deeds.answer(walk),
    "guess": lambda walk, given: walk_deeds.guess(walk),
}
