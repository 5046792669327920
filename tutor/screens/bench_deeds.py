"""What does each deed on the bar of one's own truss do?"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal, Protocol

from tutor.drafting import DraftAnswer, Entry, soundness_of
from tutor.drafting.words import exact
from tutor.model import Problem
from tutor.notation import Exact
from tutor.screens import at_joint, bench_files
from tutor.screens.bench_help import bench_help
from tutor.screens.dialogs.told import Told
from tutor.text import lowered

UNFINISHED = "It cannot be worked yet: {fault}"
NO_JOINT = "There is no joint yet: type one, like A 0 0, or click on the grid."
NO_STEP = "Read {text}: a grid wants its step, like grid 0.5, or grid off."


@dataclass(frozen=True)
class Drawn:
    """What is to be done with the truss: walked through, or a homework on it checked."""

    deed: Literal["walk", "check"]
    problem: Problem


class DeedsBench(bench_files.FilesBench, Protocol):
    """What a deed needs of the sheet."""

    chosen: str | None
    gridded: bool
    step: Fraction | None
    use: Callable[[Drawn], object]

    def take(self, *entries: Entry) -> None: ...
    def answered(self, answer: DraftAnswer) -> None: ...
    def show(self) -> None: ...
    def next_view(self) -> None: ...
    def leave_in_line(self, text: str) -> None: ...
    def dismiss(self, result: None = None) -> object: ...


def set_grid(bench: DeedsBench, text: str) -> bool:
    """The grid on or off, or with this step; False, after saying why, where it is none."""
    if text.lower() in ("on", "off"):
        bench.gridded = text.lower() == "on"
    else:
        size = exact(text)
        if not isinstance(size, Exact) or size.fraction is None or size.fraction <= 0:
            bench.say(NO_STEP.format(text=text[:30]))
            return False
        bench.step, bench.gridded = size.fraction, True
    bench.say("The grid is on." if bench.gridded else "The grid is off.")
    bench.show()
    return True


def at(bench: DeedsBench) -> None:
    """Hold, load or drop the joint chosen; where none is, ask which."""
    problem = bench.board.problem
    if not problem.joints:
        bench.say(NO_JOINT)
    elif bench.chosen is not None:
        at_joint.ask_deed(bench.app, problem, bench.chosen, bench.take)
    else:
        at_joint.ask_joint(
            bench.app,
            problem,
            lambda joint: at_joint.ask_deed(bench.app, problem, joint, bench.take),
        )


def shape(bench: DeedsBench) -> None:
    """Draw a common shape, and leave its line to be changed."""

    def chosen(text: str) -> None:
        bench.answered(bench.board.type(text))
        bench.leave_in_line(text)

    at_joint.ask_shape(bench.app, chosen)


def use(bench: DeedsBench, deed: Literal["walk", "check"]) -> None:
    """Hand the truss on, where it can be worked; else say what keeps it from that."""
    problem = bench.board.problem
    stands = soundness_of(problem)
    if stands.sound:
        bench.use(Drawn(deed, problem))
        return
    fault = next((fault for fault in stands.faults if not fault.warning), None)
    why = stands.how or stands.count if fault is None else f"{fault.message} {fault.cure}"
    bench.say(UNFINISHED.format(fault=lowered(why)))


DO: Mapping[str, Callable[[DeedsBench], object]] = {
    "at": at,
    "shape": shape,
    "undo": lambda bench: bench.answered(bench.board.kept_after(bench.board.draft.undo())),
    "redo": lambda bench: bench.answered(bench.board.kept_after(bench.board.draft.redo())),
    "grid": lambda bench: set_grid(bench, "off" if bench.gridded else "on"),
    "list": lambda bench: bench.next_view(),
    "open": bench_files.ask_open,
    "save": bench_files.ask_save,
    "walk": lambda bench: use(bench, "walk"),
    "check": lambda bench: use(bench, "check"),
    "help": lambda bench: bench.app.push_screen(Told("Your own truss", bench_help())),
    "leave": lambda bench: bench.dismiss(None),
}
TYPED: Mapping[str, Callable[[DeedsBench, str], bool]] = {
    "grid": set_grid,
    "open": bench_files.open_named,
    "save": bench_files.save,
}
"""What may be typed with something behind it, instead of a statement; save also alone."""
