"""Which truss is yours? Drawing it up: typed, or clicked on a grid; with what is missing and how it moves."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from pathlib import Path
from typing import ClassVar

from textual import events
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal, Vertical, VerticalScroll
from textual.content import Content
from textual.screen import Screen
from textual.widgets import Static

from tutor.board import Board
from tutor.drafting import (
    DraftAnswer,
    Entry,
    Join,
    LineRefused,
    Put,
    applied,
    fold,
    read,
    soundness_of,
    statement_of,
)
from tutor.drafting.names import free_name
from tutor.drafting.words import from_fraction
from tutor.model import Problem
from tutor.screens import bench_deeds, bench_files
from tutor.screens.bench_deeds import Drawn
from tutor.screens.bound import bindings
from tutor.screens.clean import one_line
from tutor.screens.deeds import Deed
from tutor.screens.inventory import inventory
from tutor.screens.line_and_bar import answer, change_over, offer
from tutor.screens.looks import Looks
from tutor.screens.own_deeds import BENCH
from tutor.screens.sketching import Grid, grid_for, sketch
from tutor.screens.widgets.action_bar import ActionBar, DeedAsked
from tutor.screens.widgets.line_input import LineInput
from tutor.screens.widgets.paste_line import PasteLine
from tutor.screens.widgets.sketch_pad import JointDragged, JointHit, PlaceHit, SketchPad

WELCOME = (
    "Type joints like A 0 0 B 4 0, or click on the grid; then members like AB. Escape, then n, has "
    "common shapes; escape, then ?, says what can be typed."
)
WIDTHS = [(0, "-narrow"), (64, "-usual")]
HEIGHTS = [(0, "-low"), (20, "-high")]


class WorkbenchScreen(Screen[None]):
    """The sheet on which a truss is drawn up. It owns the draft; nothing typed is lost.

    `use` is told what is to be done with a truss that can be worked; the sheet stays below that.
    """

    CSS_PATH = "workbench.tcss"
    HORIZONTAL_BREAKPOINTS = WIDTHS
    VERTICAL_BREAKPOINTS = HEIGHTS
    BINDINGS: ClassVar[list[BindingType]] = [
        *bindings(BENCH, "bench"),
        Binding("pageup", "list(-1)", show=False, id="bench.list-up"),
        Binding("pagedown", "list(1)", show=False, id="bench.list-down"),
    ]

    def __init__(
        self,
        looks: Looks,
        board: Board,
        use: Callable[[Drawn], object],
        path: Path | None = None,
    ) -> None:
        super().__init__()
        self.looks = looks
        self.board = board
        self.use = use
        self.path = path
        self.chosen: str | None = None
        self.step: Fraction | None = None
        self.gridded = True
        self.preview: Problem | None = None

    def compose(self) -> ComposeResult:
        yield Static(id="bench-title")
        with Horizontal(id="bench-middle"):
            yield SketchPad(id="pad")
            with VerticalScroll(id="inventory-scroll", can_focus=False):
                yield Static(id="inventory")
        with Vertical(id="bench-lower"):
            with VerticalScroll(id="bench-reply", can_focus=False):
                yield Static(Content(WELCOME), id="bench-said")
            with Horizontal(id="bench-typing"):
                yield Static(Content("> " if self.looks.ascii_only else "› "), id="bench-prompt")
                yield PasteLine(id="line")
        yield ActionBar(id="actions")

    def on_mount(self) -> None:
        self.query_one("#inventory-scroll", VerticalScroll).border_title = Content("What is there")
        self.query_one(LineInput).focus()
        count, refused = self.board.again()
        told = [f"{refused} kept lines could not be read."] if refused else []
        told += self.board.news()
        if count:
            told.insert(0, "Here is the truss you drew last; clear takes it away.")
        if told:
            self.say(" ".join(told))
        self.show()
        if self.path is not None:
            bench_files.open_named(self, str(self.path))

    # What is shown

    def show(self) -> None:
        """Show the drawing as it is now."""
        problem = self.board.problem
        stands = soundness_of(problem)
        if self.chosen not in problem.joint:
            self.chosen = None
        self.query_one("#inventory", Static).update(
            inventory(problem, stands, self.chosen, self.looks.ascii_only)
        )
        mend = sum(not fault.warning for fault in stands.faults)
        state = "ready" if stands.sound else f"{mend} to mend" if mend else "not ready"
        title = f"Your own truss: {problem.title}  ({state})"
        self.query_one("#bench-title", Static).update(Content(one_line(title)))
        whole = problem.members and problem.supports and stands.stable is False
        lit = {name for fault in stands.faults if not fault.warning for name in fault.at}
        self.draw(problem, lit, dict(stands.mechanism) if whole else {})
        offer(self, BENCH)

    def draw(
        self,
        problem: Problem,
        lit: set[str],
        motion: dict[str, tuple[float, float]],
        grid: Grid | None = None,
    ) -> None:
        """Show a truss on this grid, or on one that fits it."""
        if grid is None and self.gridded:
            grid = grid_for(problem, self.step)
        if self.chosen is not None:
            lit = {*lit, self.chosen}
        figure = sketch(problem, lit=lit, motion=motion, grid=grid)
        places = {joint.name: joint.at for joint in problem.joints}
        pad = self.query_one(SketchPad)
        pad.show(figure, grid, places, self.looks.glyphs)
        pad.name_grid(problem.length)

    def say(self, text: str) -> None:
        """What is answered, below the drawing."""
        answer(self, "bench-said", text)

    def answered(self, answer: DraftAnswer) -> None:
        """Show what came of a step."""
        self.took(answer.said)

    def took(self, said: str) -> None:
        """Show the drawing with what is said of it."""
        self.preview = None
        self.say(said)
        self.show()

    def take(self, *entries: Entry) -> None:
        """Take entries that were chosen or clicked."""
        self.chosen = None
        self.answered(self.board.kept_after(self.board.draft.do(entries)))

    # What is typed

    def on_line_input_entered(self, message: LineInput.Entered) -> None:
        message.stop()
        line = self.query_one(PasteLine)
        word, _, rest = message.text.strip().partition(" ")
        command = bench_deeds.TYPED.get(word.lower())
        if command is not None and (rest or word.lower() == "save"):
            if command(self, rest.strip()):
                line.taken()
            return
        answer = self.board.type(message.text)
        if answer.taken:
            line.taken()
            self.chosen = None
        self.answered(answer)
        if not answer.taken:
            line.mark(answer.span)
            line.refused()

    def on_paste_line_typing(self, message: PasteLine.Typing) -> None:
        """The picture goes along while a line is typed."""
        message.stop()
        text = message.text.strip()
        entries = read(self.board.problem, text) if text else LineRefused("")
        if isinstance(entries, LineRefused):
            if self.preview is not None:
                self.preview = None
                self.show()
            return
        self.preview = fold(entries, self.board.problem)
        new = {e.name for e in entries if isinstance(e, Put)}
        self.draw(self.preview, new, {})

    def on_paste_line_pasted(self, message: PasteLine.Pasted) -> None:
        message.stop()
        text = "; ".join(filter(None, map(statement_of, message.lines)))
        line = self.query_one(LineInput)
        answer = self.board.type(text)
        self.answered(answer)
        if not answer.taken:
            line.insert_text_at_cursor(text)

    def on_line_input_said(self, message: LineInput.Said) -> None:
        self.say(message.text)

    # What is clicked

    def on_joint_hit(self, message: JointHit) -> None:
        message.stop()
        if self.chosen is None or self.chosen == message.joint:
            self.chosen = None if self.chosen else message.joint
            if self.chosen:
                self.say(
                    f"Joint {self.chosen} is chosen: click another one for a member, or use the bar."
                )
            self.show()
            return
        start, self.chosen = self.chosen, None
        self.take(Join(start, message.joint))

    def on_place_hit(self, message: PlaceHit) -> None:
        message.stop()
        self.chosen = None
        name = free_name(self.board.problem)
        self.take(Put(name, from_fraction(message.x), from_fraction(message.y)))

    def on_joint_dragged(self, message: JointDragged) -> None:
        """A joint goes along with the mouse, and stays where it is let go."""
        message.stop()
        put = Put(message.joint, from_fraction(message.x), from_fraction(message.y))
        moved = applied(self.board.problem, put)
        taken = [j.name for j in moved.joints if j.at == moved.joint[put.name].at]
        if not message.done:
            self.draw(moved, {put.name}, {}, self.query_one(SketchPad).grid)
        elif len(taken) > 1:
            other = next(name for name in taken if name != put.name)
            self.took(f"Joint {other} is there already, so {put.name} stays where it was.")
        elif moved == self.board.problem:
            self.show()
        else:
            self.take(put)

    # What is done

    def deeds(self) -> tuple[Deed, ...]:
        """What can be done here."""
        return BENCH

    def on_deed_asked(self, message: DeedAsked) -> None:
        message.stop()
        self.action_deed(message.deed)

    def action_deed(self, deed: str) -> None:
        """Do what a key, the bar or the palette asked for."""
        self.query_one(LineInput).focus()
        bench_deeds.DO[deed](self)

    def next_view(self) -> None:
        """In a narrow window, the list in the place of the picture, and back."""
        self.toggle_class("-list")

    def leave_in_line(self, text: str) -> None:
        """Put a line that was entered back to be changed."""
        line = self.query_one(LineInput)
        line.value = text
        line.cursor_position = len(text)
        line.focus()

    def action_bar(self) -> None:
        change_over(self)

    def action_list(self, step: int) -> None:
        self.query_one("#inventory-scroll", VerticalScroll).scroll_relative(
            y=6 * step, animate=False
        )

    def on_descendant_focus(self, event: events.DescendantFocus) -> None:
        offer(self, BENCH)
