"""What does each deed on the walk's bar do?"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import TYPE_CHECKING

from tutor.deeds import board
from tutor.deeds.deed import Do, Tell
from tutor.lesson import STEPS, Say
from tutor.lesson.reply import TYPED
from tutor.lesson.steps.zero import RULES
from tutor.lesson.watching.guessing import NOTHING_TO_GUESS
from tutor.records.keep import slug
from tutor.records.report import markdown
from tutor.screens import walk_pictures
from tutor.screens.closing import ClosingScreen
from tutor.screens.deeds import WALK
from tutor.screens.dialogs.choose import Choose
from tutor.screens.dialogs.help import help_text
from tutor.screens.dialogs.save import SaveDialog
from tutor.screens.dialogs.told import Told
from tutor.screens.widgets.choices import Choices, OneOption
from tutor.screens.widgets.lines_pane import given_lines

if TYPE_CHECKING:
    from tutor.screens.walk import WalkScreen


def answer(walk: WalkScreen) -> None:
    walk.query_one(Choices).action_answer()


def hint(walk: WalkScreen) -> None:
    reply = walk.do("hint")
    walk.to_answer()
    if walk.ask.kind in TYPED:
        walk.point_out(reply)


def show(walk: WalkScreen) -> None:
    """Have the next thing written; enter on the empty line has the one after it written."""
    walk.do("show")
    after_showing(walk)


def after_showing(walk: WalkScreen) -> None:
    """The focus goes to the line where enter shows on, else to where the answer goes."""
    if walk.repeating.deed:
        walk.line.focus()
    elif walk.app.screen is walk:
        walk.to_answer()


def begin(walk: WalkScreen, stage: str = "") -> None:
    """Have the first steps written, up to this stage or as offered."""
    deed = board.beginning(stage or walk.session.stage)
    if isinstance(deed, Do):
        walk.do(deed.kind, **deed.data)
    elif isinstance(deed, Tell):
        walk.tell(*deed.lines)


def guess(walk: WalkScreen) -> None:
    """Choose what may come next; the guess is answered."""
    asked = board.to_guess(walk.session.lesson)
    if asked is None:
        walk.tell(NOTHING_TO_GUESS)
        return

    def guessed(key: str | None) -> None:
        if key is not None:
            walk.do("guess", guess=key)
            after_showing(walk)

    choices = [OneOption(option.key, option.words) for option in asked.options]
    walk.app.push_screen(Choose("Guess", asked.question, choices), guessed)


def keep(walk: WalkScreen) -> None:
    reply = walk.do("keep")
    walk.to_answer()
    if reply.accepted:
        walk.line.taken()


def equation(walk: WalkScreen) -> None:
    walk.query_one("#choices").focus()


def joint(walk: WalkScreen) -> None:
    """To the choice of joints, from a joint or from a section."""
    if walk.session.lesson.state.part:
        walk.do("section", members=[])
    else:
        walk.do("joint", joint=None)


def undo(walk: WalkScreen) -> None:
    walk.do("undo")
    walk.to_answer()


def skip(walk: WalkScreen) -> None:
    walk.do("skip")


def figure(walk: WalkScreen) -> None:
    walk_pictures.show_next(walk)


def large(walk: WalkScreen) -> None:
    walk_pictures.show_large(walk)


def practice(walk: WalkScreen) -> None:
    """Ask for the smaller problem; this walk waits below it."""
    problem = walk.session.lesson.practice
    if problem is not None:
        walk.post_message(walk.Practised(problem))


def step(walk: WalkScreen) -> None:
    here = walk.session.lesson.state.step
    choices = [OneOption(name, name.capitalize(), name == here) for name in STEPS]

    def chosen(name: str | None) -> None:
        if name is not None and name != here:
            walk.do("go", step=name)

    walk.app.push_screen(
        Choose("Steps", "Where to? A step can be left and come back to.", choices), chosen
    )


def zero(walk: WalkScreen, given: str = "") -> None:
    """Name the member, where none is given, then the rule."""

    def named(member: str | None) -> None:
        if member is None:
            return
        rules = [OneOption(key, words) for key, words in RULES.items()]
        walk.app.push_screen(
            Choose(f"Member {member} without force", "Which rule shows it, if any?", rules),
            lambda rule: None if rule is None else _state_zero(walk, member, rule),
        )

    if given:
        named(given)
        return
    members = [OneOption(name, name) for name in _open_members(walk)]
    walk.app.push_screen(
        Choose("Zero-force member", "Which member carries no force?", members), named
    )


def _state_zero(walk: WalkScreen, member: str, rule: str) -> None:
    walk.do("zero", member=member, rule=rule)


def assume(walk: WalkScreen, given: str = "") -> None:
    """Turn the arrow of a member that has no value yet."""
    senses = walk.session.lesson.state.senses
    choices, ways = [], {}
    for name in [given] if given else _open_members(walk):
        sense = "T" if senses.get(name) == "C" else "C"
        turned = "T, pulling" if sense == "T" else "C, pushing"
        choices.append(OneOption(f"{name} {sense}", f"{name} as {turned}"))
        ways[choices[-1].key] = {"member": name, "sense": sense}

    def chosen(key: str | None) -> None:
        if key is not None:
            walk.do("assume", **ways[key])

    walk.app.push_screen(
        Choose(
            "Assume T or C",
            "Every member is drawn pulling unless you say otherwise. Which one do you draw how?",
            choices,
        ),
        chosen,
    )


def _open_members(walk: WalkScreen) -> list[str]:
    """The members without value, those at the chosen joint first."""
    state = walk.session.lesson.state
    here = [] if state.joint is None else [m.name for m in state.problem.meeting[state.joint]]
    names = [*here, *(m.name for m in state.problem.members if m.name not in here)]
    return [name for name in names if name not in state.result]


def show_table(walk: WalkScreen) -> None:
    open_table(walk, ())


def open_table(walk: WalkScreen, said: Sequence[Say]) -> None:
    """The table, with what was said on the way to it."""

    def closed(way: str | None) -> None:
        if way in ("leave", "next"):
            walk.dismiss(way)

    walk.ahead = walk.onward()
    walk.show(walk.said)
    walk.app.push_screen(
        ClosingScreen(walk.session, walk.looks, said, walk.ahead, walk.guided), closed
    )


def show_help(walk: WalkScreen) -> None:
    walk.app.push_screen(Told("Help", help_text(WALK)), lambda _: walk.to_answer())


def onward(walk: WalkScreen) -> None:
    """To the problem that comes next."""
    walk.dismiss("next")


def leave(walk: WalkScreen) -> None:
    walk.dismiss("leave")


def show_story(walk: WalkScreen) -> None:
    state = walk.session.lesson.state
    told = given_lines(state).plain
    walk.app.push_screen(Told(state.problem.title, told), lambda _: walk.to_answer())


def save(walk: WalkScreen, name: str) -> None:
    """Write the lesson so far into a file of this name, or of one that is asked for."""
    lesson = walk.session.lesson

    def saved(path: str | None) -> None:
        if path is not None:
            walk.tell(f"Saved in {path}.")

    wanted = name or f"{slug(lesson.problem.title)}.md"
    walk.app.push_screen(SaveDialog(markdown(lesson), wanted), saved)


DO: Mapping[str, Callable[[WalkScreen], None]] = {
    "answer": answer,
    "hint": hint,
    "show": show,
    "begin": begin,
    "guess": guess,
    "keep": keep,
    "equation": equation,
    "joint": joint,
    "zero": zero,
    "assume": assume,
    "undo": undo,
    "skip": skip,
    "figure": figure,
    "large": large,
    "practice": practice,
    "step": step,
    "next": onward,
    "table": show_table,
    "help": show_help,
    "leave": leave,
}
