"""How does a test work the screens as a student does: by keys alone?

`opened` starts the app on problem files, waits until it has read them and opens the first problem;
`press_event` presses what a student presses for one event of a lesson.
"""

from __future__ import annotations

import contextlib
from collections.abc import AsyncIterator, Mapping
from pathlib import Path
from typing import Any

from textual.pilot import Pilot
from textual.screen import Screen
from textual.widgets import Input

from tutor.lesson import Lesson
from tutor.model import Problem, load_problem
from tutor.records import Keep, Settings
from tutor.screens.app import TutorApp
from tutor.screens.closing import ClosingScreen
from tutor.screens.sheet import SheetScreen
from tutor.screens.walk import WalkScreen
from tutor.screens.widgets.action_bar import ActionBar
from tutor.screens.widgets.choices import Choices
from tutor.screens.widgets.choices_by_line import ChoicesByLine
from tutor.screens.widgets.line_input import LineInput

SETS = Path(__file__).resolve().parents[2] / "problems"
FIRST = SETS / "first-steps"
ARROWS = {"left": (-1, 0), "right": (1, 0), "up": (0, 1), "down": (0, -1)}
KEY_NAMES = {" ": "space"}


def make_app(keep: Path, *paths: Path, **given: Any) -> TutorApp:
    """An app that keeps its lessons in `keep`; the test card is answered already."""
    settings = given.pop("settings", Settings(glyphs="braille"))
    return TutorApp(paths or (SETS,), keep=Keep(keep), settings=settings, **given)


async def settle(pilot: Pilot[int], until: Any) -> None:
    """Wait until something holds on the screen; AssertionError if it never does."""
    for _ in range(1500):
        await pilot.pause()
        if until():
            return
        await pilot.pause(0.02)
    raise AssertionError("this never happened on the screen")


@contextlib.asynccontextmanager
async def opened(
    keep: Path, *paths: Path, size: tuple[int, int] = (80, 24), **given: Any
) -> AsyncIterator[Pilot[int]]:
    """A running app on these paths, its list read."""
    app = make_app(keep, *paths, **given)
    async with app.run_test(size=size) as pilot:
        await settle(pilot, lambda: app.shelf is not None and app.screen is not app.first)
        await settle(pilot, lambda: laid_out(app.screen))
        yield pilot


@contextlib.asynccontextmanager
async def walking(
    keep: Path, problem: str, size: tuple[int, int] = (80, 24), **given: Any
) -> AsyncIterator[Pilot[int]]:
    """A running app in the walk of one shipped problem."""
    async with opened(keep, FIRST / f"{problem}.toml", size=size, **given) as pilot:
        await settle(pilot, lambda: shows(pilot, WalkScreen))
        yield pilot


def shows(pilot: Pilot[int], kind: type[Screen[Any]]) -> bool:
    """Whether a screen of this kind is there with all that is on it at first."""
    screen = pilot.app.screen
    return isinstance(screen, kind) and screen.is_mounted and laid_out(screen)


def laid_out(screen: Screen[Any]) -> bool:
    """Whether something of it has its place on the screen, so that it is shown with the next frame."""
    return any(
        region and widget is not screen
        for widget, (region, *_) in screen._compositor.visible_widgets.items()
    )


def lesson_of(pilot: Pilot[int]) -> Lesson:
    """The lesson on the screen."""
    session = pilot.app.session  # type: ignore[attr-defined]
    assert session is not None
    return session.lesson


def walk_of(pilot: Pilot[int]) -> WalkScreen:
    """The walk, on top or below what lies over it."""
    return next(s for s in reversed(pilot.app.screen_stack) if isinstance(s, WalkScreen))


def line_of(pilot: Pilot[int]) -> LineInput:
    """The line being typed."""
    return walk_of(pilot).query_one(LineInput)


async def press(pilot: Pilot[int], *keys: str) -> None:
    """Press keys as fast as a quick hand does, and wait once; for keys that all go to one widget."""
    for key in keys:
        pilot.app.simulate_key(key)
    await pilot.pause()
    await settle(pilot, lambda: not pilot.app.typed.busy)  # type: ignore[attr-defined]


async def type_text(pilot: Pilot[int], text: str) -> None:
    """Type a text, key by key, into what has the focus."""
    await pilot.press(*(KEY_NAMES.get(char, char) for char in text))


async def enter_line(pilot: Pilot[int], text: str) -> None:
    """Empty the line, type this one and enter it. Its characters go in as a paste would, since
    thousands of single keys would only test the library's input."""
    line = line_of(pilot)
    line.focus()
    line.clear()
    line.insert_text_at_cursor(text)
    await press(pilot, "enter")


async def deed(pilot: Pilot[int], letter: str) -> None:
    """One deed by its letter, from wherever the focus is."""
    typing = isinstance(pilot.app.focused, Input) or isinstance(
        pilot.app.screen, WalkScreen | SheetScreen
    )
    way = ["escape"] if typing and not isinstance(pilot.app.focused, ActionBar) else []
    await pilot.press(*way, {"?": "question_mark"}.get(letter, letter))


async def pick(pilot: Pilot[int], *keys: str) -> None:
    """Pick options of the choices on the screen, by number, or by arrows where there is none."""
    choices = pilot.app.screen.query_one(Choices)
    choices.focus()
    order = [choice.key for choice in choices.choices]
    turned = set(keys) ^ choices.marked if choices.several else set(keys)
    presses: list[str] = []
    for index in sorted(map(order.index, turned)):
        by_number = index < 9
        presses += [str(index + 1)] if by_number else ["home", *["right"] * index, "space"]
    entered = choices.several or (isinstance(choices, ChoicesByLine) and not choices.at_once)
    await pilot.pause()
    await press(pilot, *presses, *(["enter"] if entered else []))


async def press_event(pilot: Pilot[int], kind: str, data: Mapping[str, Any]) -> None:
    """Press what a student presses to do this event, at the question on the screen."""
    match kind:
        case "reasons" | "halves":
            await pick(pilot, *data["chosen"])
        case "support":
            await pick(pilot, *data["acts"])
        case "count":
            for key in ("m", "r", "2j"):
                field = next(i for i in walk_of(pilot).query(Input) if i.name == key)
                field.focus()
                await pilot.press("end", "ctrl+u", *str(data[key]))
            await pilot.press("enter")
        case "sense":
            await press(pilot, arrow_key(pilot, data), "enter")
        case "turning":
            await pick(pilot, data["positive"])
        case "choose":
            await deed(pilot, "e")
            await pick(pilot, data["about"])
        case "type" | "shares":
            await enter_line(pilot, data["text"])
        case "joint" if data["joint"] is None:
            await press(pilot, "ctrl+n")
        case "joint":
            await pick(pilot, data["joint"])
        case "zero":
            await deed(pilot, "z")
            await pick(pilot, data["member"])
            await pick(pilot, data["rule"])
        case "assume":
            await deed(pilot, "a")
            await pick(pilot, f"{data['member']} {data['sense']}")
        case "hint":
            await press(pilot, "ctrl+t")
        case "keep":
            await deed(pilot, "y")
        case "undo":
            await deed(pilot, "u")
        case _:
            raise AssertionError(kind)


def arrow_key(pilot: Pilot[int], data: Mapping[str, Any]) -> str:
    """The arrow key nearest to the way this arrow is drawn."""
    from tutor.figure.senses import drawn

    problem: Problem = lesson_of(pilot).problem
    x, y = drawn(problem.reaction[data["unknown"]], data["sense"])
    return max(ARROWS, key=lambda key: ARROWS[key][0] * x + ARROWS[key][1] * y)


def finished(pilot: Pilot[int]) -> bool:
    """Whether the table is on the screen."""
    return isinstance(pilot.app.screen, ClosingScreen)


def load(problem: str) -> Problem:
    """One of the shipped problems."""
    return load_problem(FIRST / f"{problem}.toml")


def seen(pilot: Pilot[int]) -> str:
    """All characters on the screen, a line a row."""
    app = pilot.app
    width, height = app.size
    strips = app.screen._compositor.render_strips()
    return "\n".join(strip.text[:width] for strip in strips[:height])
