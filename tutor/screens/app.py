"""How do the screens hang together? The app wires them, and knows no statics.

The first frame is the bare list of problems. Reading the sets, and numpy and sympy with the lesson,
come after it, beside the screen.
"""

from __future__ import annotations

import gc
import os
import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any, ClassVar

from rich.console import RenderableType
from textual import events
from textual._compositor import CompositorUpdate
from textual.app import App
from textual.binding import Binding, BindingType
from textual.filter import LineFilter
from textual.screen import Screen

from tutor.records.keep import Keep
from tutor.records.settings import GIVEN, Settings, ThisTime, read_settings, write_settings
from tutor.screens.filters import AsciiOnly, Harmless, Uncoloured
from tutor.screens.first import FirstScreen
from tutor.screens.in_turn import MOVING, InTurn
from tutor.screens.looks import Looks, looks_for
from tutor.screens.painting import Painter
from tutor.screens.signals import leave_on_signals
from tutor.screens.terminal import driver
from tutor.screens.themes import THEMES, take_theme

if TYPE_CHECKING:
    from tutor.progress.guide import Guide
    from tutor.screens.entry import Shelf
    from tutor.screens.remembering import Glimpse
    from tutor.screens.sheet import SheetScreen
    from tutor.screens.walk import WalkScreen
    from tutor.screens.widgets.figure_pane import FigurePane
    from tutor.session import Session

STOPPED = (
    "pinjoint has stopped: the fault is in the program. Everything you did until then is kept; start "
    "it again to go on."
)
NO_GUIDE: Guide | None = None
"""What the kept lessons come to, before that is known."""
HOW_TO_LEAVE = "To leave: escape, then q. Everything done is kept."


class TutorApp(App[int]):
    """The tutor on the screen."""

    CSS_PATH = "app.tcss"
    TITLE = "pinjoint"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("ctrl+q", "leave_all", show=False, priority=True, id="app.leave"),
        Binding("ctrl+c", "say_how_to_leave", show=False, id="app.interrupt"),
    ]

    first_rows: Shelf | None = None
    """The rows that the list begins with, whose files were read from `read_at` (nanoseconds) on."""
    read_at = 0
    remembered: Glimpse | None = None
    """What the list began with, where it was remembered."""

    def __init__(
        self,
        paths: Sequence[Path],
        *,
        keep: Keep,
        settings: Settings | None = None,
        utf8: bool = True,
        deed: str = "",
        drawing: Path | None = None,
        glyphs: str | None = None,
        given: ThisTime = GIVEN,
    ) -> None:
        super().__init__(driver_class=driver())
        self.deed, self.drawing = deed, drawing
        self.glyphs = glyphs
        self.given, self.guide = given, NO_GUIDE
        self.paths = tuple(paths)
        self.keep = keep
        self.uncoloured = bool(os.environ.get("NO_COLOR"))
        self.filters: list[LineFilter] = [Harmless()]
        self.filters += [Uncoloured()] if self.uncoloured else []
        self.filters += [] if utf8 else [AsciiOnly()]
        self.utf8 = utf8
        self.notice = ""
        self.told: set[str] = set()
        if settings is None:
            settings, self.notice = read_settings(keep.folder)
        self.settings = settings
        self.first = FirstScreen()
        self.typed = InTurn(self, super().on_event)
        self.painter = Painter()
        self.sheet: SheetScreen
        self.shelf: Shelf | None = None
        self.session: Session | None = None
        self.set_class(self.uncoloured, "-uncoloured")
        take_theme(self, settings.theme or "")

    @property
    def looks(self) -> Looks:
        """How pictures and marks look here."""
        return looks_for(self.glyphs or self.settings.glyphs, self.utf8)

    @property
    def guided(self) -> bool:
        """Whether the student is told what comes next and what they can do."""
        return self.settings.guide and not self.given.no_guide

    def get_theme_variable_defaults(self) -> dict[str, str]:
        return dict(THEMES["dark"].variables)

    def get_line_filters(self) -> Sequence[LineFilter]:
        """What every line goes through on its way out; colours are all our own, none is converted."""
        return self.filters

    def get_default_screen(self) -> Screen[None]:
        """The list as it is remembered; where nothing is, or something else comes first, one row."""
        if not self.deed and (self.settings.glyphs or self.glyphs or not self.utf8):
            from tutor.screens.remembering import remembered_sheet  # not where it is not needed

            return remembered_sheet(self) or self.first
        return self.first

    async def on_event(self, event: events.Event) -> None:
        if isinstance(event, events.Key | events.Paste) and not event.is_forwarded:
            await self.typed.take(event)
            return
        if isinstance(event, events.Resize):
            self.painter.forget()
        await super().on_event(event)

    def _display(self, screen: Screen[Any], renderable: RenderableType | None) -> None:
        """Write a frame, as the library does, but only what of it is new."""
        held_back = self._batch_count or self.is_headless or not self._running
        if isinstance(renderable, CompositorUpdate) and not held_back:
            renderable = self.painter.changes(renderable, self.size, self.console)
        super()._display(screen, renderable)

    def paint_anew(self) -> None:
        """Write the whole screen once more."""
        self.painter.forget()
        self.screen.refresh(layout=True)

    def on_mount(self) -> None:
        leave_on_signals(self.exit)
        self.app_resume_signal.subscribe(self, lambda _: self.painter.forget())
        self.call_after_refresh(self.read_problems)

    def read_problems(self) -> None:
        """Read the sets beside the screen; what was put off until the first frame may go on."""
        gc.enable()
        from tutor.screens.filling import read_first  # after the first frame, for start-up time

        read_first(self)

    def settle(self, card: bool) -> None:
        """The list is there: with `card` ask for the glyphs; open a lone problem."""
        if self.notice:
            self.sheet.say(self.notice)
        if card:
            self.typed.let_go(forget=True)
            self.choose_card(self._open_lone)
        else:
            self._open_lone()

    def _open_lone(self) -> None:
        """Open what was asked for at the start: a deed of the list, or a lone problem."""
        lone = None if self.shelf is None else self.shelf.lone
        if self.deed == "own" or (self.deed and lone is not None):
            from tutor.screens.own import open_own  # after the first frame, for start-up time

            open_own(self, self.deed, lone, self.drawing)
        elif lone is not None:
            self._open(lone)
            return
        self.typed.let_go()

    def look_where_left(self) -> None:
        """Say on the list where each problem was left, once that is known."""
        from tutor.screens.filling import look_where_left

        look_where_left(self)

    def choose_card(self, then: Callable[[], None] | None = None) -> None:
        """Ask which pictures look right, and keep the answer."""
        from tutor.screens.card import choose  # after the first frame, for start-up time

        choose(self, then)

    def change(self, settings: Settings) -> None:
        """Take and keep new choices; where they cannot be kept, say so."""
        self.settings = settings
        notice = write_settings(self.keep.folder, settings)
        if notice:
            self.sheet.say(notice)

    def change_light(self) -> None:
        """From dark to light and back, for good."""
        self.theme = "light" if self.theme == "dark" else "dark"
        self.change(self.settings._replace(theme=self.theme))

    def _open(self, entry: object) -> None:
        from tutor.screens.entry import ProblemRow
        from tutor.screens.opening import open_entry  # after the first frame, for start-up time

        if isinstance(entry, ProblemRow):
            open_entry(self, entry)

    def on_sheet_screen_chosen(self, message: SheetScreen.Chosen) -> None:
        self._open(message.entry)

    def on_sheet_screen_waits(self, message: SheetScreen.Waits) -> None:
        self.typed.hold(MOVING) if message.on else self.typed.let_go(forget=True)

    def on_sheet_screen_wanted(self, message: SheetScreen.Wanted) -> None:
        if message.deed == "light":
            self.change_light()
        elif message.deed == "card":
            self.choose_card()
        elif message.deed in ("own", "homework"):
            from tutor.screens.own import open_own  # after the first frame, for start-up time

            open_own(self, message.deed, message.entry)
        elif message.deed == "skills":
            from tutor.screens.guiding import show_skills

            show_skills(self)
        elif message.deed == "leave":
            self.exit(0)
        else:
            self.show_help()

    def show_help(self) -> None:
        """What can be typed, and all keys."""
        from tutor.screens.deeds import SHEET, WALK
        from tutor.screens.dialogs.help import help_text
        from tutor.screens.dialogs.told import Told  # after the first frame, for start-up time

        self.push_screen(Told("Help", help_text((*SHEET, *WALK))))

    def on_figure_pane_enlarged(self, message: FigurePane.Enlarged) -> None:
        from tutor.screens.dialogs.large import Large  # after the first frame, for start-up time

        self.push_screen(Large([message.picture], 0, self.looks.glyphs))

    def on_walk_screen_ready(self) -> None:
        self.typed.let_go()

    def on_walk_screen_step_done(self, message: WalkScreen.StepDone) -> None:
        self.change(self.settings.done_right(message.step))

    def on_walk_screen_practised(self, message: WalkScreen.Practised) -> None:
        from tutor.screens.opening import practise  # after the first frame, for start-up time

        practise(self, message.problem, self.session)

    def on_walk_screen_wanted(self, message: WalkScreen.Wanted) -> None:
        if message.what == "guide":
            from tutor.screens.guiding import change_guide

            change_guide(self, message.on)
        elif self.settings.remarks != message.on:
            self.change_remarks()

    def change_remarks(self) -> None:
        """Make remarks on an easier way beside right lines, or no longer; for good."""
        on = not self.settings.remarks
        self.change(self.settings._replace(remarks=on))
        if self.session is not None:
            self.session.remarks = on
        self.notify(f"Remarks on an easier way are {'on' if on else 'off'}.", markup=False)

    def action_command_palette(self) -> None:
        """Open the palette: the deeds of the screen, the colours, and the way out."""
        from tutor.screens.palette import open_palette  # only where it is opened

        open_palette(self)

    def _fatal_error(self) -> None:
        """A fault of ours ends the app without a traceback, whose values may be answers."""
        from tutor.session import LOG, note_fault  # only in this case

        fault = sys.exc_info()[1]
        if fault is not None:
            note_fault(self.keep.folder / LOG, fault)
        self.panic(STOPPED)

    def action_leave_all(self) -> None:
        self.exit(0)

    def action_say_how_to_leave(self) -> None:
        self.notify(HOW_TO_LEAVE, markup=False)
