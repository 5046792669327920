"""Which words steer a lesson, and what does each do? `COMMANDS` is the one table of them."""

from __future__ import annotations

import difflib
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from tutor.deeds import board, runs
from tutor.deeds.deed import Begin, Deed, Do, Go, Show, Tell
from tutor.deeds.equations import ACROSS, WHICH_WAY, Run, about_a_point, by_word
from tutor.lesson import Lesson

Takes = Literal[
    "joint",
    "member",
    "reaction",
    "unknown",
    "rule",
    "letter",
    "step",
    "switch",
    "word",
    "beginning",
]
"""What may stand behind a word, for completing it."""


@dataclass(frozen=True)
class Command:
    """A command: the words it answers to, how it is typed, what it does.

    `run` gets what stands after the word; it returns None where that makes no sense for it, and
    the line is then taken for something else. `takes` are the kinds of names that may follow.
    """

    words: tuple[str, ...]
    typed: str
    does: str
    run: Run
    takes: tuple[Takes, ...] = ()


def command(lesson: Lesson, text: str) -> Deed | None:
    """The deed of a command, or None where `text` is none."""
    first, rest = _parted(text)
    found = BY_WORD.get(first.lower())
    return None if found is None else found.run(lesson, rest)


def first_word(text: str) -> str:
    """The word that `command` goes by, in small letters."""
    return _parted(text)[0].lower()


def _parted(text: str) -> tuple[str, str]:
    """The first word of a text, and what stands after it."""
    first, _, rest = text.strip().rstrip(".:").partition(" ")
    return first, rest.strip().strip("{}")


def nearest(text: str) -> str | None:
    """The command that a mistyped one was most likely meant to be."""
    first = text.strip().lower().partition(" ")[0]
    close = difflib.get_close_matches(first[:20], list(BY_WORD), n=1, cutoff=0.7)
    return close[0] if close else None


def _help(lesson: Lesson, rest: str) -> Deed | None:
    if rest:
        found = BY_WORD.get(rest.lower())
        return None if found is None else Tell((f"{found.typed}: {found.does}",))
    return Show("help")


COMMANDS: tuple[Command, ...] = (
    Command(("ask", "question"), "ask", "says what is asked.", runs.shows("question")),
    Command(("again",), "again", "says the last verdict and hint again.", runs.shows("last")),
    Command(
        ("where",), "where", "says where you are and what you are writing.", runs.shows("where")
    ),
    Command(
        ("figure", "drawing", "picture"),
        "figure, or figure C",
        "says what the figure shows now, or joint C cut free.",
        runs.figure,
        ("joint",),
    ),
    Command(
        ("large",),
        "large",
        "shows the picture as large as the window; line by line, says it.",
        runs.shows("large"),
    ),
    Command(
        ("truss", "story", "problem", "given", "coordinates", "supports"),
        "truss",
        "says the problem again, with what is given.",
        runs.shows("truss"),
    ),
    Command(("x", "fx", "f_x"), "x", "chooses ΣFx.", by_word("x")),
    Command(("y", "fy", "f_y"), "y", "chooses ΣFy.", by_word("y")),
    Command(
        ("moment", "moments", "about"),
        "moment A, or moment 4, 0",
        "chooses ΣM about a joint or a point.",
        about_a_point,
        ("joint",),
    ),
    Command(
        ("along",),
        "along AC, or along 30",
        "chooses the sum along a member, or in degrees from +x.",
        by_word("along", WHICH_WAY),
        ("member",),
    ),
    Command(
        ("across",),
        "across AC",
        "chooses the sum perpendicular to a member.",
        by_word("across", ACROSS),
        ("member",),
    ),
    Command(("equation", "equations"), "equation", "says which can be chosen.", runs.equation),
    Command(
        ("arm",),
        "arm B_y",
        "says where the arm of a force runs; arm alone, that of the force a hint has named.",
        runs.arm,
        ("unknown",),
    ),
    Command(
        ("value",),
        "value AB",
        "says that the next line is the value of AB.",
        runs.value,
        ("unknown",),
    ),
    Command(
        ("joint",), "joint C", "goes to a joint; leave joint goes back.", runs.joint, ("joint",)
    ),
    Command(
        ("draw",), "draw A_x left", "draws the arrow of a reaction.", runs.reaction, ("reaction",)
    ),
    Command(
        ("pull",), "pull AC", "draws a member pulling on its joints.", runs.drawn("T"), ("member",)
    ),
    Command(
        ("push",), "push AC", "draws a member pushing on its joints.", runs.drawn("C"), ("member",)
    ),
    Command(
        ("assume",),
        "assume AC C, or assume AC T",
        "draws a member pushing (C) or pulling (T) on its joints.",
        runs.assume,
        ("member", "letter"),
    ),
    Command(
        ("zero",),
        "zero AB two",
        "says that a member is zero, and by which rule.",
        runs.zero,
        ("member", "rule"),
    ),
    Command(
        ("keep",),
        "keep",
        "keeps a line as what it is true of.",
        runs.alone(lambda x: Do("keep", {})),
    ),
    Command(
        ("done",), "done", "hands in what is ticked, where there are boxes.", runs.alone(runs.done)
    ),
    Command(
        ("section", "cut"),
        "section BC CG FG keep A",
        "cuts members and keeps the part with a joint; leave section goes back.",
        board.section,
        ("member", "member", "member"),
    ),
    Command(
        ("watch", "show"),
        "watch, or watch until joints",
        "has the next thing written with its reason, as at the board, or all up to a step.",
        board.show,
    ),
    Command(
        ("begin",),
        "begin, or begin half",
        "has the first steps written as offered, or up to a place: watch, reactions, joints, half; the "
        "rest is yours.",
        board.begin,
        ("beginning",),
    ),
    Command(
        ("alone",), "alone", "declines that: all is yours.", runs.alone(lambda x: Begin("alone"))
    ),
    Command(
        ("guess",),
        "guess A",
        "guesses what comes next; the guess is answered.",
        board.guess,
    ),
    Command(("hint",), "hint", "gives the next hint.", runs.alone(lambda x: Do("hint", {}))),
    Command(("undo",), "undo", "takes the last thing back.", runs.alone(lambda x: Do("undo", {}))),
    Command(
        ("practice",),
        "practice",
        "opens the smaller problem that was offered.",
        runs.alone(runs.practice),
    ),
    Command(
        ("remarks", "remark"),
        "remarks off, or remarks on",
        "leaves out or brings back remarks on an easier way.",
        runs.remarks,
        ("switch",),
    ),
    Command(
        ("guide",),
        "guide off, or guide on",
        "leaves out or brings back what comes next, what stands first, and what you can do.",
        runs.guide,
        ("switch",),
    ),
    Command(
        ("lines",),
        "lines",
        "says the lines that stand.",
        runs.shows("lines"),
    ),
    Command(
        ("results", "values"),
        "results",
        "says the values found.",
        runs.shows("results"),
    ),
    Command(
        ("joints",),
        "joints",
        "says what is unknown at each joint.",
        runs.shows("joints"),
    ),
    Command(
        ("table",),
        "table",
        "says the table so far.",
        runs.shows("table"),
    ),
    Command(("save",), "save NAME.md", "writes the lesson so far into a new file.", runs.save),
    Command(("step", "go"), "step reactions", "goes to another step.", runs.step, ("step",)),
    Command(("steps",), "steps", "says the steps there are.", runs.steps),
    Command(
        ("skip",),
        "skip",
        "passes over the first steps, where you have done them right twice.",
        runs.alone(lambda x: Do("skip", {})),
    ),
    Command(
        ("homework",),
        "homework",
        "checks work you did on paper on this truss.",
        runs.alone(lambda x: Go("homework")),
    ),
    Command(
        ("next",),
        "next",
        "opens the problem to take next; all is kept.",
        runs.alone(lambda x: Go("next")),
    ),
    Command(
        ("problems",),
        "problems",
        "goes to the list of problems; all is kept.",
        runs.alone(lambda x: Go("problems")),
    ),
    Command(("leave", "quit", "exit", "bye"), "leave", "ends; all is kept.", runs.leave),
    Command(("help", "?"), "help, or help along", "says these words.", _help, ("word",)),
)

BY_WORD: Mapping[str, Command] = {word: each for each in COMMANDS for word in each.words}
