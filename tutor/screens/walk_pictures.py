"""Which pictures does the walk show, and where?"""

from __future__ import annotations

from typing import TYPE_CHECKING

from tutor.figure import Figure
from tutor.screens.dialogs.large import Large
from tutor.screens.pictures import pictures
from tutor.screens.widgets.figure_pane import FigurePane, titled
from tutor.screens.widgets.lines_pane import LinesPane

if TYPE_CHECKING:
    from tutor.screens.walk import WalkScreen

TWO = 116


def show(walk: WalkScreen) -> None:
    """What belongs to the question; at a joint, in a wide window, the truss beside it.

    A part has as many forces and dimensions as the truss: it gets the room of both.
    """
    state = walk.session.lesson.state
    found = pictures(state, walk.ask, walk.preview)
    two = len(found) > 1 and walk.size.width >= TWO and not state.part
    beside = walk.query_one("#beside", FigurePane)
    beside.display = two
    walk.set_class(two, "-two")
    title, figure = found[0] if two else titled(found, walk.place)
    walk.query_one("#figure", FigurePane).show(title, figure, walk.looks.glyphs)
    if two:
        beside.show(*found[1], walk.looks.glyphs)


def show_next(walk: WalkScreen) -> None:
    """The next picture; in a narrow window, the picture instead of the lines and back."""
    found = pictures(walk.session.lesson.state, walk.ask)
    if walk.has_class("-narrow") and not walk.has_class("-figure"):
        walk.add_class("-figure")
        walk.place = 0
    elif walk.has_class("-narrow") and walk.place + 1 >= len(found):
        walk.remove_class("-figure")
    else:
        walk.place += 1
    show(walk)


def show_large(walk: WalkScreen) -> None:
    """The picture with the whole window to itself, and from it the others."""
    found = pictures(walk.session.lesson.state, walk.ask, walk.preview)

    def left(place: int | None) -> None:
        if place is not None and not walk.has_class("-two"):
            walk.place = place
        show(walk)
        walk.to_answer()

    walk.app.push_screen(Large(found, walk.place, walk.looks.glyphs), left)


def show_other(walk: WalkScreen, title: str, figure: Figure) -> None:
    """Another picture than those of the question, until something is done."""
    walk.query_one("#figure", FigurePane).show(title, figure, walk.looks.glyphs)
    if walk.has_class("-narrow"):
        walk.add_class("-figure")


def show_lines(walk: WalkScreen) -> None:
    """The pane of lines in sight, and its end."""
    walk.remove_class("-figure")
    walk.query_one(LinesPane).scroll_end(animate=False)
    walk.tell("The lines and the values found stand in their pane.")
