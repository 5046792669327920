"""What came out? Every member with T or C, the extremes, how the walk went, and the caution."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from textual import events
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal
from textual.content import Content
from textual.message import Message
from textual.screen import Screen
from textual.widgets import Static

from tutor.judge.called import counted
from tutor.lesson import CAUTION, Lesson, Row, Say, Table
from tutor.lesson.steps.result_words import result_in_words
from tutor.lesson.steps.sound import what_it_is
from tutor.lesson.steps.table import (
    ARRIVED,
    hints_in_words,
    largest_in_words,
    time_in_words,
)
from tutor.progress.after import one_thing
from tutor.records.keep import slug
from tutor.records.report import markdown
from tutor.screens.clean import one_line
from tutor.screens.deeds import CLOSING, WALK, Deed
from tutor.screens.dialogs.help import help_text
from tutor.screens.dialogs.save import SaveDialog
from tutor.screens.dialogs.told import Told
from tutor.screens.looks import Looks
from tutor.screens.onward import Onward
from tutor.screens.pictures import results
from tutor.screens.widgets.action_bar import ActionBar, DeedAsked
from tutor.screens.widgets.figure_pane import FigurePane
from tutor.screens.widgets.more_below import MoreBelow
from tutor.screens.widgets.reply_pane import said_row
from tutor.session import Session
from tutor.statics import forces_follow
from tutor.text import visible


class ClosingScreen(Screen[str]):
    """The table. It is left with "back" to the walk, "next" to the problem that comes next, or
    "leave" to the problems."""

    CSS_PATH = "closing.tcss"
    BINDINGS: ClassVar[list[BindingType]] = [
        *(
            Binding(d.keys, f"deed('{d.id}')", d.label, show=False, id=f"closing.{d.id}")
            for d in CLOSING
        ),
        Binding("escape", "deed('back')", show=False, id="closing.escape"),
    ]

    def __init__(
        self,
        session: Session,
        looks: Looks,
        said: Sequence[Say] = (),
        onward: Onward | None = None,
        guided: bool = False,
    ) -> None:
        super().__init__()
        self.guided = guided
        self.onward = onward if session.lesson.done else None
        self.said = tuple(say for say in said if say != ARRIVED)
        self.session = session
        self.looks = looks
        self.shown_at = Message().time

    def compose(self) -> ComposeResult:
        lesson = self.session.lesson
        with Horizontal(id="closing-upper"):
            yield FigurePane(id="results")
            with MoreBelow(id="table-scroll") as scroll:
                scroll.border_title = Content(_title(lesson))
                yield Static(table_content(lesson), id="table")
        yield Static(Content(one_line(CAUTION)), id="caution")
        rows = (said_row(say, self.looks.ascii_only) for say in self.said)
        yield Static(Content("\n").join(rows), id="closing-said")
        yield Static(Content(one_line(self._watch())), id="one-thing")
        yield Static(Content(one_line(self.onward.said if self.onward else "")), id="onward")
        yield ActionBar(id="actions")

    def on_mount(self) -> None:
        state = self.session.lesson.state
        name = "Results" if forces_follow(state.problem) else "The truss"
        title = f"{name}: {state.problem.title}"
        self.query_one(FigurePane).show(title, results(state), self.looks.glyphs)
        self.query_one(ActionBar).offer(self.deeds(), False)
        self.query_one("#one-thing").display = bool(self._watch())
        self.query_one("#onward").display = self.onward is not None
        self.query_one("#table-scroll").focus()

    def _watch(self) -> str:
        """The one thing to watch, once the walk is done and where that is wanted."""
        lesson = self.session.lesson
        skill = "" if self.onward is None else self.onward.skill
        return one_thing(lesson, skill) if self.guided and lesson.done else ""

    def deeds(self) -> tuple[Deed, ...]:
        """What can be done here."""
        ahead = self.onward is not None and self.onward.entry is not None
        return tuple(deed for deed in CLOSING if deed.id != "next" or ahead)

    def on_resize(self, event: events.Resize) -> None:
        self.set_class(event.size.width < 60, "-narrow")

    def on_deed_asked(self, message: DeedAsked) -> None:
        message.stop()
        self.action_deed(message.deed)

    def action_deed(self, deed: str) -> None:
        """Do what a key, the bar or the palette asked for."""
        if deed == "save":
            name = f"{slug(self.session.lesson.problem.title)}.md"
            self.app.push_screen(SaveDialog(markdown(self.session.lesson), name), self._saved)
        elif deed == "help":
            self.app.push_screen(Told("Help", help_text((*CLOSING, *WALK))))
        elif deed in {each.id for each in self.deeds()}:
            self.dismiss(deed)

    def _saved(self, path: str | None) -> None:
        if path is not None:
            said = Content(f"Saved in {one_line(path)}.")
            self.query_one("#closing-said", Static).update(said)


def _title(lesson: Lesson) -> str:
    if not lesson.done:
        return "Found so far"
    return "Table" if forces_follow(lesson.problem) else "Outcome"


def table_content(lesson: Lesson) -> Content:
    """The table and the account of the walk, as plain text."""
    state, table = lesson.state, lesson.table
    parts = [_members(table), _extremes(table), _way(table)]
    if not forces_follow(state.problem):
        parts[0] = Content(visible(what_it_is(state)))
    found = [r.name for r in state.problem.reactions if r.name in state.result]
    if found:
        rows = "\n".join(result_in_words(state, name) for name in found)
        parts.insert(1, Content.assemble(("Reactions\n", "bold"), rows))
    return Content("\n\n").join(part for part in parts if part.plain)


def _members(table: Table) -> Content:
    rows = [Content.styled(f"member   force [{one_line(table.unit)}]", "bold underline")]
    for row in table.rows:
        size = "0" if row.force == 0 else f"{abs(row.force):.5g}"
        rows.append(
            Content.assemble(f"{one_line(row.member):<8} {size:>8}  ", (_letter(row), _style(row)))
        )
    return Content("\n").join(rows)


def _letter(row: Row) -> str:
    return {"T": "T  tension", "C": "C  compression"}.get(row.letter, "0  no force")


def _style(row: Row) -> str:
    return {"T": "$tension", "C": "$compression"}.get(row.letter, "$nothing")


def _extremes(table: Table) -> Content:
    lines = []
    for name, rows in (("tension", table.tensions), ("compression", table.compressions)):
        if rows:
            lines.append(f"Largest {name}: {largest_in_words(rows, table.unit)}")
    return Content(visible("\n".join(lines)))


def _way(table: Table) -> Content:
    lines = [f"{table.tries} answers given"]
    slips = "; ".join(counted(code, count) for code, count in table.mistakes)
    lines.append(
        f"What went wrong on the way: {slips}" if slips else "Nothing went wrong on the way"
    )
    lines.append(f"Hints taken: {hints_in_words(table.hints)}")
    if table.shown:
        lines.append(f"Shown at the board: {table.shown} of the steps")
    lines.append(f"Time: {time_in_words(table.seconds)}")
    return Content.assemble(("How it went\n", "bold"), visible("\n".join(lines)))
