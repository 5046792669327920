"""Which truss is yours? Drawing it up: typed, or clicked on a grid; with what is missing and how it moves."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path
from typing import ClassVar, Literal

from textual import events
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal, Vertical, VerticalScroll
from textual.content import Content
from textual.screen import Screen
from textual.widgets import Static

from tutor.drafting import Answer, Draft, Entry, Join, Put, Refused, fold, lines_of, read, standing
from tutor.drafting.names import free_name
from tutor.drafting.words import exact, from_fraction
from tutor.model import Problem
from tutor.notation import Exact
from tutor.records.kept_lines import KeptLines
from tutor.screens import at_joint, bench_files
from tutor.screens.bench_help import bench_help
from tutor.screens.clean import clean, one_line
from tutor.screens.deeds import Deed
from tutor.screens.dialogs.told import Told
from tutor.screens.inventory import inventory
from tutor.screens.looks import Looks
from tutor.screens.own_deeds import BENCH
from tutor.screens.sketching import grid_for, sketch
from tutor.screens.widgets.action_bar import ActionBar, Asked
from tutor.screens.widgets.line_input import LineInput
from tutor.screens.widgets.paste_line import PasteLine
from tutor.screens.widgets.sketch_pad import JointHit, PlaceHit, SketchPad

NARROW = 60
LOW = 20
WELCOME = (
    "Type joints like A 0 0 B 4 0, or click on the grid; then members like AB. Escape, then n, has "
    "common shapes; escape, then ?, says what can be typed."
)
UNFINISHED = "It cannot be worked yet: {fault}"


@dataclass(frozen=True)
class Drawn:
    """What is to be done with the truss: walked through, or a homework on it checked."""

    deed: Literal["walk", "check"]
    problem: Problem


class WorkbenchScreen(Screen[Drawn | None]):
    """The sheet on which a truss is drawn up. It owns the draft; nothing typed is lost."""

    CSS_PATH = "workbench.tcss"
    BINDINGS: ClassVar[list[BindingType]] = [
        *(
            Binding(d.keys, f"deed('{d.id}')", d.label, show=False, id=f"bench.{d.id}")
            for d in BENCH
        ),
        Binding("escape", "bar", show=False, id="bench.bar"),
        Binding("pageup", "list(-1)", show=False, id="bench.list-up"),
        Binding("pagedown", "list(1)", show=False, id="bench.list-down"),
    ]

    def __init__(self, looks: Looks, kept: KeptLines, draft: Draft | None = None) -> None:
        super().__init__()
        self.looks = looks
        self.kept = kept
        self.draft = Draft() if draft is None else draft
        self.file = bench_files.Opened()
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
        lines = () if self.draft.steps else self.kept.read()
        if lines:
            again = Draft()
            refused = [line for line in lines if not again.type(line).taken]
            self.draft = Draft([tuple(e for step in again.steps for e in step)])
            left_out = f" {len(refused)} kept lines could not be read." if refused else ""
            self.say(f"Here is the truss you drew last; clear takes it away.{left_out}")
        self.query_one("#inventory-scroll", VerticalScroll).border_title = Content("What is there")
        self.query_one(LineInput).focus()
        self.show()

    # What is shown

    def show(self) -> None:
        """Show the drawing as it is now."""
        problem = self.draft.problem
        stands = standing(problem)
        if self.chosen not in problem.joint:
            self.chosen = None
        self.query_one("#inventory", Static).update(
            inventory(problem, stands, self.chosen, self.looks.ascii_only)
        )
        mend = sum(not fault.warning for fault in stands.faults)
        state = "ready" if stands.sound else f"{mend} to mend" if mend else "not ready"
        title = f"Your own truss: {problem.title}  ({state})"
        self.query_one("#bench-title", Static).update(Content(one_line(title)))
        whole = problem.members and problem.supports and not stands.stable
        lit = {name for fault in stands.faults if not fault.warning for name in fault.at}
        self.draw(problem, lit, dict(stands.mechanism) if whole else {})
        self.query_one(ActionBar).offer(self.deeds(), self.query_one(LineInput).has_focus)

    def draw(self, problem: Problem, lit: set[str], motion: dict[str, tuple[float, float]]) -> None:
        grid = grid_for(problem, self.step) if self.gridded else None
        if self.chosen is not None:
            lit = {*lit, self.chosen}
        figure = sketch(problem, lit=lit, motion=motion, grid=grid)
        places = {joint.name: joint.at for joint in problem.joints}
        self.query_one(SketchPad).show(figure, grid, places, self.looks.glyphs)

    def say(self, text: str) -> None:
        """What is answered, below the drawing."""
        self.query_one("#bench-said", Static).update(Content(clean(text)))
        self.query_one("#bench-reply", VerticalScroll).scroll_home(animate=False)

    def answered(self, answer: Answer) -> None:
        """Show what came of a step, and keep the drawing."""
        trouble = self.kept.write(lines_of(self.draft.problem)) if answer.taken else ""
        self.preview = None
        self.say(f"{answer.said} {trouble}".strip())
        self.show()

    def take(self, *entries: Entry) -> None:
        """Take entries that were chosen or clicked."""
        self.chosen = None
        self.answered(self.draft.do(entries))

    # What is typed

    def on_line_input_entered(self, message: LineInput.Entered) -> None:
        message.stop()
        line = self.query_one(LineInput)
        word, _, rest = message.text.strip().partition(" ")
        command = self.TYPED.get(word.lower())
        if command is not None and (rest or word.lower() == "save"):
            if command(self, rest.strip()):
                line.taken()
            return
        answer = self.draft.type(message.text)
        if answer.taken:
            line.taken()
            self.chosen = None
        self.answered(answer)
        if not answer.taken:
            line.mark(answer.span)

    def on_paste_line_typing(self, message: PasteLine.Typing) -> None:
        """The picture goes along while a line is typed."""
        message.stop()
        text = message.text.strip()
        entries = read(self.draft.problem, text) if text else Refused("")
        if isinstance(entries, Refused):
            if self.preview is not None:
                self.preview = None
                self.show()
            return
        self.preview = fold(entries, self.draft.problem)
        new = {e.name for e in entries if isinstance(e, Put)}
        self.draw(self.preview, new, {})

    def on_paste_line_pasted(self, message: PasteLine.Pasted) -> None:
        message.stop()
        text = "; ".join(line.replace("\t", " ") for line in message.lines)
        line = self.query_one(LineInput)
        answer = self.draft.type(text)
        self.answered(answer)
        if not answer.taken:
            line.insert_text_at_cursor(text)

    def on_line_input_said(self, message: LineInput.Said) -> None:
        message.stop()
        self.say(message.text)

    def on_line_input_marks(self, message: LineInput.Marks) -> None:
        message.stop()

    def _grid(self, rest: str) -> bool:
        if rest.lower() in ("on", "off"):
            self.gridded = rest.lower() == "on"
        else:
            size = exact(rest)
            if not isinstance(size, Exact) or size.fraction is None or size.fraction <= 0:
                self.say(f"Read {rest[:30]}: a grid wants its step, like grid 0.5, or grid off.")
                return False
            self.step, self.gridded = size.fraction, True
        self.say("The grid is on." if self.gridded else "The grid is off.")
        self.show()
        return True

    def _open(self, rest: str) -> bool:
        return bench_files.open_file(self, Path(rest))

    def _save(self, rest: str) -> bool:
        bench_files.save(self, rest)
        return True

    TYPED: ClassVar = {"grid": _grid, "open": _open, "save": _save}

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
        name = free_name(self.draft.problem)
        self.take(Put(name, from_fraction(message.x), from_fraction(message.y)))

    # What is done

    def deeds(self) -> tuple[Deed, ...]:
        """What can be done here."""
        return BENCH

    def on_asked(self, message: Asked) -> None:
        message.stop()
        self.action_deed(message.deed)

    def action_deed(self, deed: str) -> None:
        """Do what a key, the bar or the palette asked for."""
        self.query_one(LineInput).focus()
        if deed in ("undo", "redo"):
            self.answered(self.draft.undo() if deed == "undo" else self.draft.redo())
        elif deed == "grid":
            self._grid("off" if self.gridded else "on")
        elif deed == "list":
            self.toggle_class("-list")
        elif deed == "at":
            self._at()
        elif deed == "shape":
            at_joint.ask_shape(self.app, self._shape)
        elif deed == "open":
            bench_files.ask_open(self)
        elif deed == "save":
            bench_files.ask_save(self)
        elif deed == "help":
            self.app.push_screen(Told("Your own truss", bench_help()))
        elif deed == "leave":
            self.dismiss(None)
        else:
            self._use("walk" if deed == "walk" else "check")

    def _at(self) -> None:
        problem = self.draft.problem
        if not problem.joints:
            self.say("There is no joint yet: type one, like A 0 0, or click on the grid.")
        elif self.chosen is not None:
            at_joint.ask_deed(self.app, problem, self.chosen, self.take)
        else:
            at_joint.ask_joint(
                self.app,
                problem,
                lambda joint: at_joint.ask_deed(self.app, problem, joint, self.take),
            )

    def _shape(self, text: str) -> None:
        """Draw a common shape, and leave its line to be changed."""
        line = self.query_one(LineInput)
        self.answered(self.draft.type(text))
        line.value = text
        line.cursor_position = len(text)
        line.focus()

    def _use(self, deed: Literal["walk", "check"]) -> None:
        """Leave with the truss, where it can be worked."""
        problem = self.draft.problem
        stands = standing(problem)
        if stands.sound:
            self.dismiss(Drawn(deed, problem))
            return
        fault = next((f for f in stands.faults if not f.warning), None)
        why = stands.how or stands.count if fault is None else f"{fault.message} {fault.cure}"
        self.say(UNFINISHED.format(fault=why[:1].lower() + why[1:]))

    def action_bar(self) -> None:
        """From the line to the bar and back."""
        bar, line = self.query_one(ActionBar), self.query_one(LineInput)
        (line if bar.has_focus else bar).focus()

    def action_list(self, step: int) -> None:
        self.query_one("#inventory-scroll", VerticalScroll).scroll_relative(
            y=6 * step, animate=False
        )

    def on_descendant_focus(self, event: events.DescendantFocus) -> None:
        self.query_one(ActionBar).offer(BENCH, isinstance(event.widget, LineInput))

    def on_resize(self, event: events.Resize) -> None:
        self.set_class(event.size.width < NARROW, "-narrow")
        self.set_class(event.size.height < LOW, "-low")
