"""What can be done with a truss or a homework of one's own? As `deeds`, for these two screens."""

from __future__ import annotations

from tutor.screens.deeds import Deed

BENCH: tuple[Deed, ...] = (
    Deed("at", "a", "", "at a joint", "Hold, load or drop a joint, or drop what is at it."),
    Deed(
        "shape",
        "n",
        "",
        "shapes",
        "Start from a common shape: Warren, Pratt, Howe, Fink and so on.",
    ),
    Deed("undo", "u", "ctrl+z", "undo", "Take back the last thing entered."),
    Deed("redo", "r", "ctrl+y", "redo", "Do again what was taken back."),
    Deed("grid", "g", "ctrl+g", "grid", "Show the grid for clicking joints, or take it away."),
    Deed("list", "f", "", "list", "In a narrow window, the list or the picture."),
    Deed("open", "o", "", "open", "Open a problem file from this folder."),
    Deed("save", "s", "", "save", "Save the truss as a problem file."),
    Deed("walk", "w", "", "walk it", "Work this truss joint by joint."),
    Deed(
        "check",
        "c",
        "",
        "check homework",
        "Enter your numbers for this truss, to have them checked.",
    ),
    Deed("help", "?", "f1", "help", "What can be typed here, and all keys."),
    Deed("leave", "q", "", "leave", "Back to the problems; the drawing is kept."),
)
HOMEWORK: tuple[Deed, ...] = (
    Deed("check", "c", "ctrl+t", "check", "Check everything that was entered."),
    Deed("hint", "h", "", "hint", "A hint for the first wrong place; each further one says more."),
    Deed(
        "figure", "f", "ctrl+g", "picture", "The picture of which joints close, or what was said."
    ),
    Deed("walk", "w", "", "walk it", "Walk the first wrong joint, with your right values given."),
    Deed("undo", "u", "ctrl+z", "undo", "Take back the last thing entered."),
    Deed("clear", "x", "", "clear", "Take every value and line off the paper, after asking."),
    Deed("save", "s", "", "save report", "Write a report of the check, without values, to a file."),
    Deed("help", "?", "f1", "help", "What can be typed here, and all keys."),
    Deed("leave", "q", "", "leave", "Back; what was entered is kept."),
)
