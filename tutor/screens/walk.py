"""One problem, from its picture to a table that closes: what is drawn, asked, typed and said."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import ClassVar

from textual import events
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal, Vertical
from textual.content import Content
from textual.message import Message
from textual.screen import Screen
from textual.widget import Widget
from textual.widgets import Static

from tutor.lesson import Ask, Reply, Say
from tutor.model import Problem
from tutor.screens import answers, walk_deeds
from tutor.screens.clean import clean, one_line
from tutor.screens.deeds import WALK, Deed
from tutor.screens.line_and_bar import bindings
from tutor.screens.looks import Looks
from tutor.screens.pictures import pictures
from tutor.screens.widgets.action_bar import ActionBar, Asked
from tutor.screens.widgets.answer_pane import AnswerPane
from tutor.screens.widgets.choices import Picked
from tutor.screens.widgets.counts import Counts
from tutor.screens.widgets.figure_pane import FigurePane, titled
from tutor.screens.widgets.line_input import LineInput
from tutor.screens.widgets.lines_pane import LinesPane
from tutor.screens.widgets.reply_pane import ReplyPane
from tutor.screens.widgets.sense_picker import SensePicker
from tutor.screens.widgets.trail import Trail
from tutor.session import Session

HOW_TO_CHOOSE = "Escape, then e, goes to the equations."
NARROW = 60
TWO_PICTURES = 116


class WalkScreen(Screen[str]):
    """The walk. It owns the session, hands every part what to show, and is left with "leave"."""

    CSS_PATH = "walk.tcss"
    BINDINGS: ClassVar[list[BindingType]] = [
        *bindings(WALK, "walk"),
        Binding("pageup", "said(-1)", show=False, id="walk.said-up"),
        Binding("pagedown", "said(1)", show=False, id="walk.said-down"),
    ]

    @dataclass
    class StepDone(Message):
        """A step was passed by answering it right at the first try."""

        step: str

    @dataclass
    class Practised(Message):
        """The smaller problem that was offered is wanted."""

        problem: Problem

    def __init__(
        self,
        session: Session,
        looks: Looks,
        said: Iterable[Say] = (),
    ) -> None:
        super().__init__()
        self.begun_with = tuple(said)
        self.session = session
        self.looks = looks
        self.place = 0
        self.said: list[Say] = []
        self.preview: tuple[str, str] | None = None

    def compose(self) -> ComposeResult:
        yield Trail(id="trail")
        with Horizontal(id="upper"):
            yield FigurePane(id="figure")
            yield FigurePane(id="beside")
            yield LinesPane(id="lines")
        with Vertical(id="lower"):
            yield Static(id="ask")
            yield AnswerPane("> " if self.looks.ascii_only else "› ", id="answer")
            yield ReplyPane(id="reply")
        yield ActionBar(id="actions")

    def on_mount(self) -> None:
        state = self.session.lesson.state
        self.query_one(LineInput).recall([t.text for t in state.tries if t.text])
        said = [*self.begun_with, *(Say("note", notice) for notice in self.session.news())]
        if self.session.skipped:
            said.append(
                Say("note", f"{self.session.skipped} kept entries no longer fit and were left out.")
            )
        if state.tries:
            said.append(Say("note", "Here is where you left."))
        self.show(said)
        if state.step == "table":
            self.to_answer()
            walk_deeds.open_table(self, said)

    @property
    def ask(self) -> Ask:
        """What is asked now."""
        return self.session.lesson.ask

    def do(self, kind: str, **data: object) -> Reply:
        """Do one thing; it is kept before anything of it is shown."""
        before = self.session.lesson.state
        reply = self.session.do(kind, **data)
        after = self.session.lesson.state
        self.preview = None
        if after.step != before.step:
            self.place = 0
            if kind not in ("go", "skip") and all(
                t.verdict == "right" for t in after.tries if t.step == before.step
            ):
                self.post_message(self.StepDone(before.step))
        if after.joint != before.joint or kind == "hint":
            self.place = 0
        notices = [Say("note", notice) for notice in self.session.news()]
        stays = [] if kind != "hint" or reply.accepted else self.said
        self.show([*stays, *(say for say in (*reply.said, *notices) if say not in stays)])
        if after.step == "table" and before.step != "table":
            walk_deeds.open_table(self, reply.said)
        return reply

    def tell(self, *texts: str) -> None:
        """Say something that is no event."""
        self.show([Say("note", text) for text in texts])

    def show(self, said: Sequence[Say]) -> None:
        """Hand every part what it shows now."""
        self.said = list(said)
        state, ask = self.session.lesson.state, self.ask
        self.query_one(Trail).show(state.problem.title, state.step, self.session.standing)
        self.query_one(LinesPane).show(state, self.looks.ascii_only)
        self.query_one(ReplyPane).show(said, self.looks.ascii_only)
        self.query_one("#ask", Static).update(
            Content.assemble((one_line(ask.title), "bold $strong"), "  ", clean(ask.question))
        )
        self.show_pictures()
        self.set_class(ask.kind in answers.TYPED, "-typing")
        self.query_one(AnswerPane).show(ask, state)
        self.show_bar()

    def show_pictures(self) -> None:
        """Draw what belongs to here; at a joint, in a wide window, the truss beside it."""
        found = pictures(self.session.lesson.state, self.ask, self.preview)
        two = len(found) > 1 and self.size.width >= TWO_PICTURES
        beside = self.query_one("#beside", FigurePane)
        beside.display = two
        self.set_class(two, "-two")
        title, figure = found[0] if two else titled(found, self.place)
        self.query_one("#figure", FigurePane).show(title, figure, self.looks.glyphs)
        if two:
            beside.show(*found[1], self.looks.glyphs)

    def show_bar(self) -> None:
        """Offer what can be done now."""
        typing = isinstance(self.focused, LineInput) or self.query_one(Counts).has_focus_within
        self.query_one(ActionBar).offer(self.deeds(), typing)

    def deeds(self) -> tuple[Deed, ...]:
        """What can be done now, beside answering."""
        possible = walk_deeds.possible(self)
        return tuple(deed for deed in WALK if deed.id in possible)

    def to_answer(self) -> None:
        """Put the focus where the answer goes."""
        kind = self.ask.kind
        if kind == "table":
            self.query_one(ActionBar).focus()
        else:
            self.query_one(AnswerPane).to_answer(kind)

    def on_picked(self, message: Picked) -> None:
        message.stop()
        if self.ask.kind in ("reasons", "support") and not message.keys:
            self.tell("Mark what holds here with space or its number, then press enter.")
            return
        answer = answers.picked(self.ask, message.keys)
        self.do(answer.kind, **answer.data)
        if answer.kind == "choose":
            self.to_answer()

    def on_counts_counted(self, message: Counts.Counted) -> None:
        if not self.do("count", **message.numbers).accepted:
            self.query_one(Counts).again()

    def on_sense_picker_drawn(self, message: SensePicker.Drawn) -> None:
        self.preview = (self.ask.subject or "", message.key)
        self.show_pictures()

    def on_sense_picker_kept(self, message: SensePicker.Kept) -> None:
        self.do("sense", unknown=self.ask.subject, sense=message.key)

    def on_sense_picker_said(self, message: SensePicker.Said) -> None:
        self.tell(message.text)

    def on_counts_said(self, message: Counts.Said) -> None:
        self.tell(message.text)

    def on_line_input_said(self, message: LineInput.Said) -> None:
        self.tell(message.text)

    def on_line_input_entered(self, message: LineInput.Entered) -> None:
        """Judge the line. A right one makes room for the next; any other stays for mending."""
        if message.text.strip() == "?":
            self.query_one(LineInput).taken()
            self.action_deed("help")
            return
        answer = answers.entered(self.ask, message.text)
        reply = self.do(answer.kind, **answer.data)
        line = self.query_one(LineInput)
        if answers.is_taken(reply):
            line.taken()
        elif reply.verdict is None and self.ask.about is None:
            self.show([*self.said, Say("note", HOW_TO_CHOOSE)])
        else:
            self.point_out(reply)

    def point_out(self, reply: Reply) -> None:
        """Mark the place in the line that the reply is about, where it may be told."""
        line = self.query_one(LineInput)
        line.mark(answers.marked(self.session.lesson.state, reply, line.value))

    def on_asked(self, message: Asked) -> None:
        message.stop()
        self.action_deed(message.deed)

    def action_deed(self, deed: str) -> None:
        """Do what a key, the bar or the palette asked for, where it is possible now."""
        if deed in walk_deeds.possible(self):
            walk_deeds.DO[deed](self)

    def action_bar(self) -> None:
        """From what is being answered to the bar, and back."""
        bar = self.query_one(ActionBar)
        if bar.has_focus:
            self.to_answer()
        else:
            bar.focus()

    def action_said(self, step: int) -> None:
        self.query_one(ReplyPane).scroll_relative(y=3 * step, animate=False)

    def on_descendant_focus(self) -> None:
        self.show_bar()

    def on_resize(self, event: events.Resize) -> None:
        self.set_class(event.size.width < NARROW, "-narrow")
        self.set_class(event.size.height < 20, "-low")
        self.set_class(event.size.height >= 32, "-tall")
        self.show_pictures()

    def next_picture(self) -> None:
        """The next picture; in a narrow window, the picture instead of the lines and back."""
        found = pictures(self.session.lesson.state, self.ask)
        if self.has_class("-narrow") and not self.has_class("-figure"):
            self.add_class("-figure")
            self.place = 0
        elif self.has_class("-narrow") and self.place + 1 >= len(found):
            self.remove_class("-figure")
        else:
            self.place += 1
        self.show_pictures()

    def practise(self) -> None:
        """Ask for the smaller problem; this walk waits below it."""
        problem = self.session.lesson.practice
        if problem is not None:
            self.post_message(self.Practised(problem))

    @property
    def line(self) -> LineInput:
        """The line being typed."""
        return self.query_one(LineInput)

    def focus_on(self, selector: str) -> None:
        """Put the focus on a part."""
        self.query_one(selector, Widget).focus()
