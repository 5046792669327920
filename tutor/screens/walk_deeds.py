"""What does each deed on the walk's bar do, and when is it possible?"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any, Protocol

from textual.app import App

from tutor.lesson import STEPS, Ask, Reply, Say
from tutor.lesson.steps.skipping import SKIPPABLE
from tutor.lesson.steps.zero import RULES
from tutor.screens.closing import ClosingScreen
from tutor.screens.deeds import WALK
from tutor.screens.dialogs.choose import Choose
from tutor.screens.dialogs.help import help_text
from tutor.screens.dialogs.told import Told
from tutor.screens.looks import Looks
from tutor.screens.widgets.choices import Choice
from tutor.screens.widgets.line_input import LineInput
from tutor.session import Session

EQUATIONS = frozenset({"line", "joint-line", "close"})


class Walk(Protocol):
    """What a deed needs of the screen of the walk."""

    session: Session
    looks: Looks

    @property
    def app(self) -> App[Any]: ...
    @property
    def ask(self) -> Ask: ...
    @property
    def line(self) -> LineInput: ...
    def do(self, kind: str, **data: object) -> Reply: ...
    def point_out(self, reply: Reply) -> None: ...
    def to_answer(self) -> None: ...
    def focus_on(self, selector: str) -> None: ...
    def next_picture(self) -> None: ...
    def practise(self) -> None: ...
    def dismiss(self, result: Any = None) -> Any: ...


def possible(walk: Walk) -> frozenset[str]:
    """The ids of the deeds that make sense now."""
    state, kind = walk.session.lesson.state, walk.ask.kind
    found = {"figure", "step", "help", "leave"}
    if kind != "table":
        found.add("hint")
    if walk.session.lesson.events:
        found.add("undo")
    if state.offered is not None:
        found.add("keep")
    if kind in EQUATIONS:
        found.add("equation")
    if state.step == "joints":
        found |= {"zero", "assume"}
        if state.joint is not None:
            found.add("joint")
    if state.practice is not None:
        found.add("practice")
    if state.results:
        found.add("table")
    if state.step in walk.session.skippable and state.step in SKIPPABLE:
        found.add("skip")
    return frozenset(found)


def hint(walk: Walk) -> None:
    reply = walk.do("hint")
    walk.to_answer()
    if walk.ask.kind in EQUATIONS:
        walk.point_out(reply)


def keep(walk: Walk) -> None:
    reply = walk.do("keep")
    walk.to_answer()
    if reply.accepted:
        walk.line.taken()


def equation(walk: Walk) -> None:
    walk.focus_on("#choices")


def joint(walk: Walk) -> None:
    walk.do("joint", joint=None)


def undo(walk: Walk) -> None:
    walk.do("undo")
    walk.to_answer()


def skip(walk: Walk) -> None:
    walk.do("skip")


def figure(walk: Walk) -> None:
    walk.next_picture()


def practice(walk: Walk) -> None:
    walk.practise()


def step(walk: Walk) -> None:
    here = walk.session.lesson.state.step
    choices = [Choice(name, name.capitalize(), name == here) for name in STEPS]

    def chosen(name: str | None) -> None:
        if name is not None and name != here:
            walk.do("go", step=name)

    walk.app.push_screen(
        Choose("Steps", "Where to? A step can be left and come back to.", choices), chosen
    )


def zero(walk: Walk) -> None:
    """Name the member, then the rule."""

    def named(member: str | None) -> None:
        if member is None:
            return
        rules = [Choice(key, words) for key, words in RULES.items()]
        walk.app.push_screen(
            Choose(f"Member {member} without force", "Which rule shows it?", rules),
            lambda rule: None if rule is None else _state_zero(walk, member, rule),
        )

    members = [Choice(name, name) for name in _open_members(walk)]
    walk.app.push_screen(
        Choose("Zero-force member", "Which member carries no force?", members), named
    )


def _state_zero(walk: Walk, member: str, rule: str) -> None:
    walk.do("zero", member=member, rule=rule)


def assume(walk: Walk) -> None:
    """Turn the arrow of a member that has no value yet."""
    senses = walk.session.lesson.state.senses
    choices = []
    for name in _open_members(walk):
        pushing = senses.get(name) == "C"
        turned = "T, pulling" if pushing else "C, pushing"
        choices.append(Choice(f"{name} {'T' if pushing else 'C'}", f"{name} as {turned}"))

    def chosen(key: str | None) -> None:
        if key is not None:
            member, _, sense = key.rpartition(" ")
            walk.do("assume", member=member, sense=sense)

    walk.app.push_screen(
        Choose(
            "Assume T or C",
            "Every member is drawn pulling unless you say otherwise. Which one do you draw how?",
            choices,
        ),
        chosen,
    )


def _open_members(walk: Walk) -> list[str]:
    """The members without value, those at the chosen joint first."""
    state = walk.session.lesson.state
    here = [] if state.joint is None else [m.name for m in state.problem.meeting[state.joint]]
    names = [*here, *(m.name for m in state.problem.members if m.name not in here)]
    return [name for name in names if name not in state.result]


def show_table(walk: Walk) -> None:
    open_table(walk, ())


def open_table(walk: Walk, said: Sequence[Say]) -> None:
    """The table, with what was said on the way to it."""

    def closed(way: str | None) -> None:
        if way == "leave":
            walk.dismiss("leave")

    walk.app.push_screen(ClosingScreen(walk.session, walk.looks, said), closed)


def show_help(walk: Walk) -> None:
    walk.app.push_screen(Told("Help", help_text(WALK)), lambda _: walk.to_answer())


def leave(walk: Walk) -> None:
    walk.dismiss("leave")


DO: Mapping[str, Callable[[Walk], None]] = {
    "hint": hint,
    "keep": keep,
    "equation": equation,
    "joint": joint,
    "zero": zero,
    "assume": assume,
    "undo": undo,
    "skip": skip,
    "figure": figure,
    "practice": practice,
    "step": step,
    "table": show_table,
    "help": show_help,
    "leave": leave,
}
