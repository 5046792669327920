"""How is a homework checked line by line: entered, checked, hinted at, and its report saved?"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from tutor.deeds.deed import Way
from tutor.figure import to_words, truss_figure
from tutor.homework import Finding, Review, Written, hint
from tutor.homework.words import headline
from tutor.model import Problem
from tutor.model.caution import CAUTION
from tutor.model.source import file_name
from tutor.plain.voice import Voice
from tutor.workbook import Workbook

OPENING = (
    "Homework: enter what is on your paper, like AB = 7.5 C, or paste a table; then type check. "
    "Nothing is judged before that, and no right value is told. Type help to hear what can be typed."
)
EXAMPLES = (
    "AB = 7.5 C, A_x = 3 left: values, as many in a line as you like; a row AB, 7.5, C of a table "
    "does as well. AB = takes a value off.",
    "ΣFx at C: 3/5 F_AC - 12 = 0: a line with its heading. After joint C, on a line by itself, "
    "ΣFx: and ΣFy: are of that joint; after whole, of the whole truss.",
    "draw A_x left, push AB, pull AB: how you drew an arrow, where it matters to a plain number.",
    "order C D E: the joints in the order in which you took them.",
    "strike 2: takes line 2 off.",
)
HINT_NAMES = ("Reason", "Place", "Line")
NO_HINT = "There is nothing to hint at: nothing that was checked is wrong."
NOTHING = "There is nothing to check yet; enter a value or a line first."
KEPT = "What you entered is kept, and comes up again with this truss."
GOES_ON = "You entered this before; clear takes it all off."


class Check:
    """One homework as a conversation: `listen` until the student goes elsewhere."""

    def __init__(self, voice: Voice, book: Workbook, log: Path | None = None) -> None:
        self.voice = voice
        self.book = book
        self.log = log

    def listen(self) -> Way:
        """Answer line after line; the end of the input is the way out."""
        self.voice.say(self.book.news())
        self.voice.say((OPENING,))
        if not self.book.paper.blank:
            self.voice.say((GOES_ON, *self.paper()))
        return self.voice.converse(self._answer, "out", self.log)

    def _answer(self, text: str) -> Way | None:
        word, _, rest = text.strip().partition(" ")
        found = BY_WORD.get(word.lower())
        if found is not None and (found.takes or not rest.strip()):
            said = found.run(self, rest.strip())
            if isinstance(said, tuple):
                self.voice.say(said)
                self.voice.say(self.book.news())
                return None
            return said
        self.voice.say(written_lines(self.book.write(text)))
        self.voice.say(self.book.news())
        return None

    def check(self) -> tuple[str, ...]:
        """The outcome of the check."""
        if self.book.paper.blank:
            return (NOTHING,)
        return (*check_lines(self.book.review), CAUTION)

    def hint(self) -> tuple[str, ...]:
        """The next hint for the first wrong place."""
        if self.book.paper.blank:
            return (NOTHING,)
        given = self.book.hint()
        if given is None:
            return (NO_HINT,)
        name = HINT_NAMES[given.level - 1]
        return tuple(f"Hint, {name.lower()}: {line}" for line in given.lines)

    def walk(self) -> tuple[str, ...] | Way:
        """To the first wrong place, with what is right on the paper given."""
        if self.book.paper.blank:
            return (NOTHING,)
        return (NO_HINT,) if self.book.review.first is None else "walk"

    def undo(self) -> tuple[str, ...]:
        if not self.book.undo():
            return ("There is nothing to take back.",)
        return ("Taken back.", *self.paper())

    def clear(self) -> tuple[str, ...]:
        self.book.clear()
        return ("The paper is blank; undo brings the old one back.",)

    def paper(self) -> tuple[str, ...]:
        return self.book.paper.shown(self.book.problem)

    def bodies(self) -> tuple[str, ...]:
        """Which joints close with the values entered."""
        return (*(closure.said for closure in self.book.review.closures), CAUTION)

    def save(self, name: str) -> tuple[str, ...]:
        if not name:
            return ("Name the file as well, like save homework.md.",)
        word, _, rest = name.partition(" ")
        over = word.lower() == "over" and bool(rest.strip())
        file = rest.strip() if over else name
        outcome = self.book.save_report(file, datetime.now().astimezone(), over=over)
        if outcome.over is not None:
            cure = f"Type save over {file}, or choose another name."
            return (f"Not saved yet: {outcome.said}", cure)
        if outcome.path is None:
            return (f"Not saved: {outcome.said}",)
        return (f"Saved in {file_name(file)}. The picture of the truss is beside it.",)


@dataclass(frozen=True)
class CheckingWord:
    """A word that steers a check: what it answers to, how it is typed, what it does."""

    words: tuple[str, ...]
    typed: str
    does: str
    run: Callable[[Check, str], tuple[str, ...] | Way]
    takes: bool = False


def written_lines(written: Written) -> Iterator[str]:
    """What came of a typed line."""
    if written.noted:
        yield f"Noted: {'; '.join(written.noted)}."
    for refused in written.refused:
        yield f"Cannot read: {refused.message}"


def check_lines(review: Review) -> Iterator[str]:
    """The outcome of a review: in a sentence, entry by entry, and what kind of mistake it shows."""
    undecided = any(finding.undecided for finding in review.findings)
    right = review.right and not review.refused and not undecided
    yield f"{'Right' if right else 'Checked'}: {headline(review)}"
    for state, words in STATES.items():
        names = [_name(found) for found in review.findings if _state(found) == state]
        if names and not (state == "right" and review.right):
            yield f"{words}: {', '.join(names)}."
    look = hint(review, "look")
    if look:
        yield f"Hint, look: {look}"
        yield "Type hint for more."


STATES: Mapping[str, str] = {
    "right": "Right so far",
    "wrong": "Wrong",
    "follows": "Wrong only because of what came before",
    "unchecked": "Not checked",
    "undecided": "Not decided",
}


def _state(finding: Finding) -> str:
    return "undecided" if finding.undecided else finding.state


def _name(found: Finding) -> str:
    name = f"line {found.name + 1}" if isinstance(found.name, int) else found.name
    if found.stands:
        return f"{name} (its equation is right, the value behind it is not)"
    if found.state in ("wrong", "follows") and found.sure != "certain":
        cause = "cause " if (found.state, found.sure) == ("wrong", "likely") else ""
        return f"{name} ({cause}{SURE[found.sure]})"
    return name


SURE = {"likely": "likely", "unclear": "how it came about is not clear"}


def truss_lines(problem: Problem) -> tuple[str, ...]:
    """The truss in words."""
    return (f"Problem: {problem.title}.", *to_words(truss_figure(problem))[1:])


def _help(check: Check, rest: str) -> tuple[str, ...]:
    return (*EXAMPLES, *(f"{each.typed}: {each.does}" for each in WORDS))


WORDS: tuple[CheckingWord, ...] = (
    CheckingWord(
        ("check",),
        "check",
        "says what is right, and where it goes wrong first.",
        lambda c, _: c.check(),
    ),
    CheckingWord(
        ("hint",),
        "hint",
        "gives the next hint for that place; the last one is the line itself.",
        lambda c, _: c.hint(),
    ),
    CheckingWord(
        ("walk",),
        "walk",
        "works that place line by line in a lesson, with what is right on your paper given.",
        lambda c, _: c.walk(),
    ),
    CheckingWord(
        ("bodies", "joints"),
        "bodies",
        "says which joints close with your values.",
        lambda c, _: c.bodies(),
    ),
    CheckingWord(("paper", "work"), "paper", "says what you entered.", lambda c, _: c.paper()),
    CheckingWord(("undo",), "undo", "takes the last entry back.", lambda c, _: c.undo()),
    CheckingWord(("clear",), "clear", "takes everything off the paper.", lambda c, _: c.clear()),
    CheckingWord(
        ("save",),
        "save NAME.md",
        "writes the report of the check into a file, and the picture of the truss beside it.",
        lambda c, rest: c.save(rest),
        takes=True,
    ),
    CheckingWord(
        ("truss", "problem", "figure"),
        "truss",
        "says the truss again.",
        lambda c, _: truss_lines(c.book.problem),
    ),
    CheckingWord(("draw",), "draw", "goes to the sheet of your own truss.", lambda _, __: "draw"),
    CheckingWord(
        ("lesson",), "lesson", "goes to the lesson on this truss.", lambda _, __: "lesson"
    ),
    CheckingWord(
        ("problems",),
        "problems",
        "goes to the list of problems; all is kept.",
        lambda _, __: "problems",
    ),
    CheckingWord(
        ("leave", "quit", "exit", "bye"), "leave", "ends; all is kept.", lambda _, __: "out"
    ),
    CheckingWord(("help", "?"), "help", "says these words.", _help),
)

BY_WORD: Mapping[str, CheckingWord] = {word: each for each in WORDS for word in each.words}
