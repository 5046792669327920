"""Is my homework right? Its numbers in a table, checked as a whole, with hints and no values given."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime
from typing import ClassVar

from textual import events
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal, Vertical, VerticalScroll
from textual.content import Content
from textual.screen import Screen
from textual.widgets import Static

from tutor.homework import LEVELS, Review, hint, markdown, review, right_lines
from tutor.homework.brought import Brought, brought
from tutor.homework.kept import lines_of
from tutor.homework.paper import Paper
from tutor.homework.typed import Written, read_paper
from tutor.model import Problem
from tutor.model.caution import CAUTION
from tutor.records.keep import slug
from tutor.records.kept_lines import KeptLines
from tutor.screens.background import beside
from tutor.screens.cells import changes, entered, row_name, standing_at
from tutor.screens.checked import account, closing_figure, rows_of
from tutor.screens.clean import clean, one_line
from tutor.screens.deeds import Deed
from tutor.screens.dialogs.choose import Choose
from tutor.screens.dialogs.save import Save
from tutor.screens.dialogs.told import Told
from tutor.screens.homework_help import homework_help
from tutor.screens.looks import Looks
from tutor.screens.own_deeds import HOMEWORK
from tutor.screens.widgets.action_bar import ActionBar, Asked
from tutor.screens.widgets.cell_line import CellLine
from tutor.screens.widgets.choices import Choice
from tutor.screens.widgets.entry_table import EntryTable
from tutor.screens.widgets.figure_pane import FigurePane
from tutor.screens.widgets.line_input import LineInput
from tutor.screens.widgets.paste_line import PasteLine

NARROW = 60
WIDE = 110
WELCOME = (
    "Enter what you have: 7.5 C, -7.5, 12 kN T, 12 left; blank is not done. Escape, then c, checks "
    "it; escape, then ?, says what else can be typed."
)
NOT_CHECKED = "This could not be checked: the fault is in the program. What you entered is kept."
LAST = "This shows what would be right at the first wrong place. Do you want to see it?"


class HomeworkScreen(Screen[None]):
    """The paper of one homework and what was found. It owns the paper; nothing entered is lost."""

    CSS_PATH = "homework.tcss"
    BINDINGS: ClassVar[list[BindingType]] = [
        *(
            Binding(d.keys, f"deed('{d.id}')", d.label, show=False, id=f"homework.{d.id}")
            for d in HOMEWORK
        ),
        Binding("escape", "bar", show=False, id="homework.bar"),
        Binding("pageup", "found(-1)", show=False, id="homework.found-up"),
        Binding("pagedown", "found(1)", show=False, id="homework.found-down"),
    ]

    def __init__(
        self, problem: Problem, looks: Looks, kept: KeptLines, walk: Callable[[Brought], object]
    ) -> None:
        super().__init__()
        self.problem = problem
        self.walk = walk
        self.looks = looks
        self.kept = kept
        self.paper = Paper()
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
        lines = self.kept.read()
        if lines:
            self.paper = read_paper(self.problem, "\n".join(lines)).paper
            self.say("Here is what you entered last; it can be changed, and checked again.")
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
        title += f", {len(self.paper.lines)} lines)" if self.paper.lines else ")"
        self.query_one("#homework-title", Static).update(Content(one_line(title)))
        found = Content("Nothing is checked yet.\n\n" + one_line(CAUTION))
        if self.result is not None:
            found = account(self.result, self.hints, bool(self.changed), ascii_only)
        self.query_one("#found", Static).update(found)
        picture = closing_figure(self.problem, self.result, ascii_only)
        self.query_one(FigurePane).show(*picture, self.looks.glyphs)
        prompt = f"{self.row} {'>' if ascii_only else '›'} "
        self.query_one("#homework-prompt", Static).update(Content(one_line(prompt) + " "))
        self.query_one(ActionBar).offer(HOMEWORK, self.query_one(LineInput).has_focus)

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
        self.query_one("#homework-said", Static).update(Content(clean(text)))
        self.query_one("#homework-reply", VerticalScroll).scroll_home(animate=False)

    def go(self, place: int) -> None:
        """To another row; what stands there comes into the line, to be changed."""
        last = len(self.problem.unknowns) + len(self.paper.lines) - 1
        self.place = max(0, min(place, last))
        line = self.query_one(LineInput)
        line.value = self._standing()
        line.cursor_position = len(line.value)
        self.show()

    def _standing(self) -> str:
        return standing_at(self.problem, self.paper, self.place)

    def written(self, text: str) -> Written:
        """The paper with what was typed into the row at hand."""
        return entered(self.problem, self.paper, self.place, text)

    # What is entered

    def on_line_input_entered(self, message: LineInput.Entered) -> None:
        message.stop()
        text, line = message.text.strip(), self.query_one(LineInput)
        if text == self._standing().strip():
            self.say_finding()
            self.go(self.place + 1)
            return
        was_blank = not self._standing().strip()
        written = self.written(text)
        self.take(written)
        if written.refused:
            return
        line.taken()
        stands = self._standing().strip()
        done = stands == text or not text or (was_blank and stands)
        self.go(self.place + 1 if done else self.place)

    def take(self, written: Written) -> None:
        """Keep the paper as it now is, and say what was noted and refused."""
        trouble = ""
        if written.paper != self.paper:
            self.paper = written.paper
            trouble = self.kept.write(lines_of(self.paper))
        said = [f"Noted: {', '.join(written.noted)}."] if written.noted else []
        said += [f"Read {r.text}: {r.message}" if r.text else r.message for r in written.refused]
        self.say(" ".join([*said, trouble]).strip())
        self.show()

    def on_paste_line_pasted(self, message: PasteLine.Pasted) -> None:
        """A pasted table goes onto the paper row by row; what cannot be read is told."""
        message.stop()
        pasted = read_paper(self.problem, "\n".join(message.lines)).paper
        told = read_paper(self.problem, "\n".join(message.lines)).refused
        paper = self.paper
        for name, text in pasted.values.items():
            paper = paper.with_value(name, text)
        for about, text in pasted.lines:
            paper = paper.with_line(about, text)
        for name, sense in pasted.senses.items():
            paper = paper.with_sense(name, sense)
        count = len(pasted.values) + len(pasted.lines)
        self.take(Written(paper, (f"{count} entries of the paste",), told))
        self.go(self.place)

    def on_paste_line_typing(self, message: PasteLine.Typing) -> None:
        message.stop()

    def on_line_input_said(self, message: LineInput.Said) -> None:
        message.stop()
        self.say(message.text)

    def on_line_input_marks(self, message: LineInput.Marks) -> None:
        message.stop()

    def on_cell_line_moved(self, message: CellLine.Moved) -> None:
        """To the row beside; what was typed into this one and not yet entered is entered first."""
        message.stop()
        self._leave_row(self.place + message.step)

    def on_entry_table_went(self, message: EntryTable.Went) -> None:
        message.stop()
        self._leave_row(message.place)
        self.query_one(LineInput).focus()

    def _leave_row(self, place: int) -> None:
        text = self.query_one(LineInput).value.strip()
        if text != self._standing().strip():
            written = self.written(text)
            self.take(written)
            if written.refused:
                return
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

    def on_asked(self, message: Asked) -> None:
        message.stop()
        self.action_deed(message.deed)

    def action_deed(self, deed: str) -> None:
        """Do what a key, the bar or the palette asked for."""
        does: dict[str, Callable[[], object]] = {
            "check": self.check,
            "hint": self.next_hint,
            "figure": lambda: self.toggle_class("-picture"),
            "walk": self._walk,
            "clear": self._ask_clear,
            "save": self._save,
            "help": lambda: self.app.push_screen(Told("Check a homework", homework_help())),
            "leave": lambda: self.dismiss(None),
        }
        self.query_one(LineInput).focus()
        does[deed]()

    def check(self) -> None:
        """Review the whole paper beside the screen."""
        text = self.query_one(LineInput).value.strip()
        if text != self._standing().strip():
            written = self.written(text)
            self.take(written)
            if written.refused:
                return
        if self.paper.blank:
            self.say("There is nothing to check yet: enter a value or a line first.")
            return
        paper, work = self.paper, self.paper.work(self.problem)
        self.say("Checking…")
        beside(
            self.app,
            lambda: review(self.problem, work),
            lambda result: self._checked(paper, result),
            lambda fault: self.say(NOT_CHECKED),
        )

    def _checked(self, paper: Paper, result: Review) -> None:
        if paper != self.checked or self.result is None:
            look = hint(result, "look")
            self.hints = [("Look", look)] if look else []
        self.result, self.checked = result, paper
        more = " Escape, then h, says more." if result.first is not None else ""
        self.say(f"{result.said}{more}")
        self.show()
        self.query_one("#found-scroll", VerticalScroll).scroll_home(animate=False)

    def next_hint(self) -> None:
        """One hint more for the first wrong place; the last only after asking."""
        result = self.result
        if result is None or self.changed:
            self.say("Check first: escape, then c. Hints are for the first wrong place.")
        elif result.first is None:
            self.say("Nothing wrong was found, so there is nothing to hint at.")
        elif len(self.hints) < len(LEVELS):
            level = LEVELS[len(self.hints)]
            self.hints.append((level.capitalize(), hint(result, level)))
            self.say(self.hints[-1][1])
            self.show()
        elif len(self.hints) == len(LEVELS):
            choices = [Choice("no", "No, I try again"), Choice("yes", "Show the right lines")]
            self.app.push_screen(Choose("The last hint", LAST, choices), self._last_hint)
        else:
            self.say("These are all the hints there are for this place.")

    def _last_hint(self, key: str | None) -> None:
        if key != "yes" or self.result is None:
            return
        lines = right_lines(self.problem, self.checked.work(self.problem), self.result)
        text = "; ".join(f"{about}: {line}" for about, line in lines)
        self.hints.append(("Line", text))
        self.say(text)
        self.show()

    def _walk(self) -> None:
        """Walk the first wrong place with everything right before it given."""
        result = self.result
        if result is None or self.changed:
            self.say("Check first: escape, then c. The walk begins at the first wrong place.")
        elif result.first is None:
            self.say("Nothing wrong was found, so there is no joint to walk.")
        else:
            self.walk(brought(self.problem, self.checked, result))

    def _ask_clear(self) -> None:
        def answered(key: str | None) -> None:
            if key == "yes":
                self.result = None
                self.take(Written(Paper(), ("a blank paper",)))
                self.go(0)

        choices = [Choice("no", "No, keep it"), Choice("yes", "Take everything off")]
        self.app.push_screen(Choose("Clear", "Take everything off the paper?", choices), answered)

    def _save(self) -> None:
        if self.result is None or self.changed:
            self.say("Check first: escape, then c. The report says what was checked.")
            return
        text = markdown(self.problem, self.result, datetime.now().astimezone())
        name = f"{slug(self.problem.title) or 'homework'}-check.md"

        def saved(path: str | None) -> None:
            if path is not None:
                self.say(f"Saved in {one_line(path)}.")

        self.app.push_screen(Save(text, name), saved)

    def action_bar(self) -> None:
        """From the line to the bar and back."""
        bar, line = self.query_one(ActionBar), self.query_one(LineInput)
        (line if bar.has_focus else bar).focus()

    def action_found(self, step: int) -> None:
        self.query_one("#found-scroll", VerticalScroll).scroll_relative(y=6 * step, animate=False)

    def on_descendant_focus(self, event: events.DescendantFocus) -> None:
        self.query_one(ActionBar).offer(HOMEWORK, isinstance(event.widget, LineInput))

    def on_resize(self, event: events.Resize) -> None:
        self.set_class(event.size.width < NARROW, "-narrow")
        self.set_class(event.size.width >= WIDE, "-wide")
