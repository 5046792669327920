"""How does the student see what they can do, and switch off being told so?"""

from __future__ import annotations

from typing import TYPE_CHECKING

from tutor.progress.attained import Attained
from tutor.progress.page import TITLE, page_lines
from tutor.screens.dialogs.told import Told

if TYPE_CHECKING:
    from tutor.screens.app import TutorApp

NOT_YET = "What you did is still being gone through; try again in a moment."


def show_skills(app: TutorApp) -> None:
    """The page that tells the student what they can do, over the list."""
    if app.guide is None:
        app.sheet.say(NOT_YET)
        return
    attained: Attained = app.guide.attained
    _, *lines = page_lines(attained)
    app.push_screen(Told(TITLE, "\n".join(lines)))


def change_guide(app: TutorApp, on: bool | None = None) -> None:
    """Tell the student what comes next and what they can do from now on, or no longer; for good."""
    on = not app.guided if on is None else on
    app.given = app.given._replace(no_guide=False)
    app.change(app.settings._replace(guide=on))
    if app.guide is not None:
        app.sheet.show_guide(app.guide, on)
    app.notify(
        "What comes next, what may stand first and what you can do "
        f"{'are told from now on' if on else 'are no longer told'}.",
        markup=False,
    )
