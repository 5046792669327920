"""Which problem? All sets with where each problem was left, and broken files with their lines."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, ClassVar

from rich.cells import cell_len
from textual import events
from textual.app import ComposeResult
from textual.binding import BindingType
from textual.containers import Horizontal, Vertical, VerticalScroll
from textual.content import Content
from textual.message import Message
from textual.screen import Screen
from textual.widgets import OptionList, Static
from textual.widgets.option_list import Option

from tutor.progress.where import DONE, FINISHED
from tutor.screens.clean import one_line
from tutor.screens.deeds import SHEET, Deed
from tutor.screens.first import TITLE
from tutor.screens.line_and_bar import bindings
from tutor.screens.looks import Looks
from tutor.screens.marks import in_marks
from tutor.screens.onward import Onward, next_open, onward
from tutor.screens.rows import about, row_of
from tutor.screens.shelf import Entry, Group
from tutor.screens.small import is_small, offer
from tutor.screens.widgets.action_bar import ActionBar, Asked
from tutor.screens.widgets.figure_pane import FigurePane
from tutor.screens.widgets.problem_list import ProblemList
from tutor.text import visible

if TYPE_CHECKING:
    from tutor.progress.guide import Guide
    from tutor.session import Session

LEAD = "Arrow keys choose (left, right: another set), space reads on, enter opens."
READING = "What you have kept is being read…"
WIDE = 116
LONGEST = 44


class SheetScreen(Screen[None]):
    """The list of problems; it posts what was chosen and shows what it is handed."""

    CSS_PATH = "sheet.tcss"
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(SHEET, "sheet")]

    @dataclass
    class Chosen(Message):
        """A problem was chosen to be worked."""

        entry: Entry

    @dataclass
    class Wanted(Message):
        """A deed of the whole program was asked for: its id, and the row at hand."""

        deed: str
        entry: Entry | None = None

    def __init__(self, groups: Sequence[Group], looks: Looks, *, behind: bool = False) -> None:
        """With `behind` nothing is painted of the list until what opens over it is left."""
        super().__init__()
        self.set_class(behind, "-behind")
        self.covered = False
        self.looks = looks
        self.groups = tuple(groups)
        self.entries: list[Entry | None] = []
        self.left: Mapping[str, str] = {}
        self.guide: Guide | None = None
        self.last = ""
        self.stood_at = ""
        self.said = READING

    def compose(self) -> ComposeResult:
        yield Static(Content(TITLE), id="sheet-title")
        yield Static(Content(""), id="sheet-skills")
        with Horizontal(id="sheet-middle"):
            yield ProblemList(id="problems", markup=False)
            with Vertical(id="beside-list"):
                with VerticalScroll(id="detail", can_focus=False):
                    yield Static(id="about")
                yield FigurePane(id="preview")
        yield Static(Content(READING), id="sheet-said")
        yield ActionBar(id="actions")

    def on_mount(self) -> None:
        self.query_one(ActionBar).offer(SHEET, False)
        self.show({})
        self.query_one(OptionList).focus()

    def show(self, left: Mapping[str, str]) -> None:
        """Show the sets; `left` says by problem where each was left. What is finished is passed by."""
        self.left = left
        problems = self.query_one(OptionList)
        titles = [one_line(e.title) for g in self.groups for e in g.entries if not e.broken]
        wide = min(LONGEST, max(map(cell_len, titles), default=0))
        rows: list[tuple[Content, Entry | None]] = []
        for group in self.groups:
            rows.append((Content.styled(one_line(group.title), "bold"), None))
            rows += [(row_of(entry, wide, left), entry) for entry in group.entries]
            if group.unread:
                rows.append((Content(f"  {group.unread} more files are being read…"), None))
        if self.entries:
            for index, (row, _) in enumerate(rows):
                problems.replace_option_prompt_at_index(index, row)
            self._count()
            self._to_go_on()
            self.call_after_refresh(problems.scroll_to_highlight)
            return
        self.entries = [entry for _, entry in rows]
        problems.add_options([Option(row, disabled=entry is None) for row, entry in rows])
        problems.highlighted = next((i for i, e in enumerate(self.entries) if e), None)
        self._count()
        if not any(self.entries):
            self.query_one("#about", Static).update(Content("There are no problems here."))

    def show_guide(self, guide: Guide, guided: bool) -> None:
        """Show where each problem was left and, where that is wanted, how the skills stand."""
        from tutor.progress.page import at_a_glance  # here: the list is shown before it is needed

        self.guide = guide if guided else None
        skills = self.query_one("#sheet-skills", Static)
        glance = at_a_glance(guide.standing) if guided else ()
        skills.display = bool(glance)
        skills.update(Content(in_marks(glance, self.looks.ascii_only)))
        self.last = guide.last
        self.show(guide.places)
        self.read()

    def read(self) -> None:
        """What is kept has been read, as far as it can be."""
        if self.said == READING:
            self.say(LEAD)

    def grow(self, groups: Sequence[Group]) -> None:
        """Show more sets than before; the row that was at hand stays at hand."""
        problems = self.query_one(OptionList)
        at = self._entry(problems.highlighted or 0)
        self.groups, self.entries = tuple(groups), []
        problems.clear_options()
        self.show(self.left)
        if at is not None:
            again = (i for i, e in enumerate(self.entries) if e and e.path == at.path)
            problems.highlighted = next(again, problems.highlighted)

    def _count(self) -> None:
        """Say beside the title how many problems are finished."""
        usable = [entry for entry in self.entries if entry is not None and not entry.broken]
        done = sum(self.left.get(entry.key) == DONE for entry in usable)
        title = f"{TITLE}  ({done} of {len(usable)} finished)" if done else TITLE
        self.query_one("#sheet-title", Static).update(Content(title))

    def _to_go_on(self) -> None:
        """To where the student was last, and from a finished problem on to the next that is not."""
        problems = self.query_one(OptionList)
        last = next((i for i, e in enumerate(self.entries) if e and e.key == self.last), None)
        if last is not None and self.last != self.stood_at:
            problems.highlighted = last
        self.stood_at = self.last
        place = problems.highlighted or 0
        here = self._entry(place)
        finished = {key for key, where in self.left.items() if where in FINISHED}
        if here is None or here.key not in finished:
            return
        rows = [entry for entry in (*self.entries[place:], *self.entries[:place]) if entry]
        chosen = self._chosen(here)
        ahead = chosen or next_open(rows, finished)
        if ahead is not None:
            problems.highlighted = self.entries.index(ahead)

    def _chosen(self, here: Entry) -> Entry | None:
        """The problem that the guide has next after this one."""
        ahead = None if self.guide is None else self.guide.next(here.key)
        key = "" if ahead is None else ahead.key
        return next((each for each in self.entries if each and key and each.key == key), None)

    def onward(self, entry: Entry, session: Session) -> Onward | None:
        """What comes once this problem is finished, as a lesson on it stands."""
        entries = [each for each in self.entries if each]
        if self.guide is None:
            return onward(entries, self.left, entry)
        guide = self.guide.after(session.lesson.state, session.journal.path)
        return onward(entries, guide.places, entry, guide.next())

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
            self.call_after_refresh(self.query_one(OptionList).focus)

    def on_option_list_option_highlighted(self, event: OptionList.OptionHighlighted) -> None:
        event.stop()
        entry = self._entry(event.option_index)
        if entry is not None:
            self._show_entry(entry)

    def _show_entry(self, entry: Entry) -> None:
        """What there is to say of a row, and its picture where there is room."""
        self.query_one("#about", Static).update(about(entry))
        self.query_one("#detail", VerticalScroll).scroll_home(animate=False)
        figure = None
        if entry.problem is not None and self.app.size.width >= WIDE:
            from tutor.figure import truss_figure  # only where there is room for a picture

            figure = truss_figure(entry.problem)
        title = "" if entry.problem is None else "The truss"
        self.query_one("#preview", FigurePane).show(title, figure, self.looks.glyphs)

    def look(self, looks: Looks) -> None:
        """Draw with other characters from now on."""
        self.looks = looks
        entry = self._entry(self.query_one(OptionList).highlighted or 0)
        if entry is not None:
            self._show_entry(entry)

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        event.stop()
        entry = self._entry(event.option_index)
        if entry is None:
            return
        if entry.problem is None:
            self.say("This file cannot be worked yet: what to mend is beside it, with its lines.")
        else:
            self.post_message(self.Chosen(entry))

    def _entry(self, index: int) -> Entry | None:
        return self.entries[index] if 0 <= index < len(self.entries) else None

    def on_asked(self, message: Asked) -> None:
        message.stop()
        self.action_deed(message.deed)

    def deeds(self) -> tuple[Deed, ...]:
        """What can be done here."""
        return SHEET

    def action_deed(self, deed: str) -> None:
        entry = self._entry(self.query_one(OptionList).highlighted or 0)
        self.post_message(self.Wanted(deed, entry))

    def action_bar(self) -> None:
        """From the list to the bar and back."""
        bar = self.query_one(ActionBar)
        (self.query_one(OptionList) if bar.has_focus else bar).focus()

    def on_problem_list_read_on(self, message: ProblemList.ReadOn) -> None:
        """The next rows of what is told of the problem; from the end to the beginning."""
        message.stop()
        detail = self.query_one("#detail", VerticalScroll)
        if detail.scroll_offset.y >= detail.max_scroll_y:
            detail.scroll_home(animate=False)
        else:
            step = max(1, detail.scrollable_content_region.height - 1)
            detail.scroll_relative(y=step, animate=False)

    def on_resize(self, event: events.Resize) -> None:
        self.call_after_refresh(self.query_one(OptionList).scroll_to_highlight)
        narrow = event.size.width < WIDE
        if self.has_class("-stacked") and not narrow:
            self.call_after_refresh(self.look, self.looks)
        self.set_class(narrow, "-stacked")
        small = is_small(event.size)
        if small and not self.has_class("-small"):
            self.say(offer(event.size))
        self.set_class(small, "-small")
