"""What may be done at one joint by choosing alone: hold it, load it, take away what is at it?"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from textual.app import App

from tutor.drafting import SHAPES, Drop, Entry, Hold, Push
from tutor.model import Load, Problem, Support
from tutor.model.parts import AXES, PushDirection
from tutor.model.supports import SUPPORTS
from tutor.notation import Exact
from tutor.screens.dialogs.choose import Choose
from tutor.screens.widgets.choices import Choice

SIZES = (1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 100)
Take = Callable[[Entry], object]


def ask_joint(app: App[int], problem: Problem, then: Callable[[str], object]) -> None:
    """Which joint?"""

    def picked(key: str | None) -> None:
        if key is not None:
            then(key)

    choices = [Choice(joint.name, joint.name) for joint in problem.joints]
    app.push_screen(Choose("At a joint", "Which joint?", choices), picked)


def ask_deed(app: App[int], problem: Problem, joint: str, take: Take) -> None:
    """What about this joint?"""
    choices = joint_choices(problem, joint)

    def picked(key: str | None) -> None:
        if key is None:
            return
        kind, _, name = key.partition(" ")
        if kind == "load":
            ask_size(app, problem, joint, name, take)
        elif kind == "drop":
            what, _, name = name.partition(" ")
            for known in ("joint", "member", "support", "load"):
                if what == known:
                    take(Drop(known, name))
        else:
            angle = Exact.of(int(name)) if name else None
            take(Hold(Support(joint, kind, angle=angle)))

    app.push_screen(Choose(f"Joint {joint}", f"What about joint {joint}?", choices), picked)


def joint_choices(problem: Problem, joint: str) -> list[Choice]:
    """Supports and loads to put on the joint, then what can be taken away there."""
    found = [
        *support_choices(),
        *(Choice(f"load {way}", f"a load {way}") for way in ("down", "up", "left", "right")),
    ]
    if any(support.joint == joint for support in problem.supports):
        found.append(Choice(f"drop support {joint}", "take the support away"))
    if any(load.joint == joint for load in problem.given_loads):
        found.append(Choice(f"drop load {joint}", "take the load away"))
    found += [
        Choice(f"drop member {member.name}", f"take {member.name} away")
        for member in problem.meeting[joint]
    ]
    return [*found, Choice(f"drop joint {joint}", f"take joint {joint} away")]


def support_choices() -> Iterator[Choice]:
    """Every kind of support that needs no more than a choice, and what pushes from a wall."""
    for kind in SUPPORTS.values():
        if kind.alone:
            yield Choice(kind.name, kind.alone)
        if kind.takes == "angle" and kind.only_pushes:
            yield Choice(f"{kind.name} 0", f"{kind.name} on a wall, pushes right")
            yield Choice(f"{kind.name} 180", f"{kind.name} on a wall, pushes left")


def ask_size(app: App[int], problem: Problem, joint: str, way: str, take: Take) -> None:
    """How large is the load?"""

    def picked(key: str | None) -> None:
        known: PushDirection
        for known in AXES:
            if key is not None and way == known:
                take(Push(Load(joint, ((known, Exact.of(int(key))),))))

    choices = [Choice(str(size), f"{size} {problem.force}") for size in SIZES]
    asked = f"How large is the load {way}? Another size is typed: {joint} 7.5 {way}"
    app.push_screen(Choose(f"Load at {joint}", asked, choices), picked)


def ask_shape(app: App[int], then: Callable[[str], object]) -> None:
    """Which common shape? `then` takes the line that draws it."""

    def picked(key: str | None) -> None:
        if key is not None:
            panels = "" if SHAPES[key].fixed else " panels 4"
            then(f"{SHAPES[key].name} span 12 height 3{panels} load 10")

    choices = [Choice(key, shape.name) for key, shape in SHAPES.items()]
    asked = "It takes the place of what is there; undo brings that back."
    app.push_screen(Choose("Common shapes", asked, choices), picked)
