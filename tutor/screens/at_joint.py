"""What may be done at one joint by choosing alone: hold it, load it, take away what is at it?"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from textual.app import App

from tutor.drafting import SHAPES, Drop, Entry, Hold, Push
from tutor.model import Load, Problem, Support
from tutor.model.parts import PushDirection
from tutor.model.supports import SUPPORTS
from tutor.notation import Exact
from tutor.screens.dialogs.choose import Choose
from tutor.screens.widgets.choices import OneOption

SIZES = (1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 100)
WAYS: tuple[PushDirection, ...] = ("down", "up", "left", "right")
Offered = Hold | Drop | PushDirection
"""What is done at a joint; a way asks how large the load is."""
Take = Callable[[Entry], object]


def ask_joint(app: App[int], problem: Problem, then: Callable[[str], object]) -> None:
    """Which joint?"""

    def picked(key: str | None) -> None:
        if key is not None:
            then(key)

    choices = [OneOption(joint.name, joint.name) for joint in problem.joints]
    app.push_screen(Choose("At a joint", "Which joint?", choices), picked)


def ask_deed(app: App[int], problem: Problem, joint: str, take: Take) -> None:
    """What about this joint?"""
    offered = list(_offered(problem, joint))

    def picked(key: str | None) -> None:
        deed = next((deed for choice, deed in offered if choice.key == key), None)
        if isinstance(deed, Hold | Drop):
            take(deed)
        elif deed is not None:
            ask_size(app, problem, joint, deed, take)

    choices = [choice for choice, _ in offered]
    app.push_screen(Choose(f"Joint {joint}", f"What about joint {joint}?", choices), picked)


def _offered(problem: Problem, joint: str) -> Iterator[tuple[OneOption, Offered]]:
    """Supports and loads to put on the joint, then what can be taken away there."""
    yield from _supports(joint)
    for way in WAYS:
        yield OneOption(f"load {way}", f"a load {way}"), way
    if any(support.joint == joint for support in problem.supports):
        yield OneOption(f"drop support {joint}", "take the support away"), Drop("support", joint)
    if any(load.joint == joint for load in problem.given_loads):
        yield OneOption(f"drop load {joint}", "take the load away"), Drop("load", joint)
    for member in problem.meeting[joint]:
        choice = OneOption(f"drop member {member.name}", f"take {member.name} away")
        yield choice, Drop("member", member.name)
    yield OneOption(f"drop joint {joint}", f"take joint {joint} away"), Drop("joint", joint)


def _supports(joint: str) -> Iterator[tuple[OneOption, Hold]]:
    """Every kind of support that needs no more than a choice, and what pushes from a wall."""
    for kind in SUPPORTS.values():
        if kind.alone:
            yield OneOption(kind.name, kind.alone), Hold(Support(joint, kind.name))
        if kind.takes == "angle" and kind.only_pushes:
            for angle, way in ((0, "right"), (180, "left")):
                choice = OneOption(f"{kind.name} {angle}", f"{kind.name} on a wall, pushes {way}")
                yield choice, Hold(Support(joint, kind.name, angle=Exact.of(angle)))


def ask_size(app: App[int], problem: Problem, joint: str, way: PushDirection, take: Take) -> None:
    """How large is the load?"""

    def picked(key: str | None) -> None:
        if key is not None:
            take(Push(Load(joint, ((way, Exact.of(int(key))),))))

    choices = [OneOption(str(size), f"{size} {problem.force}") for size in SIZES]
    asked = f"How large is the load {way}? Another size is typed: {joint} 7.5 {way}"
    app.push_screen(Choose(f"Load at {joint}", asked, choices), picked)


def ask_shape(app: App[int], then: Callable[[str], object]) -> None:
    """Which common shape? `then` takes the line that draws it."""

    def picked(key: str | None) -> None:
        if key is not None:
            panels = "" if SHAPES[key].fixed else " panels 4"
            then(f"{SHAPES[key].name} span 12 height 3{panels} load 10")

    choices = [OneOption(key, shape.name) for key, shape in SHAPES.items()]
    asked = "It takes the place of what is there; undo brings that back."
    app.push_screen(Choose("Common shapes", asked, choices), picked)
