"""How is the tutor opened on the screen, and with which exit status is it left?"""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from tutor.records.keep import Keep
from tutor.records.settings import GIVEN, Settings, ThisTime, read_settings
from tutor.screens.app import TutorApp
from tutor.screens.looks import GLYPHS, speaks_utf8


def run(
    paths: Sequence[Path],
    *,
    keep: Path | None = None,
    mouse: bool = True,
    glyphs: str | None = None,
    settings: Settings | None = None,
    deed: str = "",
    drawing: Path | None = None,
    given: ThisTime = GIVEN,
) -> int:
    """Open the tutor on the problem files and folders at `paths`; returns the exit status.

    `deed` is what it opens with: "own" for one's own truss, "homework" for a homework on a lone
    problem, "" for the list or the lone problem itself. `drawing` is the problem file to draw on.

    Lessons and choices are kept in `keep`, or in the user's data folder. `glyphs` is used this time
    instead of the choice that was kept; `settings` instead of all of them. `given` is how the
    student is led. The status is 0 after leaving, 1 after a fault, 128 and the signal's number when
    the system ended it.
    """
    place = Keep(keep)
    notice = ""
    if settings is None:
        settings, notice = read_settings(place.folder)
    app = TutorApp(
        paths,
        keep=place,
        settings=settings,
        utf8=speaks_utf8(),
        deed=deed,
        drawing=drawing,
        glyphs=glyphs if glyphs in GLYPHS else None,
        given=given,
    )
    app.notice = notice
    status = app.run(mouse=mouse)
    _let_go(app)
    return (app.return_code or 0) if status is None else status


def _let_go(app: TutorApp) -> None:
    """Close the lesson that was open, and say what of it is kept."""
    if app.session is not None:
        from tutor.screens.opening import kept_words  # only where a lesson was open

        print(kept_words(app.session))
        app.session.close()
