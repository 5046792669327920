"""How do the problems come onto the list? The first ones at once, the rest while one looks at them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from tutor.screens.background import beside

if TYPE_CHECKING:
    from tutor.progress.guide import Guide
    from tutor.screens.app import TutorApp
    from tutor.screens.shelf import Shelf

AT_FIRST = 100
"""So many problems are on the list before the rest is read."""
NOT_READ = "The problems could not be read: the fault is in the program."


def read_first(app: TutorApp) -> None:
    """Read the sets beside the screen, a first part of them where they are large, and show them."""

    async def done(shelf: Shelf) -> None:
        from tutor.screens.sheet import SheetScreen  # after the first frame, for start-up time

        behind = shelf.lone is not None
        app.shelf, app.sheet = shelf, SheetScreen(shelf.groups, app.looks, behind=behind)
        await app.push_screen(app.sheet)
        app.settle()
        app.call_after_refresh(read_all if shelf.unread else look_where_left, app)

    def read() -> Shelf:
        from tutor.screens.shelf import read_shelf  # after the first frame, for start-up time

        return read_shelf(app.paths, app.settings.student, AT_FIRST)

    def refused(fault: object) -> None:
        app.typed.let_go(forget=True)
        app.first.say(NOT_READ)

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

    def look() -> Guide:
        import sympy  # noqa: F401 - here, while nobody waits for it

        from tutor.screens.shelf import guide_on

        return guide_on(shelf, app.keep)

    def found(guide: Guide) -> None:
        from tutor.screens.shelf import unreadable

        app.guide = guide
        app.sheet.show_guide(guide, app.guided)
        notice = unreadable(guide.notices)
        if notice and notice not in app.told:
            app.told.add(notice)
            app.sheet.say(notice)

    beside(app, look, found, lambda fault: app.sheet.read())
