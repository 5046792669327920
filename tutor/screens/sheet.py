"""Which problem? All sets with where each problem was left, and broken files with their lines."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, ClassVar

from textual import events
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal
from textual.content import Content
from textual.geometry import Size
from textual.message import Message
from textual.widgets import OptionList, Static

from tutor.screens.bound import bindings
from tutor.screens.clean import one_line
from tutor.screens.deeds import SHEET, Deed
from tutor.screens.entry import Group, ProblemRow
from tutor.screens.first import TITLE, OpeningScreen
from tutor.screens.going_on import go_on, row_to_go_on
from tutor.screens.looks import Looks
from tutor.screens.marks import in_marks
from tutor.screens.rows import counted, rows_of
from tutor.screens.seeking import ON_THE_BAR, said_of
from tutor.screens.small import is_small, offer
from tutor.screens.widgets.action_bar import ActionBar, DeedAsked
from tutor.screens.widgets.detail_pane import DetailPane
from tutor.screens.widgets.problem_list import ProblemList
from tutor.text import visible

if TYPE_CHECKING:
    from tutor.progress.guide import Guide
    from tutor.screens.remembering import Glimpse

LEAD = "Arrows choose (left, right: a set), letters find, space reads on, enter opens."
READING = "What you have kept is being read…"
NOT_YET = "“{title}” is being read; it opens then."
CANNOT = "This file cannot be worked yet: what to mend is beside it, with its lines."
WIDE = 116
WITH_ROW = ("own", "homework")
"""The deeds that begin with the problem at hand."""


class SheetScreen(OpeningScreen):
    """The list of problems; it posts what was chosen and shows what it is handed."""

    CSS_PATH = "sheet.tcss"
    BINDINGS: ClassVar[list[BindingType]] = [
        *bindings(SHEET, "sheet", letters=False),
        Binding("question_mark", "deed('help')", show=False, id="sheet.question"),
    ]

    class Chosen(Message):
        """A problem was chosen to be worked."""

        def __init__(self, entry: ProblemRow) -> None:
            super().__init__()
            self.entry = entry

    class Waits(Message):
        """What was asked of a row waits until its file was read, or no longer does."""

        def __init__(self, on: bool) -> None:
            super().__init__()
            self.on = on

    class Wanted(Message):
        """A deed of the whole program was asked for: its id, and the row at hand."""

        def __init__(self, deed: str, entry: ProblemRow | None = None) -> None:
            super().__init__()
            self.deed, self.entry = deed, entry

    def __init__(
        self,
        groups: Sequence[Group],
        looks: Looks,
        *,
        behind: bool = False,
        glimpse: Glimpse | None = None,
    ) -> None:
        """With `behind` nothing is painted of the list until what opens over it is left; with a
        `glimpse` it begins with what is remembered of it."""
        super().__init__()
        self.set_class(behind, "-behind")
        self.covered = self.small = False
        self.looks = looks
        self.glimpse = glimpse
        self.groups = tuple(groups)
        self.left: Mapping[str, str] = {}
        self.guide: Guide | None = None
        self.last = ""
        self.stood_at = ""
        self.waiting: tuple[ProblemRow, str] | None = None
        """A row whose file is still being read, and what is to be done with it then: a deed, or "" for
        opening it."""
        self.said = READING

    def compose(self) -> ComposeResult:
        self._fit(self.app.size)
        yield Static(Content(TITLE), id="sheet-title")
        yield Static(Content(""), id="sheet-skills")
        with Horizontal(id="sheet-middle"):
            yield ProblemList(id="problems", markup=False)
            yield DetailPane(id="beside-list")
        yield Static(Content(READING), id="sheet-said")
        yield ActionBar(id="actions")

    def on_mount(self) -> None:
        bar = self.query_one(ActionBar)
        bar.offer(SHEET, True)
        bar.list_above = self.problems
        if self.glimpse is None:
            self.show({})
        else:  # until the list has been read, it is as it was when it was last seen
            self.last, self.left = self.glimpse.last, self.glimpse.left
            self._show_skills(self.glimpse.glance)
            self._show_rows(self.glimpse.at)
        self.set_focus(self.problems)

    def show(self, left: Mapping[str, str]) -> None:
        """Show the sets; `left` says by problem where each was left. What is finished is passed by."""
        again, self.left = bool(self.entries), left
        self._show_rows()
        if again:
            go_on(self)
            self.call_after_refresh(self.problems.scroll_to_highlight)
        elif not any(self.entries):
            self.query_one(DetailPane).say(Content("There are no problems here."))

    def _show_rows(self, at: Path | None = None) -> None:
        """Show the sets as they are, and how many problems are finished."""
        self.problems.show_rows(rows_of(self.groups, self.left), at)
        title = counted(TITLE, self.entries, self.left)
        self.query_one("#sheet-title", Static).update(Content(title))

    @property
    def problems(self) -> ProblemList:
        """The list itself."""
        return self.query_one(ProblemList)

    @property
    def entries(self) -> tuple[ProblemRow | None, ...]:
        """What each row is of; None for headings."""
        return self.problems.entries

    def show_guide(self, guide: Guide, guided: bool) -> None:
        """Show where each problem was left and, where that is wanted, how the skills stand."""
        from tutor.progress.page import at_a_glance  # here: the list is shown before it is needed

        self.guide = guide if guided else None
        self._show_skills(at_a_glance(guide.attained) if guided else ())
        self.last = guide.last
        self.show(guide.places)
        self.read()

    def _show_skills(self, glance: Sequence[tuple[str, Sequence[str]]]) -> None:
        """How the skills stand, above the list."""
        skills = self.query_one("#sheet-skills", Static)
        skills.display = bool(glance)
        skills.update(Content(in_marks(glance, self.looks.ascii_only)))

    def read(self) -> None:
        """What is kept has been read, as far as it can be."""
        if self.said == READING:
            self.say(LEAD)

    def fill(self, groups: Sequence[Group]) -> None:
        """Show the sets as they were read, in place of what was remembered of them."""
        self.grow(groups)
        here = self.problems.at_hand
        if here is not None:
            self._show_entry(here)
        waiting, self.waiting = self.waiting, None
        if waiting is not None:
            self.say(READING)
            opens = here is not None and here.path == waiting[0].path
            if opens:
                self._do(waiting[1], here)
            if not opens or waiting[1] or here is None or here.problem is None:
                self.post_message(self.Waits(False))

    def grow(self, groups: Sequence[Group]) -> None:
        """Show other sets than before; the row that was at hand stays at hand."""
        self.groups = tuple(groups)
        self._show_rows()

    @property
    def row_to_go_on(self) -> int:
        """The row at hand when the list is opened."""
        return row_to_go_on(self.entries, self.last, self.left, self.guide)

    def say(self, text: str) -> None:
        """One sentence below the list."""
        self.said = text
        self.query_one("#sheet-said", Static).update(Content(visible(text)))

    def on_screen_suspend(self) -> None:
        self.covered = True

    def on_screen_resume(self) -> None:
        if self.covered:
            self.uncover()

    def uncover(self) -> None:
        """Paint the list, where that was put off."""
        if self.has_class("-behind"):
            self.remove_class("-behind")
            self.call_after_refresh(self.problems.focus)

    def on_option_list_option_highlighted(self, event: OptionList.OptionHighlighted) -> None:
        event.stop()
        entry = self.problems.entry(event.option_index)
        if self.waiting is not None and entry is not self.waiting[0]:
            self.waiting = None
            self.post_message(self.Waits(False))
            self.say(READING)
        if entry is not None:
            self._show_entry(entry)

    def _show_entry(self, entry: ProblemRow) -> None:
        """What there is to say of a row, and its picture where there is room."""
        drawn = self.app.size.width >= WIDE
        self.query_one(DetailPane).show(entry, self.looks.glyphs, drawn=drawn)

    def look(self, looks: Looks) -> None:
        """Draw with other characters from now on."""
        self.looks = looks
        entry = self.problems.at_hand
        if entry is not None:
            self._show_entry(entry)

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        event.stop()
        self._do("", self.problems.entry(event.option_index))

    def _do(self, deed: str, entry: ProblemRow | None) -> None:
        """Do a deed, or open the row at hand; what needs its file waits until that was read."""
        if entry is not None and entry.remembered and deed in ("", *WITH_ROW):
            self.waiting = (entry, deed)
            self.post_message(self.Waits(True))
            self.say(NOT_YET.format(title=one_line(entry.title)))
        elif deed:
            if deed in WITH_ROW:
                self.problems.put(None)
            self.post_message(self.Wanted(deed, entry))
        elif entry is not None and entry.problem is None:
            self.say(CANNOT)
        elif entry is not None:
            self.problems.put(None)
            self.post_message(self.Chosen(entry))

    def on_deed_asked(self, message: DeedAsked) -> None:
        message.stop()
        self.action_deed(message.deed)

    def deeds(self) -> tuple[Deed, ...]:
        """What can be done here."""
        return SHEET

    def action_deed(self, deed: str) -> None:
        self._do(deed, self.problems.at_hand)

    def action_bar(self) -> None:
        """From the list to the bar and back."""
        bar = self.query_one(ActionBar)
        on_the_bar = bar.has_focus
        (self.problems if on_the_bar else bar).focus()
        if self.said != READING:
            self.say(LEAD if on_the_bar else ON_THE_BAR)

    def on_descendant_focus(self) -> None:
        self.query_one(ActionBar).offer(SHEET, self.problems.has_focus)

    def on_problem_list_sought(self, message: ProblemList.Sought) -> None:
        """Say what was found."""
        message.stop()
        self.say(said_of(message.text, message.found) if message.text else LEAD)

    def on_problem_list_read_on(self, message: ProblemList.ReadOn) -> None:
        message.stop()
        self.query_one(DetailPane).read_on()

    def on_resize(self, event: events.Resize) -> None:
        self.call_after_refresh(self.problems.scroll_to_highlight)
        if self.has_class("-stacked") and event.size.width >= WIDE:
            self.call_after_refresh(self.look, self.looks)
        if is_small(event.size) and not self.small:
            self.say(offer(event.size))
        self.small = is_small(event.size)
        self._fit(event.size)

    def _fit(self, size: Size) -> None:
        """Beside each other or one below the other, and what has no room left out."""
        self.set_class(size.width < WIDE, "-stacked")
        self.set_class(is_small(size), "-small")
