"""How do the problems come onto the list? The first ones at once, the rest while one looks at them.

What is remembered of the list is there before any of them: see `remembering.py`.
"""

from __future__ import annotations

import time
from collections.abc import Mapping
from typing import TYPE_CHECKING

from tutor.records.keep import SUFFIX
from tutor.records.listed import Stamp, stamps_in
from tutor.screens.background import beside
from tutor.screens.remembering import remember

if TYPE_CHECKING:
    from tutor.progress.guide import Guide
    from tutor.screens.app import TutorApp
    from tutor.screens.entry import Shelf

AT_FIRST = 100
"""So many problems are on the list before the rest is read."""
NOT_READ = "The problems could not be read: the fault is in the program."


def read_first(app: TutorApp) -> None:
    """Read the sets beside the screen, a first part of them where they are large, and show them."""
    started = time.time_ns()

    async def done(shelf: Shelf) -> None:
        card = app.settings.glyphs is None and app.glyphs is None and app.utf8
        app.shelf, app.first_rows, app.read_at = shelf, shelf, started
        if app.remembered is not None:
            app.sheet.fill(shelf.groups)
        else:
            from tutor.screens.sheet import SheetScreen  # after the first frame, for start-up time

            behind = shelf.lone is not None or card
            app.sheet = SheetScreen(shelf.groups, app.looks, behind=behind)
            await app.push_screen(app.sheet)
        app.settle(card)
        app.call_after_refresh(read_all if shelf.unread else look_where_left, app)

    def read() -> Shelf:
        from tutor.screens.shelf import read_shelf  # after the first frame, for start-up time

        return read_shelf(app.paths, app.settings.student, AT_FIRST)

    def refused(fault: object) -> None:
        app.typed.let_go(forget=True)
        (app.first if app.remembered is None else app.sheet).say(NOT_READ)

    beside(app, read, done, refused)


def read_all(app: TutorApp) -> None:
    """Read all of the sets while their first problems are on the list."""

    def done(shelf: Shelf) -> None:
        app.shelf = shelf
        app.sheet.grow(shelf.groups)
        look_where_left(app)

    def read() -> Shelf:
        from tutor.screens.shelf import read_shelf  # after the first frame, for start-up time

        return read_shelf(app.paths, app.settings.student)

    beside(app, read, done, lambda fault: app.sheet.say(NOT_READ))


def look_where_left(app: TutorApp) -> None:
    """Say on the list where each problem was left, once that is known."""
    shelf = app.shelf
    if shelf is None:
        return

    def look() -> tuple[Guide, Mapping[str, Stamp]]:
        import sympy  # noqa: F401 - here, while nobody waits for it

        from tutor.screens.shelf import guide_on

        stamps = stamps_in(app.keep.folder, SUFFIX)
        return guide_on(shelf, app.keep), stamps

    def found(made: tuple[Guide, Mapping[str, Stamp]]) -> None:
        from tutor.screens.shelf import unreadable

        guide, stamps = made
        app.guide = guide
        app.sheet.show_guide(guide, app.guided)
        remember(app, guide, stamps)
        notice = unreadable(guide.notices)
        if notice and notice not in app.told:
            app.told.add(notice)
            app.sheet.say(notice)

    beside(app, look, found, lambda fault: app.sheet.read())
