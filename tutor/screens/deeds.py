"""What can be done beside answering, and with which keys? One table for keys, bar, palette and help.

Every deed has several ways to it: on the walk its word, typed in the line; escape and its letter
(which works in any terminal, since letters alone reach a line being typed); a chord for those whose
terminal lets it through; and the bar for the mouse. None relies on a chord, a function key or a
modified arrow.
"""

from __future__ import annotations

from typing import NamedTuple


class Deed(NamedTuple):
    """One deed: its stable id, letter, chord (or none), the word on the bar, what it does.

    One that is `off_bar` is told of elsewhere on the screen.
    """

    id: str
    letter: str
    chord: str
    label: str
    does: str
    off_bar: bool = False

    @property
    def keys(self) -> str:
        """The keys as a binding takes them; escape and a letter typed fast arrive as alt and it."""
        return f"{KEY_NAMES.get(self.letter, self.letter)},{self.keys_while_typing}"

    @property
    def keys_while_typing(self) -> str:
        """Those of them that are no text."""
        letter = KEY_NAMES.get(self.letter, self.letter)
        return ",".join(filter(None, (f"alt+{letter}", self.chord)))


KEY_NAMES = {"?": "question_mark"}

WALK: tuple[Deed, ...] = (
    Deed("answer", "d", "", "done", "Hand in what is ticked, as enter does."),
    Deed("hint", "h", "ctrl+t", "hint", "A hint; each further one says more, the last one all."),
    Deed(
        "show", "w", "", "watch", "Have the next thing written, with its reason, as at the board."
    ),
    Deed(
        "begin",
        "b",
        "",
        "begin",
        "Have the first steps written, as was offered; the rest is yours.",
    ),
    Deed("guess", "g", "", "guess", "Guess what comes next; the guess is answered."),
    Deed("keep", "y", "ctrl+y", "keep", "Keep a line that is true of something else."),
    Deed("equation", "e", "", "equation", "Choose which equation the next line is."),
    Deed(
        "joint", "j", "ctrl+n", "joint", "Choose another joint; from a section, back to the joints."
    ),
    Deed("zero", "z", "", "zero", "State a member without force, with the rule that shows it."),
    Deed("assume", "a", "", "assume", "Draw a member pulling (T) or pushing (C) on its joints."),
    Deed("undo", "u", "ctrl+z", "undo", "Take back the last thing that counted."),
    Deed("skip", "k", "", "skip", "Skip a step you have done right twice."),
    Deed(
        "figure",
        "f",
        "ctrl+g",
        "figure",
        "The next picture; in a narrow window, the picture or the lines.",
    ),
    Deed("large", "v", "", "large", "The picture as large as the window.", off_bar=True),
    Deed("practice", "p", "", "practice", "Open the smaller problem that was offered."),
    Deed("step", "s", "ctrl+l", "steps", "Go to another step."),
    Deed("next", "n", "", "next problem", "Open the problem to take next, once this one is done."),
    Deed("table", "t", "", "table", "Everything found so far, and saving it to a file."),
    Deed("help", "?", "f1", "help", "What can be typed, and all keys."),
    Deed("leave", "q", "", "leave", "Back to the problems; everything is kept."),
)
SHEET: tuple[Deed, ...] = (
    Deed(
        "own",
        "o",
        "",
        "own truss",
        "Draw a truss of your own: type it, or click it on a grid.",
    ),
    Deed("homework", "c", "", "homework", "Check your numbers for the problem chosen."),
    Deed("skills", "s", "", "skills", "What you can do now, and by which lines."),
    Deed("light", "l", "", "theme", "Change between the light and the dark colours."),
    Deed("card", "g", "", "look", "Choose again which characters pictures are drawn with."),
    Deed("help", "?", "f1", "help", "What can be typed, and all keys."),
    Deed("leave", "q", "", "leave", "End the program."),
)
CLOSING: tuple[Deed, ...] = (
    Deed("next", "n", "", "next problem", "Open the problem to take next."),
    Deed("save", "s", "", "save as Markdown", "Write the table and the lines to a file."),
    Deed("back", "b", "", "back to the walk", "Look at the walk again, or take something back."),
    Deed("help", "?", "f1", "help", "What can be typed, and all keys."),
    Deed("leave", "q", "", "leave", "Back to the problems; everything is kept."),
)
