"""Is my homework right? Its numbers in a table, checked as a whole, with hints and no values given."""

from __future__ import annotations

from collections.abc import Callable
from typing import ClassVar

from textual import events
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal, Vertical, VerticalScroll
from textual.content import Content
from textual.screen import Screen
from textual.widgets import Static

from tutor.homework import Review
from tutor.homework.aside import told_aside
from tutor.homework.brought import Brought
from tutor.homework.page import Written
from tutor.homework.paper import Paper
from tutor.homework.whole_page import read_paper
from tutor.model.caution import CAUTION
from tutor.screens import homework_deeds
from tutor.screens.bound import bindings
from tutor.screens.cells import changes, entered, on_top, row_name, standing_at
from tutor.screens.checked import closing_figure, closing_said, hints_said, outcome_said, rows_of
from tutor.screens.clean import one_line
from tutor.screens.deeds import Deed
from tutor.screens.line_and_bar import answer, change_over, offer
from tutor.screens.looks import Looks
from tutor.screens.own_deeds import HOMEWORK
from tutor.screens.widgets.action_bar import ActionBar, DeedAsked
from tutor.screens.widgets.cell_line import CellLine
from tutor.screens.widgets.entry_table import EntryTable
from tutor.screens.widgets.figure_pane import FigurePane
from tutor.screens.widgets.hints_given import HintsPane
from tutor.screens.widgets.line_input import LineInput
from tutor.screens.widgets.paste_line import PasteLine
from tutor.workbook import Workbook

WIDTHS = [(0, "-narrow"), (76, "-usual"), (110, "-wide")]
HEIGHTS = [(0, "-low"), (20, "-high")]
WELCOME = (
    "Enter what you have: 7.5 C, -7.5, 12 kN T, 12 left; blank is not done. Escape, then c, checks "
    "it; escape, then ?, says what else can be typed."
)
KEPT = "Here is what you entered last; it can be changed, and checked again."
LAST_ROW = "That was the last row: escape, then c, checks."
NOT_REAL = "not for real structures"
"""The caution, shortly, where what was found scrolls under it; in full it stands at the end of that."""
VIEWS = {"": "-found", "-found": "-picture", "-picture": ""}
"""What is shown in a narrow window, one after the other: the table, what was found, the picture."""


class HomeworkScreen(Screen[None]):
    """The paper of one homework and what was found. Nothing entered is lost."""

    CSS_PATH = "homework.tcss"
    HORIZONTAL_BREAKPOINTS = WIDTHS
    VERTICAL_BREAKPOINTS = HEIGHTS
    BINDINGS: ClassVar[list[BindingType]] = [
        *bindings(HOMEWORK, "homework"),
        Binding("pageup", "found(-1)", show=False, id="homework.found-up"),
        Binding("pagedown", "found(1)", show=False, id="homework.found-down"),
    ]

    def __init__(
        self, book: Workbook, looks: Looks, walk: Callable[[Brought], object], news: str = ""
    ) -> None:
        super().__init__()
        self.book = book
        self.problem = book.problem
        self.walk = walk
        self.looks = looks
        self.news = news
        self.place = 0
        self.result: Review | None = None
        self.checked = Paper()
        self.hints: list[tuple[str, str]] = []

    def compose(self) -> ComposeResult:
        yield Static(id="homework-title")
        with Horizontal(id="homework-middle"):
            with VerticalScroll(id="entries-scroll", can_focus=False):
                yield EntryTable(id="entries")
            with Vertical(id="homework-beside"):
                yield FigurePane(id="closing-picture")
                with VerticalScroll(id="found-scroll", can_focus=False):
                    yield Static(id="found")
                    yield HintsPane(id="found-hints")
                    yield Static(id="found-closing")
        with Vertical(id="homework-lower"):
            with VerticalScroll(id="homework-reply", can_focus=False):
                yield Static(Content(WELCOME), id="homework-said")
            with Horizontal(id="homework-typing"):
                yield Static(id="homework-prompt")
                yield CellLine(id="line")
        yield ActionBar(id="actions")

    def on_mount(self) -> None:
        self.query_one(EntryTable).pointer = ">" if self.looks.ascii_only else "›"
        self.query_one("#entries-scroll", VerticalScroll).border_title = Content("Your paper")
        self.query_one("#found-scroll", VerticalScroll).border_title = Content("What was found")
        self.query_one("#found-scroll").border_subtitle = Content(NOT_REAL)
        if self.news or not self.paper.blank:
            self.say(self.news or KEPT)
        self.query_one(LineInput).focus()
        self.go(0)

    # What is shown

    def show(self) -> None:
        """Show the paper, what was found, and the line for the row at hand."""
        ascii_only = self.looks.ascii_only
        rows = rows_of(self.problem, self.paper, self.result, self.changed, ascii_only)
        self.place = max(0, min(self.place, len(rows) - 1))
        self.query_one(EntryTable).show(rows, self.place)
        written = sum(name in self.paper.values for name in self.problem.unknowns)
        title = f"Check a homework: {self.problem.title}  ({written} of {len(self.problem.unknowns)} values"
        lines = len(self.paper.lines)
        title += f", {lines} line{'s' * (lines > 1)})" if lines else ")"
        self.query_one("#homework-title", Static).update(Content(one_line(title)))
        self.show_found()
        picture = closing_figure(self.problem, self.result, ascii_only)
        self.query_one(FigurePane).show(*picture, self.looks.glyphs)
        prompt = f"{self.row} {'>' if ascii_only else '›'} "
        self.query_one("#homework-prompt", Static).update(Content(one_line(prompt) + " "))
        offer(self, HOMEWORK)

    def show_found(self) -> None:
        """The outcome, the hints given so far, and what closes."""
        parts = [
            Content("Nothing is checked yet.\n\n" + one_line(CAUTION)),
            Content(""),
            Content(""),
        ]
        if self.result is not None:
            parts = [
                outcome_said(self.result, bool(self.changed)),
                hints_said(self.hints),
                closing_said(self.result, self.looks.ascii_only),
            ]
        for part, content in zip(("found", "found-hints", "found-closing"), parts, strict=True):
            shown = self.query_one(f"#{part}", Static)
            shown.update(content)
            shown.display = bool(content.plain)

    @property
    def paper(self) -> Paper:
        """What is entered now."""
        return self.book.paper

    @property
    def row(self) -> str:
        """The name of the row at hand."""
        return row_name(self.problem, self.place)

    @property
    def changed(self) -> set[str | int]:
        """Which entries differ from what was checked."""
        return set() if self.result is None else changes(self.problem, self.paper, self.checked)

    def say(self, text: str) -> None:
        """What is answered, below the table."""
        answer(self, "homework-said", text)

    def go(self, place: int) -> None:
        """To another row; what stands there comes into the line, and typing replaces it."""
        last = len(self.problem.unknowns) + len(self.paper.lines) - 1
        self.place = max(0, min(place, last))
        self.query_one(CellLine).stand(self.written)
        self.show()

    @property
    def written(self) -> str:
        """What stands in the row at hand."""
        return standing_at(self.problem, self.paper, self.place)

    # What is entered

    def on_line_input_entered(self, message: LineInput.Entered) -> None:
        message.stop()
        text, place = message.text.strip(), self.place
        if (deed := homework_deeds.TYPED.get(text.lower())) is not None:
            self.query_one(CellLine).stand(self.written)
            self.action_deed(deed)
            return
        if text == self.written.strip():
            self.say_finding()
            self.go(place + 1)
            return
        was_blank = not self.written.strip()
        noted = self.enter(text)
        if not noted:
            self.query_one(CellLine).refused()
            return
        stands = self.written.strip()
        done = stands == text or not text or (was_blank and stands)
        self.go(place + 1 if done else place)
        if done and self.place == place:
            self.say(f"{noted} {LAST_ROW}")

    def enter(self, text: str) -> str:
        """Enter a text into the row at hand; what is said of it, or "" where it was refused."""
        written = entered(self.problem, self.paper, self.place, text)
        said = self.take(written)
        return "" if written.refused else said

    def take(self, written: Written) -> str:
        """Keep the paper as it now is, and say what was noted and refused."""
        self.book.put(written.paper)
        said = [f"Noted: {', '.join(written.noted)}."] if written.noted else []
        said += [f"Read {r.text}: {r.message}" if r.text else r.message for r in written.refused]
        told = " ".join([*said, *self.book.news()]).strip()
        self.say(told)
        self.show()
        return told

    def on_paste_line_pasted(self, message: PasteLine.Pasted) -> None:
        """A pasted table goes onto the paper row by row; what cannot be read is told."""
        message.stop()
        pasted = read_paper(self.problem, "\n".join(message.lines))
        count = len(pasted.paper.values) + len(pasted.paper.lines)
        noted = (
            "1 entry of the paste" if count == 1 else f"{count} entries of the paste",
            *(each.text for each in pasted.twice),
            *told_aside(pasted.aside),
        )
        self.take(Written(on_top(self.paper, pasted.paper), noted, pasted.refused))
        self.go(self.place)

    def on_line_input_said(self, message: LineInput.Said) -> None:
        self.say(message.text)

    def on_cell_line_moved(self, message: CellLine.Moved) -> None:
        """To the row beside; what was typed into this one and not yet entered is entered first."""
        self._leave_row(self.place + message.step)

    def on_entry_table_went(self, message: EntryTable.Went) -> None:
        self._leave_row(message.place)
        self.query_one(LineInput).focus()

    def settle_row(self) -> bool:
        """Enter what was typed into the row at hand and not yet entered; False where it is refused."""
        text = self.query_one(LineInput).value.strip()
        return text == self.written.strip() or bool(self.enter(text))

    def _leave_row(self, place: int) -> None:
        if self.settle_row():
            self.go(place)
            self.say_finding()

    def say_finding(self) -> None:
        """What kind of mistake the row at hand shows, where it is wrong."""
        key: str | int = self.row
        if self.place >= len(self.problem.unknowns):
            key = self.place - len(self.problem.unknowns)
        found = None if self.result is None else self.result.finding.get(key)
        if found is None or key in self.changed:
            return
        why = "" if found.cause is None else f" {found.cause.text}"
        words = {"follows": "It follows from an earlier error.", "right": "It is right."}
        self.say(f"{self.row}: {words.get(found.state, f'{found.state}.')}{why}")

    # What is done

    def deeds(self) -> tuple[Deed, ...]:
        """What can be done here."""
        return HOMEWORK

    def on_deed_asked(self, message: DeedAsked) -> None:
        message.stop()
        self.action_deed(message.deed)

    def action_deed(self, deed: str) -> None:
        """Do what a key, the bar or the palette asked for."""
        self.query_one(LineInput).focus()
        homework_deeds.DO[deed](self)

    def next_view(self) -> None:
        """The picture or what was said; in a narrow window, the table after these."""
        if self.has_class("-narrow"):
            here = next((view for view in VIEWS if view and self.has_class(view)), "")
            self.remove_class("-found", "-picture")
            self.set_class(bool(VIEWS[here]), VIEWS[here] or "-found")
        else:
            self.remove_class("-found")
            self.toggle_class("-picture")

    def action_bar(self) -> None:
        change_over(self)

    def action_found(self, step: int) -> None:
        self.query_one("#found-scroll", VerticalScroll).scroll_relative(y=6 * step, animate=False)

    def on_descendant_focus(self, event: events.DescendantFocus) -> None:
        offer(self, HOMEWORK)
