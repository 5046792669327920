"""One problem, from its picture to a table that closes: what is drawn, asked, typed and said."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from typing import ClassVar, Literal

from textual import events, on
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal, Vertical
from textual.message import Message
from textual.screen import Screen
from textual.widgets import Static

from tutor.deeds import completions
from tutor.lesson import Ask, Reply, Say
from tutor.lesson.reply import TICKED, TYPED
from tutor.lesson.steps.idealise import miscounted
from tutor.model import Problem
from tutor.screens import answers, walk_deeds, walk_pictures, walk_words
from tutor.screens.asked import asked
from tutor.screens.bound import bindings
from tutor.screens.brief import FROM_TABLE, brief
from tutor.screens.deeds import WALK, Deed
from tutor.screens.line_and_bar import into_the_line
from tutor.screens.looks import Looks
from tutor.screens.onward import Onward
from tutor.screens.pasting import Pasting
from tutor.screens.repeating import NOTHING_MARKED, Repeating
from tutor.screens.small import fit, is_small, offer
from tutor.screens.walk_possible import possible
from tutor.screens.widgets.action_bar import ActionBar, DeedAsked
from tutor.screens.widgets.answer_pane import AnswerPane
from tutor.screens.widgets.choices import Picked
from tutor.screens.widgets.counts import Counts
from tutor.screens.widgets.figure_pane import FigurePane
from tutor.screens.widgets.line_input import LineInput
from tutor.screens.widgets.lines_pane import LinesPane
from tutor.screens.widgets.reply_pane import ReplyPane
from tutor.screens.widgets.sense_picker import SensePicker
from tutor.screens.widgets.trail import Trail
from tutor.session import Session

RESERVED = tuple(deed for deed in WALK if deed.id not in ("answer", "skip", "begin", "next"))
"""The deeds that may be possible at once, at a joint."""


class WalkScreen(Screen[str]):
    """The walk. It owns the session, hands every part what to show, and is left with "leave",
    "homework" or "next"."""

    CSS_PATH = "walk.tcss"
    BINDINGS: ClassVar[list[BindingType]] = [
        *bindings(WALK, "walk", letters=False),
        Binding("pageup", "said(-1)", show=False, id="walk.said-up"),
        Binding("pagedown", "said(1)", show=False, id="walk.said-down"),
    ]

    class Ready(Message):
        """The walk stands: what was typed ahead of it can be taken."""

    @dataclass
    class StepDone(Message):
        """A step was passed by answering it right at the first try."""

        step: str

    @dataclass
    class Wanted(Message):
        """Something is wanted, or not, in the whole program from now on."""

        what: Literal["guide", "remarks"]
        on: bool

    @dataclass
    class Practised(Message):
        """The smaller problem that was offered is wanted."""

        problem: Problem

    def __init__(
        self,
        session: Session,
        looks: Looks,
        said: Iterable[Say] = (),
        onward: Callable[[], Onward | None] = lambda: None,
    ) -> None:
        super().__init__()
        self.onward = onward
        self.ahead: Onward | None = None
        self.guided = False
        self.begun_with = tuple(said)
        self.session, self.looks = session, looks
        self.place, self.asked_at = 0, 0.0
        self.said: list[Say] = []
        self.preview: tuple[str, str] | None = None
        self.unmended, self.heard = "", tuple[Say, ...]()
        self.pasting = Pasting(self)
        self.repeating = Repeating()

    def compose(self) -> ComposeResult:
        fit(self, self.app.size)
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
        self.line.complete = lambda text: completions(self.session.lesson, text)
        self.line.recall([t.text for t in self.session.lesson.state.tries if t.text])
        said = [*self.begun_with, *walk_words.greeting(self.session)]
        self.show(said)
        if self.session.lesson.state.step == "table":
            self.to_answer()
            walk_deeds.open_table(self, said)
        self.post_message(self.Ready())

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
        if kind != "hint" and (reply.accepted or kind != "type"):
            self.line.go_on()
        own = after.step != before.step and kind not in ("go", "skip")
        if own and all(t.verdict == "right" for t in after.tries if t.step == before.step):
            self.post_message(self.StepDone(before.step))
        if (after.step, after.joint) != (before.step, before.joint) or kind == "hint":
            self.place = 0
        notices = [Say("note", notice) for notice in self.session.news()]
        self.repeating.after(self, kind, data, reply)
        told = [*reply.said, *notices]
        stays = (
            self.said if self.pasting.under_way or (kind == "hint" and not reply.accepted) else []
        )
        new = [say for say in told if self.pasting.under_way or say not in stays]
        self.heard = (*(self.heard if kind == "hint" else ()), *new)
        self.show([*stays, *brief(new)], len(stays))
        if after.step == "table" and before.step != "table":
            walk_deeds.open_table(self, brief(reply.said, FROM_TABLE))
        return reply

    def tell(self, *texts: str) -> None:
        """Say something that is no event."""
        stays = self.said if self.pasting.under_way else []
        self.show([*stays, *(Say("note", text) for text in texts)], len(stays))

    def add(self, say: Say) -> None:
        """Say one thing more."""
        self.show([*self.said, say], len(self.said))

    def show(self, said: Sequence[Say], newest: int = 0) -> None:
        """Hand every part what it shows now; what was said before the `newest` may be scrolled off."""
        self.said, self.asked_at = list(said), Message().time
        state, ask = self.session.lesson.state, self.ask
        self.query_one(Trail).show(state.problem.title, state.step, self.session.keeping)
        self.query_one(LinesPane).show(state, self.looks.ascii_only)
        self.query_one(ReplyPane).show(said, self.looks.ascii_only, newest)
        self.query_one("#ask", Static).update(asked(ask, self.ahead))
        self.show_pictures()
        self.set_class(ask.kind in TYPED, "-typing")
        self.set_class(ask.kind in TICKED, "-ticking")
        self.query_one(AnswerPane).show(ask, state)
        self.show_bar()

    def show_pictures(self) -> None:
        """Draw what belongs to here."""
        walk_pictures.show(self)

    def show_bar(self) -> None:
        """Offer what can be done now."""
        bar = self.query_one(ActionBar)
        bar.offer(self.deeds(), not bar.has_focus, RESERVED)

    def deeds(self) -> tuple[Deed, ...]:
        """What can be done now, beside answering."""
        now = possible(self.session, self.ahead)
        return tuple(deed for deed in WALK if deed.id in now)

    def to_answer(self) -> None:
        """Put the focus where the answer goes."""
        kind = self.ask.kind
        if kind == "table":
            self.query_one(ActionBar).focus()
        else:
            self.query_one(AnswerPane).to_answer(kind)

    def on_picked(self, message: Picked) -> None:
        message.stop()
        if self.ask.kind in TICKED and not message.keys:
            if not self.repeating.once_more(self):
                self.tell(NOTHING_MARKED)
            return
        answer = answers.picked(self.ask, message.keys)
        self.do(answer.kind, **answer.data)
        if answer.kind == "choose":
            self.to_answer()

    def on_counts_counted(self, message: Counts.Counted) -> None:
        if not self.do("count", **message.numbers).accepted:
            self.query_one(Counts).again(miscounted(self.session.lesson.problem, message.numbers))

    def on_sense_picker_drawn(self, message: SensePicker.Drawn) -> None:
        self.preview = (self.ask.subject or "", message.key)
        self.show_pictures()

    def on_sense_picker_kept(self, message: SensePicker.Kept) -> None:
        self.do("sense", unknown=self.ask.subject, sense=message.key)

    @on(SensePicker.Said)
    @on(Counts.Said)
    @on(LineInput.Said)
    def said_by_a_part(self, message: SensePicker.Said | Counts.Said | LineInput.Said) -> None:
        self.tell(message.text)

    def on_line_input_entered(self, message: LineInput.Entered) -> None:
        walk_words.take(self, message.text)

    @on(Counts.Blank)
    @on(LineInput.Blank)
    def nothing_entered(self) -> None:
        if not self.repeating.once_more(self):
            self.to_answer()

    def take_line(self, text: str) -> None:
        """Do what was typed ahead of the question as if it had been entered now."""
        self.line.remember(text)
        walk_words.take(self, text)

    def on_line_input_lines(self, message: LineInput.Lines) -> None:
        """Take pasted lines one after the other; each is answered, and all answers stay."""
        self.pasting.take(message.lines, message.said, message.open_end)

    @on(events.Key)
    @on(events.Paste)
    def typed_elsewhere(self, event: events.Key | events.Paste) -> None:
        into_the_line(event, self.line)

    def point_out(self, reply: Reply) -> None:
        """Mark the place in the line that the reply is about, where it may be told."""
        self.line.mark(answers.marked(self.session.lesson.state, reply, self.line.value))

    def on_deed_asked(self, message: DeedAsked) -> None:
        message.stop()
        self.action_deed(message.deed)

    def action_deed(self, deed: str) -> None:
        """Do what a key, the bar or the palette asked for, where it is possible now."""
        if deed not in possible(self.session, self.ahead):
            return
        walk_deeds.DO[deed](self)
        if self.app.screen is self and deed not in ("equation", "show"):
            self.to_answer()
        if self.line.value and self.line.value == self.unmended:
            self.line.refused()

    def on_screen_resume(self) -> None:
        """From a dialog the focus goes to the answer, not back to the bar."""
        if self.query_one(ActionBar).has_focus or self.ask.kind == "table":
            self.to_answer()

    def action_bar(self) -> None:
        """From what is being answered to the bar, and back."""
        bar = self.query_one(ActionBar)
        (self.to_answer if bar.has_focus else bar.focus)()

    def action_said(self, step: int) -> None:
        self.query_one(ReplyPane).read_on(step)

    def on_descendant_focus(self) -> None:
        self.show_bar()

    def on_resize(self, event: events.Resize) -> None:
        fit(self, event.size)
        small = is_small(event.size)
        if small and not self.has_class("-small"):
            self.call_after_refresh(self.add, Say("note", offer(event.size)))
        self.set_class(small, "-small")
        self.show_pictures()

    @property
    def line(self) -> LineInput:
        """The line being typed."""
        return self.query_one(LineInput)
