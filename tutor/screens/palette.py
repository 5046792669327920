"""What does the palette offer? The deeds of the screen, the colours, and the way out."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial
from typing import TYPE_CHECKING

from textual.app import SystemCommand
from textual.screen import Screen

from tutor.screens.deeds import Deed
from tutor.screens.guiding import change_guide

if TYPE_CHECKING:
    from tutor.screens.app import TutorApp


def commands(app: TutorApp, screen: Screen[object]) -> Iterator[SystemCommand]:
    """The commands there are on this screen."""
    deeds: Sequence[Deed] = getattr(screen, "deeds", tuple)()
    for deed in deeds:
        do = partial(getattr(screen, "action_deed"), deed.id)  # noqa: B009 - screens with deeds
        yield SystemCommand(deed.label.capitalize(), deed.does, do)
    yield SystemCommand("Light or dark colours", "Change the colours", app.change_light)
    remarks = "Leave out" if app.settings.remarks else "Make"
    yield SystemCommand(
        f"{remarks} remarks on an easier way", "Beside right lines", app.change_remarks
    )
    guide = "Leave out" if app.guided else "Tell"
    yield SystemCommand(
        f"{guide} what comes next and what you can do",
        "On the list, on opening a problem and after its table",
        partial(change_guide, app),
    )
    yield SystemCommand("Paint anew", "Where the terminal shows something else", app.paint_anew)
    yield SystemCommand("End the program", "Everything done is kept", app.action_leave_all)
