"""Where does the answer go? To options, counts, an arrow or a line, whichever is asked for."""

from __future__ import annotations

from textual.app import ComposeResult
from textual.containers import Container, Vertical, VerticalScroll
from textual.content import Content
from textual.widgets import Static

from tutor.lesson import Ask, State
from tutor.lesson.reply import TICKED, TYPED
from tutor.screens import answers
from tutor.screens.widgets.choices import Choices, OneOption
from tutor.screens.widgets.choices_by_line import ChoicesByLine
from tutor.screens.widgets.counts import Counts
from tutor.screens.widgets.line_input import LineInput
from tutor.screens.widgets.sense_picker import SensePicker

COUNTED = (
    OneOption("m", "members m"),
    OneOption("r", "reactions r"),
    OneOption("2j", "equations 2j"),
)
NOT_CHOSEN = frozenset({"count", "sense"})


class AnswerPane(Vertical):
    """The parts that take an answer; only those that fit what is asked are shown.

    The line is always there, since every deed is a word that can be typed in it.
    """

    def __init__(self, prompt: str, *, id: str | None = None) -> None:
        super().__init__(id=id)
        self.prompt = prompt
        self._asked: tuple[str, str | None] | None = None

    def compose(self) -> ComposeResult:
        with VerticalScroll(id="choices-scroll", can_focus=False):
            yield ChoicesByLine(id="choices")
        yield Counts(COUNTED, id="counts")
        yield SensePicker(id="sense")
        with Container(id="typing"):
            yield Static(Content(self.prompt), id="prompt")
            yield LineInput(id="line")
            yield Static(Content("│"), id="edge")
            yield Static(id="caret")

    def show(self, ask: Ask, state: State) -> None:
        """Show what takes the answer, and go to it when the question is another than before."""
        kind = ask.kind
        again = self._asked == (kind, ask.subject)
        self._asked = (kind, ask.subject)
        choosing = bool(ask.options) and kind not in NOT_CHOSEN
        self.query_one("#choices-scroll").display = choosing
        self.query_one(Counts).display = kind == "count"
        self.query_one(SensePicker).display = kind == "sense"
        typing = self.query_one("#typing")
        typing.display = kind != "table"
        typing.set_class(kind not in TYPED, "-beside")
        if choosing:
            offered = answers.choices(ask)
            choices = self.query_one(ChoicesByLine)
            choices.at_once = kind in TYPED
            choices.offer(offered, several=kind in TICKED, again=again)
        if not again:
            if kind == "sense":
                self.query_one(SensePicker).offer(answers.ways(state, ask))
            self.to_answer(kind)

    def to_answer(self, kind: str) -> None:
        """Put the focus where the answer to this kind of question goes."""
        if kind in TYPED:
            self.query_one(LineInput).focus()
        elif kind == "count":
            self.query_one(Counts).start()
        elif kind == "sense":
            self.query_one(SensePicker).focus()
        elif kind != "table":
            self.query_one(Choices).focus()

    def on_choices_by_line_begun(self, message: ChoicesByLine.Begun) -> None:
        """What was typed among the options goes on as a line."""
        message.stop()
        self.query_one(LineInput).go_on_with(message.text)

    def on_line_input_emptied(self, message: LineInput.Emptied) -> None:
        """With nothing in the line, keys go to what is asked again."""
        message.stop()
        if self._asked is not None and self._asked[0] not in TYPED:
            self.to_answer(self._asked[0])

    def on_line_input_marks(self, message: LineInput.Marks) -> None:
        """Carets below the marked stretch of the line."""
        message.stop()
        row = "" if message.cells is None else " " * message.cells[0] + "^" * message.cells[1]
        self.query_one("#caret", Static).update(Content.styled(row, "bold $strong"))
