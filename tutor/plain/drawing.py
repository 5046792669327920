"""How is one's own truss drawn up line by line: entered, looked at, opened, saved, and worked on?"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path

from tutor.board import Board
from tutor.deeds.deed import Way
from tutor.drafting import drawable, rows, soundness_of
from tutor.drafting.telling import told_of
from tutor.figure import to_words, truss_figure
from tutor.model import Problem
from tutor.model.source import file_name
from tutor.plain.voice import Voice

OPENING = (
    "Your own truss: enter joints, members, supports and loads, like A 0 0  B 4 0  C 2 3/2, then "
    "AB BC CA, then A pin  B roller, then C 12 down. Type help to hear what can be typed."
)
GOES_ON = "You drew this before; clear takes it away."
EXAMPLES = (
    "A 0 0  B 4 0  C 2 3/2: joints, each a name, x to the right and y up; a name again moves it.",
    "AB BC CA: members, several at once; ABCD is AB, BC and CD; longer names: U1-L2.",
    "A pin, B roller, B roller 150, C link -1 4: supports; 150 is the push, in degrees from +x.",
    "C 12 down 3 right, C 5 at 210: loads. spread 2 down AB BC: a load along members.",
    "kN m: the units. title Lamp arm: what it is called.",
    "Warren span 12 height 3 panels 4 load 10: a common shape; also Pratt, Howe, Fink, king post, "
    "queen post and cantilever.",
    "D 3 right of A, D 4 above B, D 5 at 30 from A, D 5 from A 4 from B, D middle of AB: a place "
    "from other joints.",
    "move D 7 1, move D by 1 0, copy B C D by 4 0, copy load C to D, mirror, mirror about C, flip.",
    "drop C, drop AB, drop load C, rename A U1, clear, undo, redo.",
)
"""What is said of the mouse, which there is none of here."""
NOT_YET = "It cannot be worked yet."
READY = "It is ready: type homework or lesson."

Said = tuple[str, ...]


class DrawingTalk:
    """One truss being drawn up as a conversation: `listen` until it is worked on or left."""

    def __init__(self, voice: Voice, board: Board, log: Path | None = None) -> None:
        self.voice = voice
        self.board = board
        self.log = log

    @property
    def problem(self) -> Problem:
        """The truss as it is now; it may lack anything."""
        return self.board.problem

    def listen(self, path: Path | None = None) -> Way:
        """Answer line after line, with the truss of a file first; the end of the input is the way out."""
        self.voice.say((OPENING,))
        again = self._again()
        self.voice.say(again if path is None else self.open(str(path)))
        return self.voice.converse(self._answer, "out", self.log)

    def _again(self) -> Said:
        """The drawing that was kept, as one step."""
        count, refused = self.board.again()
        news = tuple(f"Note: {notice}" for notice in self.board.news())
        if not count or not self.problem.joints:
            return news
        left_out = (f"{refused} kept lines could not be read.",) if refused else ()
        return (GOES_ON, *left_out, *news, *self.stands())

    def _answer(self, text: str) -> Way | None:
        word, _, rest = text.strip().partition(" ")
        found = BY_WORD.get(word.lower())
        if found is not None and (found.takes or not rest.strip()):
            said = found.run(self, rest.strip())
            if not isinstance(said, tuple):
                return said
            self.voice.say(said)
        elif text.strip():
            self.voice.say(self.enter(text))
        return None

    def enter(self, text: str) -> Said:
        """Take a typed line, wholly or not at all, and keep the drawing."""
        answer = self.board.type(text)
        if not answer.taken:
            return (f"Cannot read: {answer.what}",)
        return (answer.said, self._short())

    def stands(self) -> Said:
        """What is missing or wrong, and whether it holds."""
        found = soundness_of(self.problem)
        said = [f"{fault.message} {fault.typed}" for fault in found.faults]
        said += [text for text in (found.count, found.how) if text]
        return (*said, READY if found.sound else NOT_YET)

    def _short(self) -> str:
        """How it stands in one sentence, for after each line."""
        found = soundness_of(self.problem)
        if found.sound:
            return f"Ready: {found.count}"
        left = sum(not fault.warning for fault in found.faults)
        if left:
            return f"Not ready: {left} to mend; type standing to hear what."
        return f"Not ready: {found.how or found.count}"

    def rows(self) -> Said:
        return tuple(f"{row.kind} {row.text}" for row in rows(self.problem)) or ("Nothing yet.",)

    def figure(self) -> Said:
        """The truss in words."""
        sketch = drawable(self.problem)
        return to_words(truss_figure(sketch)) if sketch.members else self.rows()

    def open(self, name: str) -> Said:
        """Put the truss of a file in the place of what is there; undo brings that back."""
        if not name:
            return ("Name the file as well, like open arm.toml.",)
        opened, trouble = self.board.open(name)
        if opened.origin is None:
            told = tuple(str(defect) for defect in opened.defects)
            return ("Not opened:", *told) if told else (f"Not opened: {opened.said}",)
        return (told_of(self.problem), *((trouble,) if trouble else ()), self._short())

    def save(self, name: str) -> Said:
        """Write a problem file: a new one, or without a name over the one it is from."""
        word, _, rest = name.partition(" ")
        over = word.lower() == "over" and bool(rest.strip())
        outcome = self.board.save(rest.strip() if over else name, over=over)
        if outcome.over is not None:
            cure = f"Type save over {name or file_name(outcome.over)}, or choose another name."
            return (f"Not saved yet: {outcome.said}", cure)
        if outcome.origin is None:
            return (outcome.said,)
        ready = soundness_of(self.problem).sound
        return (outcome.said,) if ready else (outcome.said, f"{NOT_YET} Type standing to hear why.")

    def go(self, way: Way) -> Way | Said:
        """To the lesson or the homework on this truss, once it can be worked."""
        return way if soundness_of(self.problem).sound else self.stands()


@dataclass(frozen=True)
class DrawingWord:
    """A word that steers a drawing: what it answers to, how it is typed, what it does."""

    words: tuple[str, ...]
    typed: str
    does: str
    run: Callable[[DrawingTalk, str], Said | Way]
    takes: bool = False


def _help(drawing: DrawingTalk, rest: str) -> Said:
    return (*EXAMPLES, *(f"{each.typed}: {each.does}" for each in WORDS))


WORDS: tuple[DrawingWord, ...] = (
    DrawingWord(
        ("standing", "check"), "standing", "says what is missing.", lambda d, _: d.stands()
    ),
    DrawingWord(("rows", "list"), "rows", "says everything that is there.", lambda d, _: d.rows()),
    DrawingWord(("figure", "truss"), "figure", "says the truss in words.", lambda d, _: d.figure()),
    DrawingWord(
        ("open",), "open arm.toml", "opens a problem file.", lambda d, n: d.open(n), takes=True
    ),
    DrawingWord(
        ("save",),
        "save arm.toml",
        "writes a problem file; save alone writes over the one that was opened.",
        lambda d, name: d.save(name),
        takes=True,
    ),
    DrawingWord(
        ("homework",), "homework", "checks work on this truss.", lambda d, _: d.go("homework")
    ),
    DrawingWord(("lesson",), "lesson", "goes through this truss.", lambda d, _: d.go("lesson")),
    DrawingWord(
        ("problems",), "problems", "goes to the list of problems.", lambda _, __: "problems"
    ),
    DrawingWord(
        ("leave", "quit", "exit", "bye"), "leave", "ends; all is kept.", lambda _, __: "out"
    ),
    DrawingWord(("help", "?"), "help", "says these words.", _help),
)

BY_WORD: Mapping[str, DrawingWord] = {word: each for each in WORDS for word in each.words}
