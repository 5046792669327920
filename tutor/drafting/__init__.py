"""What truss is being drawn up? A student's own truss from typed lines, step by step.

`entries` says what can be entered and folds it into a problem that may still lack anything;
`commands` reads what was typed: `words`, `names`, `cursor` and `pasted` its pieces, `spoken` what is
said at length, `phrases` joints, members, supports and loads, `measured` places from other joints,
`moving` parts that are moved, copied or mirrored; `unfit` and `lone_numbers` answer what no truss has and
what a line leaves open. `shapes` has the trade's common trusses; `draft` keeps the steps, to take back and
do again; `standing` says what is missing and how it moves; `telling` puts it in words; `saving` writes it, comments of an opened file included.
"""

from tutor.drafting.commands import LineRefused, read
from tutor.drafting.draft import Draft, DraftAnswer, Mark, Step
from tutor.drafting.entries import (
    EMPTY,
    Drop,
    Entry,
    Hold,
    Join,
    Push,
    Put,
    Rename,
    Title,
    Units,
    Whole,
    applied,
    fold,
)
from tutor.drafting.lines import lines_of
from tutor.drafting.pasted import statement_of
from tutor.drafting.saving import saved
from tutor.drafting.shapes import SHAPES, Shape, shaped
from tutor.drafting.soundness import DrawingFault, Soundness, drawable, soundness_of
from tutor.drafting.telling import PartRow, load_text, rows, support_text

__all__ = [
    "EMPTY",
    "SHAPES",
    "Draft",
    "DraftAnswer",
    "DrawingFault",
    "Drop",
    "Entry",
    "Hold",
    "Join",
    "LineRefused",
    "Mark",
    "PartRow",
    "Push",
    "Put",
    "Rename",
    "Shape",
    "Soundness",
    "Step",
    "Title",
    "Units",
    "Whole",
    "applied",
    "drawable",
    "fold",
    "lines_of",
    "load_text",
    "read",
    "rows",
    "saved",
    "shaped",
    "soundness_of",
    "statement_of",
    "support_text",
]
