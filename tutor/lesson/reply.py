"""What does the lesson say back, and what does it ask now? Plain data for any front end."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from tutor.judge import Equation, Verdict
from tutor.judge.about import as_text
from tutor.notation import Span

YES = "Yes: "
"""How the answer to a right choice begins."""

Tone = Literal["right", "wrong", "remark", "hint", "note", "shown", "unreadable", "undecided"]


@dataclass(frozen=True)
class Say:
    """One thing said to the student; `span` points into the text just typed.

    `teaches` marks a remark that is about a better way only; a front end may leave it out. `opening`
    is the beginning of the text where it says by itself what kind of thing this is: "Right: ", "Next: ".
    `aloud` is the text for those who hear it, where letters like T are said in words.
    """

    tone: Tone
    text: str
    span: Span | None = None
    teaches: bool = False
    opening: str = ""
    aloud: str = ""

    @classmethod
    def opened(cls, tone: Tone, opening: str, rest: str, heard: str = "") -> Say:
        """What is said behind an opening; `heard` is the rest as it is said aloud, where that differs."""
        aloud = f"{opening}{heard}" if heard else ""
        return cls(tone, f"{opening}{rest}", opening=opening, aloud=aloud)

    @property
    def rest(self) -> str:
        """The text behind its opening."""
        return self.text[len(self.opening) :]

    @property
    def rest_aloud(self) -> str:
        """The same as it is heard."""
        return (self.aloud or self.text)[len(self.opening) :]


@dataclass(frozen=True)
class Reply:
    """The answer to one event. `accepted` is whether it changed where the student is."""

    said: tuple[Say, ...]
    accepted: bool = False
    verdict: Verdict | None = None

    @property
    def text(self) -> str:
        return "\n".join(say.text for say in self.said)


@dataclass(frozen=True)
class Option:
    """One thing that can be chosen: the `key` goes into the event, `words` are for people.

    `about` is the equation, where one is chosen; `option_of` makes its key.
    """

    key: str
    words: str
    chosen: bool = False
    about: Equation | None = None


def option_of(about: Equation, words: str, chosen: Equation | None = None) -> Option:
    """The choice of an equation, of which `chosen` is the one that is chosen already."""
    return Option(as_text(about), words, about == chosen, about)


AskKind = Literal[
    "reasons",
    "count",
    "soundness",
    "loose",
    "halves",
    "shares",
    "support",
    "sense",
    "turning",
    "line",
    "joint",
    "joint-line",
    "close",
    "table",
]


LINES: frozenset[AskKind] = frozenset({"line", "joint-line", "close"})
"""The kinds of questions that a line of an equation answers."""

TYPED: frozenset[AskKind] = LINES | {"shares"}
"""The kinds of questions that a typed line answers."""

TICKED: frozenset[AskKind] = frozenset({"reasons", "halves", "support", "loose"})
"""The kinds of questions that any number of options answer."""


@dataclass(frozen=True)
class Ask:
    """What is asked now.

    `kind` says which event answers it: "reasons", "halves", "support" and "loose" by any number of
    options, "count" by three whole numbers, "sense", "turning" and "joint" by one option, "line",
    "joint-line", "close" and "shares" by typing. `subject` is the joint or unknown asked about, `about` the equation chosen;
    `caution` is what the question ends in where it has to be said.
    """

    step: str
    kind: AskKind
    title: str
    question: str
    options: tuple[Option, ...] = ()
    subject: str | None = None
    about: Equation | None = None
    caution: str = ""

    @property
    def alone(self) -> str:
        """The question without its caution."""
        return self.question[: len(self.question) - len(self.caution)].rstrip()
